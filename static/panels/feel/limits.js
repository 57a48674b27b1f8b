// What was published: for each quantity our value, a rule, one sentence, its table and limits of one's own.

import { tr, trAs, trLater } from '../../state/language.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { createOwnLimits } from './own_limits.js';
import { createRule, ruleKey } from './rule.js';
import { countRows, quantityHeading, rowsOf, behindWords, boundWords, stateWords, studyWords } from './figure_words.js';
import { createFold } from '../shared/fold.js';
import { createCopy, selectWords } from '../shared/files.js';

const VARY = trLater('People vary, the studies are few: see the caution below.');

export function createFeelLimits({ element, store }) {
  const list = h('div', {});
  element.append(
    h('h3', { class: 'third' }, tr('Published limits')),
    h('p', { class: 'small' }, tr(VARY)),
    h('p', { class: 'small rule-key' }, ...ruleKey()),
    list,
  );
  let quantities = [];

  // as wide as the place is: the letters keep their size
  new ResizeObserver(() => update()).observe(list);

  function update() {
    const { feel } = store;
    if (!feel) return;
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
    words: () => tr('Table of {rows}', { rows: countRows(rows()) }),
    make: () => [createLimitsTable({ store, name: quantity().in_text, rows })],
  });
  const tables = h('div', {}, h('p', { class: 'links' }, table.button), table.element);
  const own = createOwnLimits({ store, quantity: quantity() });
  return {
    element: h('article', { class: 'quantity', 'data-quantity': name }, head, rule.element, says, tables, own.element),
    update(wide) {
      const now = quantity();
      setText(head, quantityHeading(now, store.view.units));
      rule.update(now, rows(), wide, store.view.units);
      setText(says, now.says);
      setAttribute(tables, 'hidden', rows().length === 0);
      table.update();
      own.update();
    },
  };
}

// The table of one quantity: every study that limits it, by year; a click on a study opens what stands behind it.

/** rows() → the answer's rows of the quantity, `name` its name in a sentence: {element, update}. Rows are made anew only when others come. */
function createLimitsTable({ store, name, rows }) {
  const body = h('tbody', {});
  const head = h(
    'tr',
    {},
    h('th', { scope: 'col', class: 'letter' }, h('span', { class: 'unseen' }, tr('Letter'))),
    h('th', { scope: 'col' }, tr('Published on {quantity}', { quantity: name })),
    h('th', { scope: 'col', class: 'r' }, trAs('a study', 'says')),
    h('th', { scope: 'col', class: 'r' }, tr('here')),
  );
  const element = h('table', { class: 'limits' }, h('thead', {}, head), body);
  let builtFrom = '',
    shown = [];

  function update() {
    const now = rows(),
      key = now.map(({ id, letter, known_by: knownBy }) => `${id} ${letter} ${knownBy}`).join();
    if (key !== builtFrom) {
      builtFrom = key;
      shown = now.map(row => createRow(row));
      body.replaceChildren(...shown.flatMap(row => row.elements));
    }
    shown.forEach((row, i) => row.update(now[i], store.view.units));
  }
  return { element, update };
}

function createRow(first) {
  let row = first;
  const says = h('td', { class: 'r' }),
    state = h('td', { class: 'r' }),
    words = h('span', {}),
    copy = createCopy({ text: () => row.source, select: () => selectWords(words), kind: 'link' });
  const behind = h('td', { colspan: 3 }, words, first.mine ? null : [' ', ...copy.elements]);
  const study = createFold({
    kind: 'study',
    inner: h('tr', { class: 'behind' }, h('td', { class: 'letter' })),
    words: () => studyWords(row),
    make: () => [{ element: behind, update: () => setText(words, behindWords(row).join(' ')) }],
    turned: copy.clear,
  });
  const letter = h('td', { class: 'letter' }, first.letter);
  const element = h('tr', { 'data-limit': first.id }, letter, h('th', { scope: 'row' }, study.button), says, state);

  function update(next, units) {
    row = next;
    study.update();
    copy.name(tr('the citation of {study}', { study: studyWords(row) }));
    setText(says, boundWords(row, units));
    setText(state, stateWords(row, units));
    element.classList.toggle('beyond', row.inside === false);
  }
  return { elements: [element, study.element], update };
}
