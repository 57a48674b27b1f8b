// A sheet over the page: a dialog that Esc, its own close button and a click outside put away.

import { h } from './dom.js';
import { icon } from './icons.js';

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
      h('button', { type: 'button', class: 'icon-button', 'aria-label': 'Close', onclick: () => element.close() }, icon('close')),
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
