// About what a ball spins, as (spinward, up, axial): the axes that have words. A forward roll turns the top the way it is thrown.

export const OWN = 'own';
const DEG = Math.PI / 180;
export const AXES = {
  forward: ['forward roll', heading => [Math.sin(heading * DEG), 0, -Math.cos(heading * DEG)]],
  back: ['back spin', heading => [-Math.sin(heading * DEG), 0, Math.cos(heading * DEG)]],
  upright: ['about the upright', () => [0, 1, 0]],
  axial: ['about the axis', () => [0, 0, 1]],
  spinward: ['about spinward', () => [1, 0, 0]],
};

/** A named axis for something thrown toward `heading` degrees, its figures round. */
export function axisOf(key, heading) {
  return AXES[key][1](heading).map(part => Number(part.toFixed(6)) + 0);
}

/** The name of an axis, whatever its length; 'own' where it has none. */
export function nameOf(axis, heading) {
  if (!axis) return 'forward';
  const size = Math.hypot(...axis);
  const same = key => axisOf(key, heading).every((part, i) => Math.abs(part - axis[i] / size) < 1e-4);
  return Object.keys(AXES).find(same) ?? OWN;
}

/** As it stands in a sentence after the rate. */
export function axisWords(axis, heading) {
  const name = nameOf(axis, heading);
  return { forward: 'in a forward roll', back: 'in a back spin', [OWN]: 'about an axis of its own' }[name] ?? AXES[name][0];
}
