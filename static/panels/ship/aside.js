// What stands behind an answer: its figures as a table, and what it rests on and leaves out.

import { h, setChildren } from '../shared/dom.js';
import { createFold } from '../shared/fold.js';

export function createAside({ store, findings }) {
  return createFold({ words: () => 'Figures and what is left out', inner: h('div', { class: 'craft-aside' }), make: () => [createTable({ store, findings })] });
}

function createTable({ store, findings }) {
  const body = h('tbody', {}),
    list = h('ul', { class: 'small' }),
    element = h('div', {}, h('table', { class: 'craft-figures' }, body), list);
  let shown = null;

  function update() {
    const { answer } = store.ship;
    if (!answer || answer === shown) return;
    shown = answer;
    const told = findings.map(name => answer[name]).filter(Boolean);
    setChildren(
      body,
      told.flatMap(({ figures }) =>
        (figures ?? []).map(([label, value, unit]) => h('tr', {}, h('th', { scope: 'row' }, label), h('td', {}, value), h('td', {}, unit))),
      ),
    );
    const assumed = [...new Set(told.flatMap(({ assumptions }) => assumptions))];
    setChildren(
      list,
      assumed.map(words => h('li', {}, words)),
    );
  }
  return { element, update };
}
