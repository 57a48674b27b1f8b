// The talks that come with the program: each with what it is about.

import { tr } from '../state/language.js';
import { countWords } from '../state/words.js';
import { h, setChildren } from './shared/dom.js';

/** list() → promise of [{id, title, about, steps}]; choose(one): somebody wants it. */
export function createShippedTalks({ list, choose }) {
  const element = h('section', { class: 'shipped-talks', 'aria-label': tr('Talks that come with Rimfall'), hidden: true });
  let cards = [];

  function card(talk) {
    const facts = countWords(talk.steps, 'step');
    const button = h(
      'button',
      { type: 'button', 'data-talk': talk.id, onclick: () => choose(talk) },
      h('b', {}, talk.title),
      h('span', {}, talk.about),
      h('span', { class: 'small' }, facts),
    );
    return { button, element: h('li', {}, button), words: `${talk.title} ${talk.about} ${tr('talk')}`.toLowerCase() };
  }

  async function update() {
    if (cards.length) return;
    cards = (await list()).map(card);
    const rows = h('ul', { class: 'shipped-list', 'aria-label': tr('Talks') }, ...cards.map(one => one.element));
    setChildren(element, h('h3', { class: 'third' }, tr('Talks, ready to give')), rows);
    element.hidden = !cards.length;
  }

  /** Those that hold every one of these words stay: the buttons of them. */
  function sift(wanted) {
    for (const one of cards) one.element.hidden = !wanted.every(word => one.words.includes(word));
    element.hidden = cards.every(one => one.element.hidden);
    return cards.filter(one => !one.element.hidden).map(one => one.button);
  }
  return { element, update, sift };
}
