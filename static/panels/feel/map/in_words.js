// The lines of the map in words: the key under it, what each says and which study says so; and its table, with how this habitat
// lies to each.

import { h, setChildren } from '../../shared/dom.js';

/** drawing() → the server's drawing of the map. */
export function createMapKey(drawing) {
  const element = h('ul', { class: 'map-key', 'aria-label': 'Whose line is which' });
  let shown = null;

  function update() {
    const { limits } = drawing();
    if (limits === shown) return;
    shown = limits;
    setChildren(element, limits.map(({ short, who }) => h('li', {}, h('b', {}, short), ` ${who}`)));
  }
  return { element, update };
}

export function createMapTable({ store, drawing }) {
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
  let shown = null;

  function update() {
    const { limits, gravity } = drawing(),
      rows = limits.map(({ says, on_map: isOnMap, who, ids }) => [`${says}${isOnMap ? '' : ', off the map'}`, who, stateOf(store.feel, ids)]),
      key = JSON.stringify(rows);
    if (key === shown) return;
    shown = key;
    setChildren(
      body,
      rows.map(([says, who, here]) => h('tr', {}, h('th', { scope: 'row' }, says), h('td', {}, who), h('td', { class: 'r' }, here))),
    );
    equal.textContent = `Lines of equal gravity: ${gravity.join(', ')}.`;
  }
  return { element, update };
}

// rows that say the same lie the same
function stateOf({ limits }, ids) {
  return limits.find(({ id }) => ids.includes(id))?.state ?? '';
}

function head(word, kind = null) {
  return h('th', { scope: 'col', class: kind }, word);
}
