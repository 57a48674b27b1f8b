// Where the laws and figures of a scene come from: only of what it uses.

import { h } from '../panels/shared/dom.js';

const LAWS = [
  [() => true, 'Motion: a free body goes straight in the room that does not turn; carried into the turning one, any mechanics text, such as Taylor, Classical Mechanics (2005), chapter 9. One g is 9.80665 m/s² (CGPM 1901).'],
  [({ air }) => air, 'Air: gas constant and viscosity of ISO 2533:1975; turning with the habitat, thinner toward the axis.'],
  [({ air, spheres }) => air && spheres, 'Drag of a sphere: Clift, Grace and Weber, Bubbles, Drops and Particles (1978), table 5.2, made smooth.'],
  [({ air, spun }) => air && spun, 'Lift of a spinning ball: the fit of Cross and Nathan to measured flights of baseballs.'],
  [({ regimes }) => regimes.has('stream'), 'Streams: Grant and Middleman, AIChE J. 12, 669 (1966), for where they break; Rayleigh (1878) for the drops.'],
  [({ regimes }) => regimes.has('drips'), 'Dripping: the law of Tate, corrected by Lando and Oakley, J. Colloid Interface Sci. 25, 526 (1967).'],
  [({ touches }) => touches, 'Rebound, rolling and sliding: the balance of a rigid ball, any mechanics text; on a turntable it gives the circles of Weltner, Am. J. Phys. 47, 984 (1979).'],
];

export function sourcesOf({ answer, fields }) {
  const { motions, air } = answer.scene;
  const bodies = named(fields.bodies, motions.map(m => m.body)),
    liquids = named(fields.liquids, motions.map(m => m.liquid));
  const used = {
    air,
    spheres: motions.some(m => m.liquid || (bodyOf(fields, m)?.drag ?? 'sphere') === 'sphere'),
    spun: motions.some(m => m.ball_spin_rpm),
    regimes: new Set(answer.motions.map(m => m.stream?.regime)),
    touches: answer.motions.some(m => m.surface || m.events.some(event => event.velocity_after_m_s?.some(Boolean))),
  };
  const laws = LAWS.filter(([when]) => when(used)).map(([, say]) => say);
  const things = [...bodies, ...liquids].map(({ name, source }) => `${name[0].toUpperCase()}${name.slice(1)}: ${source}.`);
  return [h('ul', {}, ...[...laws, ...things].map(say => h('li', {}, say)))];
}

function named(list, names) {
  return list.filter(({ name }) => names.includes(name));
}

function bodyOf(fields, { body }) {
  return typeof body === 'string' ? fields.bodies.find(({ name }) => name === body) : body;
}
