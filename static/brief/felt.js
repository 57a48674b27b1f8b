// What people would feel, on the sheet: the first sentences, each quantity's limits with their sources, and a day in words.

import { boundWords, headingWords, hereWords, rowsOf, studyWords } from '../panels/feel_say.js';
import { h } from '../panels/dom.js';

/** `feel` the answer, `units` 'si' or 'us'. */
export function feltOf(feel, units) {
  const limited = feel.quantities.filter(({ name }) => rowsOf(feel, name).length);
  const open = feel.quantities.filter(({ name }) => !rowsOf(feel, name).length);
  return [
    h('p', { class: 'said' }, feel.says.lead, ' ', feel.says.summary),
    h('div', { class: 'limits' }, limited.map(quantity => tableOf(feel, quantity, units))),
    ...open.map(quantity => h('p', { class: 'note' }, `${headingWords(quantity, units)}. ${quantity.says}`)),
    h('h3', {}, 'A day aboard'),
    h('div', { class: 'day' }, feel.words.map(({ title, text }) => h('p', {}, h('b', {}, `${title}. `), text))),
    sourcesOf(feel),
    h('p', { class: 'note' }, feel.caution),
  ];
}

function tableOf(feel, quantity, units) {
  const row = one =>
    h(
      'tr',
      { class: one.inside === false ? 'beyond' : null },
      h('th', { scope: 'row' }, studyWords(one)),
      h('td', { class: 'r' }, boundWords(one, units)),
      h('td', { class: 'r' }, hereWords(one, units)),
    );
  const head = h('tr', {}, h('th', { scope: 'col' }, 'Published'), ...['says', 'here'].map(word => h('th', { scope: 'col', class: 'r' }, word)));
  return h(
    'div',
    { class: 'limited' },
    h('h3', {}, headingWords(quantity, units)),
    h('p', { class: 'note' }, quantity.says),
    h('table', {}, h('thead', {}, head), h('tbody', {}, rowsOf(feel, quantity.name).map(row))),
  );
}

// each publication once, however many limits it sets
function sourcesOf(feel) {
  const cited = new Map();
  for (const row of feel.limits) if (!row.mine) cited.set(row.source, row.known_by === 'memory' || cited.get(row.source));
  const items = [...cited].map(([source, fromMemory]) => h('li', {}, fromMemory ? `${source} (quoted from memory)` : source));
  return items.length > 0 && h('ul', { class: 'cited' }, items);
}
