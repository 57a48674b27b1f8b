// What only a pour has: its liquid, its cup, and how the lip tilts.

import { h, setText, setAttribute } from '../shared/dom.js';
import { fieldOf, shownOf } from '../../state/fields.js';
import { makeScale } from '../../state/scale.js';
import { createSwitch } from '../shared/choice.js';
import { createField } from '../shared/field.js';
import { createPoints } from '../shared/points.js';

export function createLiquid(store, path) {
  const select = h(
    'select',
    { 'aria-label': 'Liquid', onchange: () => store.set(path, select.value) },
    store.fields.liquids.map(liquid => h('option', { value: liquid.name }, liquid.name)),
  );
  const source = h('p', { class: 'small' });
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, 'Liquid'), select), source);
  return {
    element,
    update() {
      select.value = store.read(path);
      const known = store.fields.liquids.find(liquid => liquid.name === select.value);
      setText(source, known?.source ? `Source: ${known.source}` : '');
    },
  };
}

// What is poured into: no cup, or where it stands, how wide and how deep it is, and where it should have stood.

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
  const inner = h(
    'div',
    {},
    rows.map(row => row.element),
    move,
  );

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

// How the lip tilts while it pours: points of time, direction and flow, straight between them.

const DOWN_DEG = -90;
const STEP_DEG = 30; // a new point tips the lip so much further

export function createTilt({ store, index }) {
  const at = name => `motions.${index}.${name}`;
  const body = h('tbody', {});
  const head = ['At', 'lip', 'flow'].map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word));
  const table = h('table', { class: 'points' }, h('thead', {}, h('tr', {}, head, h('th', { scope: 'col' }, h('span', { class: 'unseen' }, 'Remove')))), body);
  const points = createPoints({
    store,
    path: at('tilt'),
    columns: [
      ['time_s', 'Time', 0.1],
      ['elevation_deg', 'Direction', 1],
      ['flow_ml_s', 'Flow', 0.1],
    ],
    words: 'Let the lip tilt',
    table,
    body,
    next(so_far) {
      const first = { time_s: 0, elevation_deg: store.read(at('elevation_deg')), flow_ml_s: store.read(at('flow_ml_s')) };
      const { time_s, elevation_deg, flow_ml_s } = so_far.at(-1) ?? first;
      const later_s = Math.max(0.1, Number((store.read(at('duration_s')) / 2).toFixed(1)));
      return { time_s: time_s + later_s, elevation_deg: Math.max(DOWN_DEG, elevation_deg - STEP_DEG), flow_ml_s };
    },
  });
  return { element: h('div', { class: 'group' }, table, h('p', { class: 'links' }, points.more)), update: points.update };
}
