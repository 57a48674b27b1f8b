// The answer about the craft as files (its drawing, pages to print, a table of its figures), and its sentences to copy.

import { tr, trLater } from '../../state/language.js';
import { craftRequest, findingsOf } from '../../state/ship.js';
import { h } from '../shared/dom.js';
import { createCopy, createSaved, download, fileName, selectWords } from '../shared/files.js';

const FILES = [
  ['pdf', trLater('Pages to print (PDF)'), 'pdf'],
  ['svg', trLater('Drawing (SVG)'), 'svg'],
  ['csv', trLater('Figures (CSV)'), 'csv'],
];

export function createSaving({ store, client, questions }) {
  const saved = createSaved();
  async function save(format, ending) {
    try {
      const file = await client.craftFile(format, craftRequest(store.document), store.view.units);
      saved.tell(download(`${fileName(store.document.craft.title || store.read('title'))}-craft.${ending}`, file));
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: tr('The craft could not be saved: {why}', { why: problem.message }) });
    }
  }
  const copy = createCopy({ say: tr('Copy the answers'), text: () => answerWords(store.ship.answer), select: () => selectWords(questions), kind: 'link' });
  return h(
    'p',
    { class: 'links craft-saving' },
    FILES.map(([format, say, ending]) => h('button', { type: 'button', class: 'link', onclick: () => save(format, ending) }, tr(say))),
    ...copy.elements,
    saved.element,
  );
}

/** Every question with its sentences, and the caution: words for somebody's notes. */
export function answerWords(answer) {
  return [...findingsOf(answer).map(({ question, says }) => `${question}\n${says.join(' ')}`), answer?.caution ?? ''].join('\n\n');
}
