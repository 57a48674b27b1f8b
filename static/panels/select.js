// A row of a word and a list to choose from, with the refusal of its field under it.

import { h, setChildren } from './dom.js';
import { createRefusalSlot } from './refusals.js';

/** options() → [[value, words]]; chosen() → value; choose(value). Values are text or numbers. */
export function createSelect({ store, path, label, options, chosen, choose }) {
  const select = h('select', { 'aria-label': label, onchange: () => choose(listed[select.selectedIndex][0]) });
  const slot = createRefusalSlot({ store, path, frame: select });
  const element = h(
    'div',
    { class: 'group', 'data-row': path },
    h('div', { class: 'between' }, h('span', {}, label), select),
    slot.element,
  );
  let listed = [];

  function update() {
    const wanted = options();
    if (JSON.stringify(wanted) !== JSON.stringify(listed)) {
      listed = wanted;
      setChildren(
        select,
        listed.map(([value, words]) => h('option', { value: String(value) }, words)),
      );
    }
    select.selectedIndex = listed.findIndex(([value]) => value === chosen());
    slot.update();
  }
  return { element, update };
}
