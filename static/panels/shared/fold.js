// What opens: a link that unfolds what belongs to it, made when it is first wanted; and a sheet over the page.

import { tr } from '../../state/language.js';
import { h, setAttribute, setText, icon } from './dom.js';

let count = 0;

/** words() → what the link says; make() → the parts inside, each with `element` and `update`; `inner`: what they stand in;
 *  turned(open): told each time. */
export function createFold({ words, make, kind = 'link', inner = h('div', { class: 'rows' }), turned = () => {} }) {
  const id = `fold-${(count += 1)}`;
  let parts = null;
  inner.id = id;
  inner.hidden = true;
  const button = h('button', { type: 'button', class: kind, 'aria-expanded': false, 'aria-controls': id, onclick: toggle });
  function toggle() {
    if (!parts) {
      parts = make();
      inner.append(...parts.map(part => part.element));
    }
    inner.hidden = !inner.hidden;
    setAttribute(button, 'aria-expanded', !inner.hidden);
    update();
    turned(!inner.hidden);
  }
  function update() {
    setText(button, words());
    if (!inner.hidden) parts.forEach(part => part.update());
  }
  return { button, element: inner, toggle, update };
}

// A sheet over the page: a dialog that Esc, its own close button and a click outside put away.

export function createSheet({ title, wide = false }) {
  const content = h('div', { class: 'sheet-in' });
  const id = `sheet-${title.toLowerCase().replace(/\W+/g, '-')}`;
  const element = h(
    'dialog',
    { class: `sheet${wide ? ' wide' : ''}`, 'aria-labelledby': id },
    h(
      'header',
      {},
      h('h2', { id }, title),
      h('button', { type: 'button', class: 'icon-button', 'aria-label': tr('Close'), onclick: () => element.close() }, icon('close')),
    ),
    content,
  );
  element.addEventListener('click', event => {
    if (event.target === element) element.close();
  });
  document.body.append(element);
  return {
    element,
    content,
    show() {
      if (!element.open) element.showModal();
    },
    close: () => element.close(),
  };
}
