// What is poured into: no cup, or where it stands, how wide and how deep it is, and where it should have stood.

import { fieldOf, shownOf } from '../../state/fields.js';
import { makeScale } from '../../state/scale.js';
import { h, setAttribute } from '../shared/dom.js';
import { createSwitch } from '../shared/choice.js';
import { createField } from '../shared/field.js';

const ROWS = [
  ['along_m', 'Along'],
  ['height_m', 'Rim at'],
  ['axial_m', 'Across'],
  ['diameter_m', 'Wide'],
  ['depth_m', 'Deep'],
];
const FINE_M = 0.01; // a cup is small: its place is told at least so finely, wherever in the habitat it stands
const FIRST = { height_m: 0.1, diameter_m: 0.08, depth_m: 0.09 };

export function createCup({ store, index }) {
  const path = `motions.${index}.target`;
  const on = () => (store.read(path) ?? null) !== null;
  const known = ROWS.filter(([name]) => fieldOf(store.fields, `${path}.${name}`));
  const cup = createSwitch({ label: 'A cup to pour into', on, turn });
  const rows = known.map(([name, label]) => {
    const field = fieldOf(store.fields, `${path}.${name}`);
    return createField({ store, path: `${path}.${name}`, label, centred: field.min < 0, scale: fineScale(field) });
  });
  const move = h('button', { type: 'button', class: 'link', onclick: moveCup }, 'Put the cup where it should have stood');
  const inner = h('div', {}, rows.map(row => row.element), move);

  let fresh = null; // a cup just set, until it is answered where the pour crosses its rim

  function turn(wanted) {
    fresh = wanted ? firstCup() : null;
    store.set(path, fresh);
  }
  function settle() {
    if (!fresh || store.stale) return;
    const untouched = store.document.motions[index]?.target === fresh;
    fresh = null;
    if (untouched && wanted()) moveCup();
  }
  // under where the stream lands, as it was last answered
  function firstCup() {
    const motion = store.answer?.motions[index],
      place = motion?.landing ?? store.document.motions[index].place ?? {};
    const near = metres => Number((metres ?? 0).toFixed(2));
    return { ...FIRST, along_m: near(place.along_m), axial_m: near(place.axial_m) };
  }
  function wanted() {
    return store.answer?.motions[index]?.findings?.move_m ?? null;
  }
  function moveCup() {
    const [along, axial] = wanted(),
      now = store.document.motions[index].target;
    store.set(path, { ...now, along_m: (now.along_m ?? 0) + along, axial_m: (now.axial_m ?? 0) + axial });
  }
  return {
    element: h('div', { class: 'group' }, cup.element, inner),
    update() {
      settle();
      cup.update();
      setAttribute(inner, 'hidden', !on());
      setAttribute(move, 'hidden', !on() || !wanted());
      if (on()) rows.forEach(row => row.update());
    },
  };
}

function fineScale(field) {
  const scale = makeScale(shownOf(field));
  return { ...scale, step: value => Math.min(FINE_M, scale.step(value)) };
}
