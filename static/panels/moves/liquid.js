// What is poured: a named liquid, and where its figures come from.

import { h, setText } from '../shared/dom.js';

export function createLiquid(store, path) {
  const select = h(
    'select',
    { 'aria-label': 'Liquid', onchange: () => store.set(path, select.value) },
    store.fields.liquids.map(liquid => h('option', { value: liquid.name }, liquid.name)),
  );
  const source = h('p', { class: 'small' });
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, 'Liquid'), select), source);
  return {
    element,
    update() {
      select.value = store.read(path);
      const known = store.fields.liquids.find(liquid => liquid.name === select.value);
      setText(source, known?.source ? `Source: ${known.source}` : '');
    },
  };
}
