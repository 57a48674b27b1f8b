// What only a pour has: its liquid, its cup, and how the lip tilts.

import { tr, trAs, trLater } from '../../state/language.js';
import { h, setText, setAttribute } from '../shared/dom.js';
import { fieldOf, shownOf } from '../../state/fields.js';
import { makeScale } from '../../state/scale.js';
import { createSwitch } from '../shared/choice.js';
import { createField } from '../shared/field.js';
import { createPoints } from '../shared/points.js';

// by what documents call them
const LIQUIDS = {
  water: trLater('water'),
  tea: trLater('tea'),
  coffee: trLater('coffee'),
  'olive oil': trLater('olive oil'),
  honey: trLater('honey'),
};

/** @param {string} name */
export const liquidName = name => (name in LIQUIDS ? tr(LIQUIDS[name]) : name);

export function createLiquid(store, path) {
  const select = h(
    'select',
    { 'aria-label': tr('Liquid'), onchange: () => store.set(path, select.value) },
    store.fields.liquids.map(liquid => h('option', { value: liquid.name }, liquidName(liquid.name))),
  );
  const source = h('p', { class: 'small' });
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, tr('Liquid')), select), source);
  return {
    element,
    update() {
      select.value = store.read(path);
      const known = store.fields.liquids.find(liquid => liquid.name === select.value);
      setText(source, known?.source ? tr('Source: {source}', { source: known.source }) : '');
    },
  };
}

// What is poured into: no cup, or where it stands, how wide and how deep it is, and where it should have stood.

const ROWS = [
  ['along_m', trLater('Along')],
  ['height_m', trLater('Rim at')],
  ['axial_m', trLater('Across')],
  ['diameter_m', trLater('Wide')],
  ['depth_m', trLater('Deep')],
];
const FINE_M = 0.01; // a cup is small: its place is told at least so finely, wherever in the habitat it stands
const FIRST = { diameter_m: 0.08, depth_m: 0.09 };
const RIM_M = 0.85, // of a cup on a table as at home; lower where the pour begins lower
  FALL_M = 0.15; // at least from the lip to the rim

export function createCup({ store, index }) {
  const path = `motions.${index}.target`;
  const on = () => (store.read(path) ?? null) !== null;
  const known = ROWS.filter(([name]) => fieldOf(store.fields, `${path}.${name}`));
  const cup = createSwitch({ label: tr('A cup to pour into'), on, turn });
  const rows = known.map(([name, label]) => {
    const field = fieldOf(store.fields, `${path}.${name}`);
    return createField({ store, path: `${path}.${name}`, label: tr(label), centred: field.min < 0, scale: fineScale(field) });
  });
  const move = h('button', { type: 'button', class: 'link', onclick: () => store.whenAnswered(moveCup) }, tr('Put the cup where it should have stood'));
  const inner = h(
    'div',
    {},
    rows.map(row => row.element),
    move,
  );

  function turn(wanted) {
    if (wanted) store.whenAnswered(() => store.set(path, firstCup()));
    else store.set(path, null);
  }

  // on a table, where it would stand at home: where plain gravity's pour comes down to its rim, as it was answered
  function firstCup() {
    const { along_m = 0, height_m = 0, axial_m = 0 } = store.document.motions[index].place ?? {};
    const { companion } = store.answer.motions[index];
    const rim_m = Math.max(FIRST.depth_m + FINE_M, Math.min(RIM_M, height_m - FALL_M));
    const place = downAt(companion, rim_m) ?? { along_m, axial_m };
    const near = metres => Number(metres.toFixed(2));
    return { ...FIRST, height_m: near(rim_m), along_m: near(place.along_m), axial_m: near(place.axial_m) };
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
      cup.update();
      setAttribute(inner, 'hidden', !on());
      setAttribute(move, 'hidden', !on() || !wanted());
      if (on()) rows.forEach(row => row.update());
    },
  };
}

/** Where a path last comes down to a height, {along_m, axial_m} straight between its samples; null where it does not. */
export function downAt(path, height_m) {
  const heights = path?.height_m ?? [];
  for (let k = heights.length - 1; k > 0; k -= 1) {
    const [above, below] = [heights[k - 1], heights[k]];
    if (above < height_m || below > height_m || above === below) continue;
    const share = (above - height_m) / (above - below);
    const at = name => path[name][k - 1] + share * (path[name][k] - path[name][k - 1]);
    return { along_m: at('along_m'), axial_m: at('axial_m') };
  }
  return null;
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
  const head = [trAs('a time', 'At'), tr('lip'), tr('flow')].map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word));
  const table = h(
    'table',
    { class: 'points' },
    h('thead', {}, h('tr', {}, head, h('th', { scope: 'col' }, h('span', { class: 'unseen' }, tr('Remove'))))),
    body,
  );
  const points = createPoints({
    store,
    path: at('tilt'),
    columns: [
      ['time_s', tr('Time'), 0.1],
      ['elevation_deg', tr('Direction'), 1],
      ['flow_ml_s', tr('Flow'), 0.1],
    ],
    words: tr('Let the lip tilt'),
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
