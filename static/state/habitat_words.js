// What a habitat gives, in a sentence of the page's own: what is felt on its deck has thrust and the room's gravity in it, and what
// the spin alone gives is called outward.

import { groundOf, shapeFacts } from './shapes.js';
import { showQuantity, threeFigures } from './units.js';

const inG = value => `${threeFigures(value)}\u00a0g`;

/** Which way thrust draws what is loose: 'back along the axis'. */
function thrustWay(fields, habitat) {
  const [along, back] = groundOf(fields, habitat).across;
  return habitat.axial_thrust_m_s2 > 0 ? back : along;
}

/** '1.04 g is felt, 0.268 g of it outward' */
function atTheEdge({ felt_g: felt, deck_gravity_g: outward }, { outside_gravity_m_s2: room }) {
  return room === 0 ? `${inG(felt)} is felt, all of it outward` : `${inG(felt)} is felt, ${inG(outward)} of it outward`;
}

/** One sentence in italics with the figures that follow from radius and spin. */
export function stageDirection({ answer, view, fields }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  const { thing: template, ground } = shapeFacts(fields, scene.habitat),
    thing = template.replace('{radius}', show(scene.habitat.radius_m, 'm'));
  if (!habitat.period_s) return `${thing} stands still${stillWords(habitat, scene.habitat, fields)}.`;
  const later = scene.habitat.spin_ramp?.length ? ' at first' : '',
    thrust = scene.habitat.axial_thrust_m_s2 ? ', thrust included' : '',
    speed = show(habitat.rim_speed_m_s, 'm/s');
  const gives = {
    turntable: `the edge at ${speed}, where ${atTheEdge(habitat, scene.habitat)}`,
    floor: `${inG(habitat.felt_g)} on the floor${thrust}, which moves at ${speed}`,
    deck: `${inG(habitat.felt_g)} on the deck${thrust}, the rim at ${speed}`,
  }[ground.name];
  return `${thing} turns at ${threeFigures(scene.habitat.spin_rpm)}\u00a0rpm${later}: ${gives}, one turn in ${threeFigures(habitat.period_s)}\u00a0s.`;
}

function stillWords({ felt_g: felt }, part, fields) {
  if (groundOf(fields, part).level) return '';
  return felt > 0 ? `: only its thrust is felt, ${inG(felt)}, ${thrustWay(fields, part)}` : ': no gravity anywhere in it';
}

/** What place 1 begins with. */
export function sizeWords({ answer, view, fields }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  const radius = show(scene.habitat.radius_m, 'm'),
    { weighed, fades, ground } = shapeFacts(fields, scene.habitat);
  if (!habitat.period_s) return withoutSpin(radius, habitat, scene.habitat, fields);
  const start = scene.habitat.spin_ramp?.length ? 'At the start, a' : 'A',
    turn = `a turn takes ${threeFigures(habitat.period_s)}\u00a0s`,
    speed = show(habitat.rim_speed_m_s, 'm/s');
  if (ground.level) return `${start} turntable of ${radius}: ${turn}, and its edge moves at ${speed}. There ${atTheEdge(habitat, scene.habitat)}.`;
  const thrust = scene.habitat.axial_thrust_m_s2 !== 0,
    gravity = `${inG(habitat.deck_gravity_g)}${thrust ? ' outward' : ''}`,
    felt = thrust ? ` With the thrust it is ${feltWords(habitat, scene.habitat, fields)}.` : '';
  if (ground.name === 'floor')
    return `${start} floor at ${radius} gives ${gravity} in its middle and moves at ${speed}; ${turn}.${felt} It is flat: “down” leans outward toward its ends.`;
  return `${start} ${weighed} at ${radius} gives ${gravity}; it moves at ${speed} and ${turn}. ${fades}${felt}`;
}

/** '0.567 g, and “down” leans 6.2° back along the axis' */
function feltWords({ felt_g: felt, felt_lean_deg: lean }, part, fields) {
  return `${inG(felt)}, and “down” leans ${lean.toFixed(1)}° ${thrustWay(fields, part)}`;
}

function withoutSpin(radius, { felt_g: felt }, part, fields) {
  const weightless = !(felt > 0);
  if (groundOf(fields, part).level)
    return weightless
      ? `A turntable of ${radius} that does not turn, in a room without gravity: what is let go stays.`
      : `A turntable of ${radius} that does not turn: a table under the gravity of the room, ${inG(felt)}.`;
  if (weightless) return `At ${radius} and without spin there is no gravity: what is let go stays.`;
  return `At ${radius} and without spin only the thrust is felt, ${inG(felt)}, ${thrustWay(fields, part)}. The deck is a wall to it.`;
}
