// A button that puts words on the clipboard, and says that it did; where there is none they are selected, to be copied by hand.

import { h, setAttribute, setText } from './dom.js';

/** text() → what is copied; select() selects what can be copied by hand; kind: the button's class. */
export function createCopy({ say = 'Copy', text, select, kind = 'btn' }) {
  const said = h('span', { class: 'small', role: 'status' });
  const button = h('button', { type: 'button', class: kind, onclick: copy }, say);

  async function copy() {
    try {
      await navigator.clipboard.writeText(text());
      setText(said, 'Copied.');
    } catch {
      select();
      setText(said, 'Press Ctrl+C to copy it.');
    }
  }
  return {
    elements: [button, said],
    clear: () => setText(said, ''),
    /** What a screen reader is told that it copies. */
    name: of => setAttribute(button, 'aria-label', `${say}: ${of}`),
  };
}

export function selectWords(element) {
  getSelection().selectAllChildren(element);
}
