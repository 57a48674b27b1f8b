// A day aboard: a paragraph for each of five moments, with the numbers of this design, to be copied.

import { h, setAttribute, setText } from './dom.js';
import { createLiveText } from './feel_live.js';

export function createFeelDay({ element, store }) {
  const list = h('div', {});
  element.append(h('h3', { class: 'third' }, 'A day aboard, in words'), list);
  let moments = [];

  function update() {
    const { words } = store.feel;
    if (moments.length !== words.length) {
      moments = words.map((_, index) => createMoment({ text: () => store.feel.words[index], open: index === 0 }));
      list.replaceChildren(...moments.map(moment => moment.element));
    }
    moments.forEach(moment => moment.update());
  }
  return { update };
}

let count = 0;

function createMoment({ text, open }) {
  const id = `moment-${(count += 1)}`;
  const title = h('button', { type: 'button', class: 'link', 'aria-expanded': open, 'aria-controls': id, onclick: toggle });
  const words = createLiveText(),
    said = h('span', { class: 'small', role: 'status' });
  const copyButton = h('button', { type: 'button', class: 'btn', onclick: copy }, 'Copy');
  const inner = h('div', { id, hidden: !open }, words.element, h('p', { class: 'links' }, copyButton, said));

  function toggle() {
    inner.hidden = !inner.hidden;
    setAttribute(title, 'aria-expanded', !inner.hidden);
    setText(said, '');
    update();
  }
  async function copy() {
    try {
      await navigator.clipboard.writeText(text().text);
      setText(said, 'Copied.');
    } catch {
      getSelection().selectAllChildren(words.element);
      setText(said, 'Press Ctrl+C to copy it.');
    }
  }
  function update() {
    const { name, title: heading, text: paragraph } = text();
    setAttribute(inner, 'data-moment', name);
    setText(title, heading);
    setAttribute(copyButton, 'aria-label', `Copy: ${heading}`);
    if (!inner.hidden) words.set(paragraph);
  }
  return { element: h('section', { class: 'moment' }, h('h4', {}, title), inner), update };
}
