// What a habitat gives, in a sentence of the page's own: what is felt on its deck has thrust and the room's gravity in it, and what
// the spin alone gives is called outward.

import { inSigns, tr } from './language.js';
import { groundKey, groundOf, shapeFacts } from './shapes.js';
import { showQuantity, threeFigures } from './units.js';

const inG = value => `${threeFigures(value)}\u00a0g`;

/** Which way thrust draws what is loose: 'back along the axis'. */
function thrustWay(fields, habitat) {
  const [along, back] = groundOf(fields, habitat).across;
  return habitat.axial_thrust_m_s2 > 0 ? back : along;
}

/** '1.04 g is felt, 0.268 g of it outward' */
function atTheEdge({ felt_g: felt, deck_gravity_g: outward }, { outside_gravity_m_s2: room }) {
  return room === 0
    ? tr('{felt} is felt, all of it outward', { felt: inG(felt) })
    : tr('{felt} is felt, {outward} of it outward', { felt: inG(felt), outward: inG(outward) });
}

/** One sentence in italics with the figures that follow from radius and spin. */
export function stageDirection({ answer, view, fields }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  const { thing: template, ground } = shapeFacts(fields, scene.habitat),
    thing = template.replace('{radius}', show(scene.habitat.radius_m, 'm'));
  if (!habitat.period_s) return stillWords(thing, habitat, scene.habitat, fields);
  const places = {
    thing,
    spin: `${threeFigures(scene.habitat.spin_rpm)}\u00a0rpm`,
    gives: givesWords(groundKey(ground), habitat, scene.habitat, show(habitat.rim_speed_m_s, 'm/s')),
    period: `${threeFigures(habitat.period_s)}\u00a0s`,
  };
  return scene.habitat.spin_ramp?.length
    ? tr('{thing} turns at {spin} at first: {gives}, one turn in {period}.', places)
    : tr('{thing} turns at {spin}: {gives}, one turn in {period}.', places);
}

function givesWords(ground, habitat, part, speed) {
  if (ground === 'turntable') return tr('the edge at {speed}, where {felt}', { speed, felt: atTheEdge(habitat, part) });
  const places = { gravity: inG(habitat.felt_g), speed };
  if (ground === 'floor')
    return part.axial_thrust_m_s2
      ? tr('{gravity} on the floor, thrust included, which moves at {speed}', places)
      : tr('{gravity} on the floor, which moves at {speed}', places);
  return part.axial_thrust_m_s2
    ? tr('{gravity} on the deck, thrust included, the rim at {speed}', places)
    : tr('{gravity} on the deck, the rim at {speed}', places);
}

function stillWords(thing, { felt_g: felt }, part, fields) {
  if (groundOf(fields, part).level) return tr('{thing} stands still.', { thing });
  return felt > 0
    ? tr('{thing} stands still: only its thrust is felt, {felt}, {way}.', { thing, felt: inG(felt), way: thrustWay(fields, part) })
    : tr('{thing} stands still: no gravity anywhere in it.', { thing });
}

/** What place 1 begins with. */
export function sizeWords({ answer, view, fields }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  const radius = show(scene.habitat.radius_m, 'm'),
    { weighed, fades, ground } = shapeFacts(fields, scene.habitat);
  if (!habitat.period_s) return withoutSpin(radius, habitat, scene.habitat, fields);
  const places = {
    radius,
    period: `${threeFigures(habitat.period_s)}\u00a0s`,
    speed: show(habitat.rim_speed_m_s, 'm/s'),
    gravity: scene.habitat.axial_thrust_m_s2 ? tr('{gravity} outward', { gravity: inG(habitat.deck_gravity_g) }) : inG(habitat.deck_gravity_g),
    deck: weighed,
  };
  const first = sizeSentence(groundKey(ground), Boolean(scene.habitat.spin_ramp?.length), places);
  if (ground.level) return `${first} ${tr('There {felt}.', { felt: atTheEdge(habitat, scene.habitat) })}`;
  const felt = scene.habitat.axial_thrust_m_s2 ? thrustWords(habitat, scene.habitat, fields) : null,
    flat = tr('It is flat: “down” leans outward toward its ends.');
  const then = groundKey(ground) === 'floor' ? [felt, flat] : [fades, felt];
  return [first, ...then].filter(part => part !== null).join(' ');
}

// `ramped`: the spin changes
function sizeSentence(ground, ramped, places) {
  if (ground === 'turntable')
    return ramped
      ? tr('At the start, a turntable of {radius}: a turn takes {period}, and its edge moves at {speed}.', places)
      : tr('A turntable of {radius}: a turn takes {period}, and its edge moves at {speed}.', places);
  if (ground === 'floor')
    return ramped
      ? tr('At the start, a floor at {radius} gives {gravity} in its middle and moves at {speed}; a turn takes {period}.', places)
      : tr('A floor at {radius} gives {gravity} in its middle and moves at {speed}; a turn takes {period}.', places);
  return ramped
    ? tr('At the start, a {deck} at {radius} gives {gravity}; it moves at {speed} and a turn takes {period}.', places)
    : tr('A {deck} at {radius} gives {gravity}; it moves at {speed} and a turn takes {period}.', places);
}

/** 'With the thrust it is 0.567 g, and “down” leans 6.2° back along the axis.' */
function thrustWords({ felt_g: felt, felt_lean_deg: lean }, part, fields) {
  return tr('With the thrust it is {felt}, and “down” leans {lean}° {way}.', {
    felt: inG(felt),
    lean: inSigns(lean.toFixed(1)),
    way: thrustWay(fields, part),
  });
}

function withoutSpin(radius, { felt_g: felt }, part, fields) {
  const weightless = !(felt > 0);
  if (groundOf(fields, part).level)
    return weightless
      ? tr('A turntable of {radius} that does not turn, in a room without gravity: what is let go stays.', { radius })
      : tr('A turntable of {radius} that does not turn: a table under the gravity of the room, {felt}.', { radius, felt: inG(felt) });
  if (weightless) return tr('At {radius} and without spin there is no gravity: what is let go stays.', { radius });
  return tr('At {radius} and without spin only the thrust is felt, {felt}, {way}. The deck is a wall to it.', {
    radius,
    felt: inG(felt),
    way: thrustWay(fields, part),
  });
}
