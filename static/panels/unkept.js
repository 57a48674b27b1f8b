// At the head of the page, as long as it is so: nothing is being kept, why, and how to save the work all the same.

import { tr } from '../state/language.js';
import { $, h, setChildren, setText } from './shared/dom.js';
import { createSaved } from './shared/files.js';

/** The words, with the way out; saveScene() → the name of the file. */
export function unkeptNotice(trouble, saveScene) {
  const saved = createSaved();
  return h(
    'div',
    { class: 'notice failed' },
    h('p', {}, h('b', {}, trouble.say)),
    h('p', { class: 'links' }, h('button', { type: 'button', class: 'link', onclick: () => saved.tell(saveScene()) }, tr('Save as a file')), saved.element),
  );
}

export function createUnkept({ kept, saveScene }) {
  const place = $('#unkept');
  let said = null;
  function update() {
    if (kept.trouble?.why === said) return;
    said = kept.trouble?.why;
    setChildren(place, kept.trouble && unkeptNotice(kept.trouble, saveScene));
    setText($('#alert'), kept.trouble?.say ?? '');
  }
  kept.on(update);
  update();
}
