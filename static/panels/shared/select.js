// A row of a word and a list to choose from, with the refusal of its field under it.

import { h, setChildren } from './dom.js';
import { createRefusalSlot } from './refusals.js';

/** A list alone, its options set anew when they change: options() → [[value, words]]; chosen() → value; choose(value). Values are
 * text or numbers; attributes are the list's own. */
export function createList(attributes, { options, chosen, choose }) {
  const element = h('select', { ...attributes, onchange: () => choose(listed[element.selectedIndex][0]) });
  let listed = [];
  function update() {
    const wanted = options();
    if (JSON.stringify(wanted) !== JSON.stringify(listed)) {
      listed = wanted;
      setChildren(
        element,
        listed.map(([value, words]) => h('option', { value: String(value) }, words)),
      );
    }
    element.selectedIndex = listed.findIndex(([value]) => value === chosen());
  }
  return { element, update };
}

/** The same in a row under its label. */
export function createSelect({ store, path, label, options, chosen, choose }) {
  const list = createList({ 'aria-label': label }, { options, chosen, choose });
  const slot = createRefusalSlot({ store, path, frame: list.element });
  const element = h(
    'div',
    { class: 'group', 'data-row': path },
    h('div', { class: 'between' }, h('span', {}, label), list.element),
    slot.element,
  );
  function update() {
    list.update();
    slot.update();
  }
  return { element, update };
}
