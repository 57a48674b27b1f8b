// Choices inside a sentence: a list to pick from and a figure to type, both ruled under like the figures on the cards.

import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createList } from '../shared/select.js';

/** options() → [[value, words]], values text or numbers; chosen(); choose(value). */
export function inlinePick({ label, ...list }) {
  return createList({ class: 'in-line', 'aria-label': label }, list);
}

/** text() → what stands there; keep(typed) after Enter or on leaving; `empty`: what an empty one means. */
export function inlineType({ label, text, keep, empty = () => '', wide = 5, list = null }) {
  const element = h('input', { type: 'text', class: 'in-line', 'aria-label': label, autocomplete: 'off', spellcheck: 'false', size: wide, list });
  element.addEventListener('change', () => keep(element.value.trim()));
  element.addEventListener('focus', () => element.select());
  element.addEventListener('keydown', event => {
    if (event.key === 'Escape' && element.value !== text()) {
      event.preventDefault(); // the sheet stays
      element.value = text();
      keep(element.value);
    }
  });
  function update() {
    if (!element.hasAttribute('aria-invalid')) element.value = text(); // what is refused stays to be mended
    setAttribute(element, 'placeholder', empty());
  }
  return { element, update };
}

/** A control and the mark after it: no line begins with a comma. */
export function tight(control, mark) {
  return h('span', { class: 'tight' }, control, mark);
}

/** Sentences of what may not be, under their controls and as alerts: say({name: sentence}). */
export function createRefusals(controls) {
  const element = h('div', { role: 'alert' });
  function say(refused) {
    for (const [name, control] of Object.entries(controls)) setAttribute(control.element, 'aria-invalid', name in refused || null);
    setChildren(
      element,
      Object.values(refused).map(sentence => h('p', { class: 'refusal' }, h('b', {}, sentence))),
    );
  }
  return { element, say };
}

/** A row of dots that fills, what is being made, and Cancel. */
export function createProgress({ cancel }) {
  const bar = h('span', { class: 'dotted', role: 'progressbar', 'aria-valuemin': 0, 'aria-label': 'Being made' }, h('span', {}));
  const words = h('span', { class: 'small' });
  const element = h('div', { class: 'progress', hidden: true }, words, bar, h('button', { type: 'button', class: 'btn', onclick: cancel }, 'Cancel'));
  return {
    element,
    /** done of all; null puts it away. */
    tell(say, done = 0, all = 1) {
      element.hidden = say === null;
      setText(words, say ?? '');
      setAttribute(bar, 'aria-valuemax', all);
      setAttribute(bar, 'aria-valuenow', done);
      setAttribute(bar, 'aria-valuetext', say ?? '');
      bar.firstChild.style.width = `${(100 * done) / all}%`;
    },
  };
}
