// A link that opens what belongs to it; that is made when it is first wanted.

import { h, setAttribute, setText } from './dom.js';

let count = 0;

/** words() → what the link says; make() → the parts inside, each with `element` and `update`. */
export function createFold({ words, make, kind = 'link' }) {
  const id = `fold-${(count += 1)}`;
  const inner = h('div', { class: 'rows', id, hidden: true });
  let parts = null;
  const button = h('button', { type: 'button', class: kind, 'aria-expanded': false, 'aria-controls': id, onclick: toggle });
  function toggle() {
    if (!parts) {
      parts = make();
      inner.append(...parts.map(part => part.element));
    }
    inner.hidden = !inner.hidden;
    setAttribute(button, 'aria-expanded', !inner.hidden);
    if (!inner.hidden) parts.forEach(part => part.update());
  }
  return {
    button,
    element: inner,
    toggle,
    update() {
      setText(button, words());
      if (parts && !inner.hidden) parts.forEach(part => part.update());
    },
  };
}
