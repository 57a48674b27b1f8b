// A paragraph whose numbers change where they stand: those that have just changed are underlined for a moment.

import { h, setText } from '../shared/dom.js';

const SHOWN_MS = 1200;
const NUMBER = /([−-]?\d[\d,]*(?:\.\d+)?)/;

/** ['It takes ', '0.61', ' s.']: words and numbers by turns, beginning with words. */
export function numbersApart(text) {
  return text.split(NUMBER);
}

export function createLiveText() {
  const element = h('p', { class: 'lead' });
  let parts = [],
    spans = [],
    calm = null;

  /** Only the numbers are touched where the words are the same. */
  function set(text) {
    const next = numbersApart(text);
    const same = next.length === parts.length && next.every((part, i) => i % 2 || part === parts[i]);
    if (!same) build(next);
    else next.forEach((part, i) => i % 2 && part !== parts[i] && change(spans[i], part));
    parts = next;
  }
  function build(next) {
    spans = next.map((part, i) => (i % 2 ? h('span', { class: 'live' }, part) : part));
    element.replaceChildren(...spans);
  }
  function change(span, figure) {
    setText(span, figure);
    span.classList.add('changed');
    clearTimeout(calm);
    calm = setTimeout(() => element.querySelectorAll('.changed').forEach(one => one.classList.remove('changed')), SHOWN_MS);
  }
  return { element, set };
}
