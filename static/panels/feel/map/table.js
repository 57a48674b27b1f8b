// The lines of the map as a table: each limit, who says so, and how this habitat lies to it.

import { h, setChildren } from '../../shared/dom.js';
import { limitWords, tableRows } from './groups.js';

/** group() → the group chosen on the map. */
export function createMapTable({ store, group }) {
  const body = h('tbody', {}),
    equal = h('p', { class: 'small' });
  const element = h(
    'div',
    {},
    h(
      'table',
      { class: 'map-table' },
      h('thead', {}, h('tr', {}, head('Limit'), head('who says so'), head('here', 'r'))),
      body,
    ),
    equal,
  );
  let drawn = null;

  function update() {
    const { feel, view } = store,
      rows = tableRows(feel, group()),
      key = JSON.stringify([rows, view.units]);
    if (key === drawn) return;
    drawn = key;
    setChildren(
      body,
      rows.map(({ limit, who, here }) => {
        const says = `${limitWords(limit, feel.quantities, view.units)}${limit.line ? '' : ', off the map'}`;
        return h('tr', {}, h('th', { scope: 'row' }, says), h('td', {}, who), h('td', { class: 'r' }, here));
      }),
    );
    equal.textContent = `Lines of equal gravity: ${feel.map.gravity.map(({ label }) => label).join(', ')}.`;
  }
  return { element, update };
}

function head(word, kind = null) {
  return h('th', { scope: 'col', class: kind }, word);
}
