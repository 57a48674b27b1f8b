// The two tables beside the figures: levels one could stand on, and what each turn of the head is felt as.

import { h, setText } from '../shared/dom.js';
import { figureWords } from './say.js';

const TURNS = { yaw: 'Yaw, looking aside', pitch: 'Pitch, nodding', roll: 'Roll, ear to shoulder' };

export function levelsTable({ store }) {
  const heads = ['Level', 'height', 'gravity', 'speed'];
  return createTable({
    store,
    label: 'Levels',
    heads,
    rows: ({ levels }) => levels.map(level => [level.name, [level.height_m, 'm'], [level.gravity_g, 'g'], [level.rim_speed_m_s, 'm/s']]),
  });
}

export function headTurnsTable({ store }) {
  const heads = ['Turn of the head', 'facing', 'felt', 'as'];
  return createTable({
    store,
    label: 'Turns of the head',
    heads,
    rows: ({ head_turns: turns }) =>
      turns.map(({ turn, facing, deg_s2: felt, felt_as: as }) => [TURNS[turn] ?? turn, facing, [felt, '°/s²'], as ?? 'nothing']),
  });
}

// cells are words, or [value, SI unit]
function createTable({ store, label, heads, rows }) {
  const head = h('tr', {}, heads.map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word)));
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
