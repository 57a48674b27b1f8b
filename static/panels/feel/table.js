// The table of one quantity: every study that limits it, by year; a click on a study opens what stands behind it.

import { h, setText } from '../shared/dom.js';
import { createCopy, selectWords } from '../shared/copy.js';
import { behindWords, boundWords, hereWords, studyWords } from './say.js';
import { createFold } from '../shared/fold.js';

/** rows() → the answer's rows of the quantity, `name` its name in a sentence: {element, update}. Rows are made anew only when others come. */
export function createLimitsTable({ store, name, rows }) {
  const body = h('tbody', {});
  const head = h(
    'tr',
    {},
    h('th', { scope: 'col', class: 'letter' }, h('span', { class: 'unseen' }, 'Letter')),
    h('th', { scope: 'col' }, `Published on ${name}`),
    h('th', { scope: 'col', class: 'r' }, 'says'),
    h('th', { scope: 'col', class: 'r' }, 'here'),
  );
  const element = h('table', { class: 'limits' }, h('thead', {}, head), body);
  let made = '',
    shown = [];

  function update() {
    const now = rows(),
      key = now.map(({ id, letter, known_by: knownBy }) => `${id} ${letter} ${knownBy}`).join();
    if (key !== made) {
      made = key;
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
    here = h('td', { class: 'r' }),
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
  const element = h('tr', { 'data-limit': first.id }, letter, h('th', { scope: 'row' }, study.button), says, here);

  function update(next, units) {
    row = next;
    study.update();
    copy.name(`the citation of ${studyWords(row)}`);
    setText(says, boundWords(row, units));
    setText(here, hereWords(row, units));
    element.classList.toggle('beyond', row.inside === false);
  }
  return { elements: [element, study.element], update };
}
