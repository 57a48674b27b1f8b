// What an answer about a path says of its picture and of the scene that is open. No elements.

/** Whether a matched motion's scene has this one's habitat and air: then its throw flies here as it does there. */
export function fliesHere(motion, read) {
  const near = (a, b) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
  const { habitat, air } = motion;
  const here = read('air') ?? null;
  const same =
    here === null || air === null ? here === (air ?? null) : near(here.pressure_kpa, air.pressure_kpa) && near(here.temperature_c, air.temperature_c);
  return (
    (read('habitat.shape') ?? 'cylinder') === 'cylinder' &&
    near(habitat.radius_m, read('habitat.radius_m')) &&
    near(habitat.spin_rpm, read('habitat.spin_rpm')) &&
    same
  );
}

/** Polylines of a path in a picture: [[x, y]…], cut where it is behind the camera. */
export function runsOf({ x_px, y_px }) {
  const runs = /** @type {number[][][]} */ ([[]]);
  x_px.forEach((x, i) => {
    if (x === null || y_px[i] === null) runs.push([]);
    else runs[runs.length - 1].push([x, y_px[i]]);
  });
  return runs.filter(run => run.length > 1);
}

/** Lengths of a residual by row: its components' names and the most that any reaches, in accuracies. */
export function residualsOf({ residual, accuracy }) {
  const names = Object.keys(residual),
    worst = Math.max(...names.map(name => residual[name].reduce((most, off) => Math.max(most, Math.abs(off ?? 0)), 0)));
  return { names, most: Math.max(3.2 * accuracy.value, 1.08 * worst) };
}
