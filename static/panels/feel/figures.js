// Every figure of what people would feel, in groups: the levels under "Standing", the six turns of the head under theirs; and last
// what all of them take for granted.

import { inSentence, tr, trAs, trLater } from '../../state/language.js';
import { groundOf } from '../../state/shapes.js';
import { h, setChildren, setText } from '../shared/dom.js';
import { figureWords } from './figure_words.js';
import { createFold } from '../shared/fold.js';

const TERMS = {
  period_s: trLater('Period'),
  spin_rpm: trLater('Spin'),
  rim_speed_m_s: trLater('Rim speed'),
  gradient_percent: trLater('Gravity gradient'),
  gradient_g_per_m: trLater('Gravity gradient'),
  float_speed_m_s: trLater('Floats at'),
  coriolis_ratio: trLater('Coriolis ratio'),
  lying_across_lean_deg: trLater('Lean'),
  rise_push_g: trLater('Sideways push'),
  walk_axial_lean_deg: trLater('Lean'),
  stairs_lean_deg: trLater('Lean'),
  ladder_push_g: trLater('Sideways push'),
  ladder_lean_deg: trLater('Lean'),
  ladder_halfway_lean_deg: trLater('Lean'),
  lift_push_g: trLater('Sideways push'),
  lift_lean_deg: trLater('Apparent tilt'),
  lift_halfway_lean_deg: trLater('Apparent tilt'),
  head_worst_deg_s2: trLater('Cross-coupling'),
  drop_drift_m: trLater('Drift'),
  glass_walk_lean_deg: trLater('Free surface'),
  glass_start_lean_deg: trLater('Free surface'),
  glass_stairs_lean_deg: trLater('Free surface'),
  floor_lean_deg: trLater('Apparent tilt'),
};
// by the name of their group, as the server says it
const WITH = [
  [trLater('Standing'), levelsTable],
  [trLater('Turning the head'), headTurnsTable],
];
const NEEDS_THRUST = trLater('The floor');

export function createFeelFigures({ element, store, explain }) {
  const list = h('div', {}),
    assumed = createFold({ words: () => tr('Assumed and left out'), make: () => [assumptions({ store })] });
  element.append(h('h3', { class: 'third' }, tr('Figures')), list, h('div', { class: 'assumed' }, h('h4', {}, assumed.button), assumed.element));
  let groups = [],
    builtFrom = '';

  function update() {
    const names = [...new Set(store.feel.figure_rows.map(({ group }) => group))];
    if (names.join() !== builtFrom) {
      builtFrom = names.join();
      groups = names.map(name => createGroup({ store, name, explain }));
      list.replaceChildren(...groups.map(group => group.element));
    }
    groups.forEach(group => group.update());
    assumed.update();
  }
  return { update };
}

function createGroup({ store, name, explain }) {
  const rows = () => store.feel.figure_rows.filter(({ group }) => group === name);
  const fold = createFold({
    words: () => name,
    make: () => [figuresTable({ store, name, rows, explain }), WITH.find(([group]) => tr(group) === name)?.[1]({ store })].filter(Boolean),
  });
  return { element: h('div', { 'data-group': name }, h('h4', {}, fold.button), fold.element), update: fold.update };
}

function figuresTable({ store, name, rows, explain }) {
  const cells = new Map();
  const body = rows().map(row => {
    const [label, value] = [labelOf(row, explain), h('td', { class: 'r' })];
    cells.set(row.name, { label, value });
    return h('tr', { 'data-figure': row.name }, h('th', { scope: 'row' }, label), value);
  });
  const element = h('table', { class: 'figures', 'aria-label': name }, h('tbody', {}, body));
  function update() {
    const { figures } = store.feel;
    for (const row of rows()) {
      const value = figures[row.name],
        cell = cells.get(row.name);
      setText(cell.label, row.label); // on a turntable some are called otherwise
      setText(cell.value, value === null ? none(store, name) : figureWords(value, row.unit, store.view.units));
    }
  }
  return { element, update };
}

function assumptions({ store }) {
  const element = h('ul', { class: 'small' });
  let shown = '';
  function update() {
    const { assumptions: said } = store.feel;
    if (said.join() === shown) return;
    shown = said.join();
    setChildren(
      element,
      said.map(one => h('li', {}, one)),
    );
  }
  return { element, update };
}

// why there is no figure, where it can be told in a word or two
function none({ fields, feel: { habitat } }, group) {
  // some places a turntable has not, whether it turns or not
  if (group === tr(NEEDS_THRUST)) return `–, ${tr('no thrust')}`;
  return habitat.spin_rpm || groundOf(fields, habitat).level ? '–' : `–, ${tr('nothing turns')}`;
}

function labelOf({ name }, explain) {
  const term = TERMS[name];
  if (!term) return h('span', {});
  const word = h('button', { type: 'button', class: 'term', title: tr('What {word} is', { word: inSentence(tr(term)) }), onclick: () => explain(term, word) });
  return word;
}

// The two tables beside the figures: levels one could stand on, and what each turn of the head is felt as.

const TURNS = {
  yaw: { whole: trLater('Yaw, looking aside'), short: trLater('yaw') },
  pitch: { whole: trLater('Pitch, nodding'), short: trLater('pitch') },
  roll: { whole: trLater('Roll, ear to shoulder'), short: trLater('roll') },
};
const FACING = { spinward: trLater('spinward'), axial: trLater('axial'), outward: trLater('outward') };

function levelsTable({ store }) {
  const heads = [tr('Level'), tr('height'), tr('gravity'), tr('speed')];
  return createTable({
    store,
    label: tr('Levels'),
    heads,
    rows: ({ levels }) => levels.map(level => [level.name, [level.height_m, 'm'], [level.gravity_g, 'g'], [level.rim_speed_m_s, 'm/s']]),
  });
}

function headTurnsTable({ store }) {
  const heads = [tr('Turn of the head'), tr('facing'), tr('felt'), trAs('a turn of the head is felt', 'as')];
  return createTable({
    store,
    label: tr('Turns of the head'),
    heads,
    rows: ({ head_turns: turns }) =>
      turns.map(({ turn, facing, deg_s2: felt, felt_as: as }) => [
        tr(TURNS[turn].whole),
        tr(FACING[facing]),
        [felt, '°/s²'],
        as ? tr(TURNS[as].short) : tr('nothing'),
      ]),
  });
}

// cells are words, or [value, SI unit]
function createTable({ store, label, heads, rows }) {
  const head = h(
    'tr',
    {},
    heads.map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word)),
  );
  const body = h('tbody', {});
  const element = h('table', { class: 'figures', 'aria-label': label }, h('thead', {}, head), body);
  let cells = [];

  function update() {
    const now = rows(store.feel);
    if (now.length !== cells.length) {
      cells = now.map(row => row.map((_, i) => (i ? h('td', { class: 'r' }) : h('th', { scope: 'row' }))));
      body.replaceChildren(...cells.map(row => h('tr', {}, row)));
    }
    now.forEach((row, i) => row.forEach((cell, k) => setText(cells[i][k], Array.isArray(cell) ? figureWords(...cell, store.view.units) : cell)));
  }
  return { element, update };
}
