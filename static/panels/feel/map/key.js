// The key of the map: for each line drawn, what it says and which study says so.

import { h, setChildren } from '../../shared/dom.js';
import { tableRows } from './groups.js';
import { shortWords } from './lines.js';

/** group() → the group chosen on the map. */
export function createMapKey({ store, group }) {
  const element = h('ul', { class: 'map-key', 'aria-label': 'Whose line is which' });
  let made = '';

  function update() {
    const { feel, view } = store,
      rows = tableRows(feel, group()).map(({ limit, who }) => [shortWords({ ...limit, mine: false }, feel.quantities, view.units), who]),
      key = JSON.stringify(rows);
    if (key === made) return;
    made = key;
    setChildren(element, rows.map(([line, who]) => h('li', {}, h('b', {}, line), ` ${who}`)));
  }
  return { element, update };
}
