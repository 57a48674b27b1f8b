// The published limits: for each quantity our value, a rule, one sentence, and its table; a limit of one's own under each.

import { h, setAttribute, setText } from '../shared/dom.js';
import { createOwnLimits } from './own.js';
import { createRule, ruleKey } from './rule.js';
import { countRows, headingWords, rowsOf } from './say.js';
import { createLimitsTable } from './table.js';
import { createFold } from '../shared/fold.js';

const VARY = 'People vary, the studies are few: see the caution below.';

export function createFeelLimits({ element, store }) {
  const summary = h('p', { class: 'small' }),
    list = h('div', {});
  element.append(h('h3', { class: 'third' }, 'Published limits'), summary, h('p', { class: 'small' }, VARY), h('p', { class: 'small rule-key' }, ...ruleKey()), list);
  let quantities = [];

  // as wide as the place is: the letters keep their size
  new ResizeObserver(() => update()).observe(list);

  function update() {
    const { feel } = store;
    if (!feel) return;
    setText(summary, feel.says.summary);
    if (quantities.length !== feel.quantities.length) {
      quantities = feel.quantities.map(quantity => createQuantity({ store, name: quantity.name }));
      list.replaceChildren(...quantities.map(quantity => quantity.element));
    }
    quantities.forEach(quantity => quantity.update(list.clientWidth));
  }
  return { update };
}

function createQuantity({ store, name }) {
  const quantity = () => store.feel.quantities.find(one => one.name === name);
  const rows = () => rowsOf(store.feel, name);
  const head = h('h4', {}),
    says = h('p', { class: 'lead' }),
    rule = createRule();
  const table = createFold({
    words: () => `Table of ${countRows(rows())}`,
    make: () => [createLimitsTable({ store, name: quantity().in_text, rows })],
  });
  const tables = h('div', {}, h('p', { class: 'links' }, table.button), table.element);
  const own = createOwnLimits({ store, quantity: quantity() });
  return {
    element: h('article', { class: 'quantity', 'data-quantity': name }, head, rule.element, says, tables, own.element),
    update(wide) {
      const now = quantity();
      setText(head, headingWords(now, store.view.units));
      rule.update(now, rows(), wide, store.view.units);
      setText(says, now.says);
      setAttribute(tables, 'hidden', rows().length === 0);
      table.update();
      own.update();
    },
  };
}
