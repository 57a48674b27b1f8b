// What happens as a paragraph to copy into a text: the server's words, rounded and without symbols, in the present or the past. The
// exact sentence stays beside it.

import { tr } from '../../state/language.js';
import { h, setText } from '../shared/dom.js';
import { createChoice } from '../shared/choice.js';
import { createCopy, selectWords } from '../shared/files.js';
import { createFold } from '../shared/fold.js';

/** words: what the link that unfolds it says; prose() → {present, past}, or null while there is none; of(): what it is of. */
export function createProse({ store, words, prose, of }) {
  const text = h('p', { class: 'prose' });
  const copy = createCopy({ text: () => text.textContent, select: () => selectWords(text), kind: 'link' });
  const tense = createChoice({
    label: tr('Tense'),
    options: [
      { value: 'past', say: tr('past') },
      { value: 'present', say: tr('present') },
    ],
    chosen: () => store.view.tense,
    choose: value => store.look({ tense: value }),
  });
  const inside = {
    element: h('div', {}, text, h('p', { class: 'links' }, tense.element, ...copy.elements)),
    update() {
      const next = prose()?.[store.view.tense] ?? '';
      if (text.textContent !== next) copy.clear();
      setText(text, next);
      tense.update();
      copy.name(of());
    },
  };
  const fold = createFold({ words: () => words, make: () => [inside], inner: h('div', { class: 'as-prose' }), turned: seen });
  const element = h('div', { class: 'prose-fold' }, fold.button, fold.element);
  function seen(open) {
    if (open) element.scrollIntoView({ block: 'nearest' });
  }
  return {
    element,
    update() {
      element.hidden = !prose()?.[store.view.tense];
      if (!element.hidden) fold.update();
    },
  };
}
