// A name that is changed where it stands: Enter keeps, Esc restores.

import { h, setText } from './dom.js';

/** read() → the name; write(typed) is called with a new one that is not empty. */
export function createEditedName({ label, read, write, kind = null }) {
  const element = h('span', {
    contenteditable: 'plaintext-only',
    role: 'textbox',
    'aria-label': label,
    spellcheck: 'false',
    class: kind,
    title: 'Click to rename',
    onblur() {
      const typed = element.textContent.replace(/\s+/g, ' ').trim();
      if (typed && typed !== read()) write(typed);
      setText(element, read());
    },
    onkeydown(event) {
      if (event.key === 'Escape') setText(element, read());
      if (event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      element.blur();
    },
  });
  return {
    element,
    update() {
      if (document.activeElement !== element) setText(element, read());
    },
  };
}
