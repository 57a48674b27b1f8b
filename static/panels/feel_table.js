// The table of one quantity: every study that limits it, by year; a click on a study opens what stands behind it.

import { h, setAttribute, setText } from './dom.js';
import { createCopy, selectWords } from './copy.js';
import { behindWords, boundWords, hereWords, studyWords } from './feel_say.js';

/** rows() → the answer's rows of the quantity, `name` its word: {element, update}. Rows are made anew only when others come. */
export function createLimitsTable({ store, name, rows }) {
  const body = h('tbody', {});
  const head = h(
    'tr',
    {},
    h('th', { scope: 'col', class: 'letter' }, h('span', { class: 'unseen' }, 'Letter')),
    h('th', { scope: 'col' }, `Published on ${name.toLowerCase()}`),
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

let count = 0;

function createRow(first) {
  const id = `behind-${(count += 1)}`;
  const study = h('button', { type: 'button', class: 'study', 'aria-expanded': false, 'aria-controls': id, onclick: toggle }, studyWords(first));
  const says = h('td', { class: 'r' }),
    here = h('td', { class: 'r' });
  const words = h('span', {}),
    copy = createCopy({ text: () => row.source, select: () => selectWords(words), kind: 'link' });
  const behind = h('td', { colspan: 3 }, words, first.mine ? null : [' ', ...copy.elements]),
    under = h('tr', { class: 'behind', id, hidden: true }, h('td', { class: 'letter' }), behind);
  const letter = h('td', { class: 'letter' }, first.letter);
  const element = h('tr', { 'data-limit': first.id }, letter, h('th', { scope: 'row' }, study), says, here);
  let row = first;

  function toggle() {
    under.hidden = !under.hidden;
    setAttribute(study, 'aria-expanded', !under.hidden);
    copy.clear();
    draw();
  }
  function draw() {
    if (!under.hidden) setText(words, behindWords(row).join(' '));
  }
  function update(next, units) {
    row = next;
    setText(study, studyWords(row));
    copy.name(`the citation of ${studyWords(row)}`);
    setText(says, boundWords(row, units));
    setText(here, hereWords(row, units));
    element.classList.toggle('beyond', row.inside === false);
    draw();
  }
  return { elements: [element, under], update };
}
