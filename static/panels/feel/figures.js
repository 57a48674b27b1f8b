// Every figure of what people would feel, in groups: the levels under "Standing", the six turns of the head under theirs; and last
// what all of them take for granted.

import { groundOf } from '../../state/shapes.js';
import { h, setChildren, setText } from '../shared/dom.js';
import { figureWords } from './figure_words.js';
import { createFold } from '../shared/fold.js';

const TERMS = {
  period_s: 'Period',
  spin_rpm: 'Spin',
  rim_speed_m_s: 'Rim speed',
  gradient_percent: 'Gravity gradient',
  gradient_g_per_m: 'Gravity gradient',
  float_speed_m_s: 'Floats at',
  coriolis_ratio: 'Coriolis ratio',
  lying_across_lean_deg: 'Lean',
  rise_push_g: 'Sideways push',
  walk_axial_lean_deg: 'Lean',
  stairs_lean_deg: 'Lean',
  ladder_push_g: 'Sideways push',
  ladder_lean_deg: 'Lean',
  ladder_halfway_lean_deg: 'Lean',
  lift_push_g: 'Sideways push',
  lift_lean_deg: 'Apparent tilt',
  lift_halfway_lean_deg: 'Apparent tilt',
  head_worst_deg_s2: 'Cross-coupling',
  drop_drift_m: 'Drift',
  glass_walk_lean_deg: 'Free surface',
  glass_start_lean_deg: 'Free surface',
  glass_stairs_lean_deg: 'Free surface',
  floor_lean_deg: 'Apparent tilt',
};
const WITH = { Standing: levelsTable, 'Turning the head': headTurnsTable };
const NEEDS = { 'The floor': 'no thrust' };

export function createFeelFigures({ element, store, explain }) {
  const list = h('div', {}),
    assumed = createFold({ words: () => 'Assumed and left out', make: () => [assumptions({ store })] });
  element.append(h('h3', { class: 'third' }, 'Figures'), list, h('div', { class: 'assumed' }, h('h4', {}, assumed.button), assumed.element));
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
    make: () => [figuresTable({ store, name, rows, explain }), WITH[name]?.({ store })].filter(Boolean),
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
  const why = NEEDS[group] ?? (habitat.spin_rpm || groundOf(fields, habitat).level ? null : 'nothing turns');
  return why ? `–, ${why}` : '–';
}

function labelOf({ name }, explain) {
  const term = TERMS[name];
  if (!term) return h('span', {});
  const word = h('button', { type: 'button', class: 'term', title: `What ${term.toLowerCase()} is`, onclick: () => explain(term, word) });
  return word;
}

// The two tables beside the figures: levels one could stand on, and what each turn of the head is felt as.

const TURNS = { yaw: 'Yaw, looking aside', pitch: 'Pitch, nodding', roll: 'Roll, ear to shoulder' };

function levelsTable({ store }) {
  const heads = ['Level', 'height', 'gravity', 'speed'];
  return createTable({
    store,
    label: 'Levels',
    heads,
    rows: ({ levels }) => levels.map(level => [level.name, [level.height_m, 'm'], [level.gravity_g, 'g'], [level.rim_speed_m_s, 'm/s']]),
  });
}

function headTurnsTable({ store }) {
  const heads = ['Turn of the head', 'facing', 'felt', 'as'];
  return createTable({
    store,
    label: 'Turns of the head',
    heads,
    rows: ({ head_turns: turns }) => turns.map(({ turn, facing, deg_s2: felt, felt_as: as }) => [TURNS[turn] ?? turn, facing, [felt, '°/s²'], as ?? 'nothing']),
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
