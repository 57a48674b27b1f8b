// What stands behind an answer: its figures as a table, and what it rests on and leaves out.

import { tr } from '../../state/language.js';
import { restOn } from '../../state/ship.js';
import { h, setChildren } from '../shared/dom.js';
import { createFold } from '../shared/fold.js';

export function createAside({ store, findings }) {
  return createFold({ words: () => tr('Results in full'), inner: h('div', { class: 'craft-aside' }), make: () => [createTable({ store, findings })] });
}

function createTable({ store, findings }) {
  const table = h('table', { class: 'craft-figures' }),
    list = h('ul', { class: 'small' }),
    element = h('div', {}, table, list);
  let shown = null;

  function update() {
    const { answer } = store.ship;
    if (!answer || answer === shown) return;
    shown = answer;
    const told = findings.map(name => answer[name]).filter(Boolean);
    setChildren(
      table,
      told.flatMap(({ question, figures }) => [...(told.length > 1 && figures?.length ? [headed(question, 'finding')] : []), ...groups(figures ?? [])]),
    );
    const assumed = restOn(told);
    setChildren(
      list,
      assumed.map(words => h('li', {}, words)),
    );
  }
  return { element, update };
}

const head = (words, kind) => h('tr', { class: kind }, h('th', { scope: 'rowgroup', colspan: 3 }, words));
const headed = (words, kind) => h('tbody', {}, head(words, kind));

// a body of the table for what belongs together, its name over it
function groups(figures) {
  const names = [...new Set(figures.map(([group]) => group))];
  return names.map(name =>
    h(
      'tbody',
      {},
      name ? head(name, 'of') : null,
      figures
        .filter(([group]) => group === name)
        .map(([, label, value, unit]) => h('tr', {}, h('th', { scope: 'row' }, label), h('td', {}, value), h('td', {}, unit))),
    ),
  );
}
