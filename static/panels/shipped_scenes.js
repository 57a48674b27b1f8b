// The scenes that come with the program: each with its drawing, under the question it belongs to.

import { tr } from '../state/language.js';
import { h, setAttribute, setChildren } from './shared/dom.js';
import { smallDrawing } from './shared/small_drawing.js';

/** `examples`: as of api/examples.js; units(): those one is opened in; choose({id, title}): somebody wants it. */
export function createShippedScenes({ examples, units, choose }) {
  const element = h('section', { 'aria-label': tr('Scenes that come with Rimfall') });
  let cards = [];

  function card(example) {
    const foresee = () => examples.foresee(example.id, units());
    const button = h(
      'button',
      { type: 'button', 'data-example': example.id, onclick: () => choose(example), onpointerenter: foresee, onfocus: foresee },
      smallDrawing(example.drawing),
      h('b', {}, example.title),
      h('span', {}, example.say),
    );
    return { ...example, button, element: h('li', {}, button), words: `${example.title} ${example.say} ${example.question}`.toLowerCase() };
  }

  function group(question) {
    const of = cards.filter(one => one.question === question);
    const list = h('ul', { class: 'shipped-list', 'aria-label': question }, ...of.map(one => one.element));
    return h('section', { 'data-question': question }, h('h3', { class: 'third' }, question), list);
  }

  async function update() {
    if (!cards.length) {
      cards = (await examples.list(units())).map(card);
      setChildren(element, [...new Set(cards.map(({ question }) => question))].map(group));
    }
    for (const { id, button } of cards) setAttribute(button, 'aria-current', id === examples.shown ? 'true' : null);
  }

  /** Those that hold every one of these words stay: the buttons of them. */
  function sift(wanted) {
    for (const one of cards) one.element.hidden = !wanted.every(word => one.words.includes(word));
    for (const section of element.children) section.hidden = !section.querySelector('li:not([hidden])');
    return cards.filter(one => !one.element.hidden).map(one => one.button);
  }

  return { element, update, sift };
}
