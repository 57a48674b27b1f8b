// The lines of the map as a table: each limit, who says so, and how this habitat lies to it.

import { showQuantity } from '../state/units.js';
import { h, setChildren } from './dom.js';
import { tableRows } from './feel_map_groups.js';
import { BOUNDS } from './feel_say.js';

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
        const { label } = feel.quantities.find(({ name }) => name === limit.quantity);
        const says = limitWords(label, limit, view.units);
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

function limitWords(label, { bound, limit, unit, short, line }, units) {
  const value = unit === 'm/s' && units === 'us' ? showQuantity(limit, unit, units) : short;
  return `${label} ${BOUNDS[bound]} ${value}${line ? '' : ', off the map'}`;
}
