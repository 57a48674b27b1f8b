// The craft of the Lantern Wheel's world to start from, each under its drawing's sentence.

import { createNewest } from '../../state/newest.js';
import { withCraft } from '../../state/ship.js';
import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createFold } from '../shared/fold.js';

export function createStart({ element, store, client }) {
  const first = createList({ client, begin });
  const fold = createFold({ words: () => 'Start from another craft', make: () => [createList({ client, begin })] });
  const away = h('button', { type: 'button', class: 'link', onclick: remove }, 'Take the craft out of the scene');
  const opener = h('p', { class: 'links' }, fold.button, away),
    intro = h('p', { class: 'words' }, 'No craft is in this scene yet. Start from one of these; its radius and spin become those of the habitat.');
  element.append(intro, first.element, opener, fold.element);

  function begin(craft) {
    if (!fold.element.hidden) fold.toggle();
    store.edit(draft => withCraft(draft, craft));
    element.closest('.body').scrollTop = 0;
  }

  function remove() {
    store.set('craft', null);
    store.tell({ kind: 'told', say: 'The craft is out of the scene.', undo: true });
  }

  function update() {
    const has = Boolean(store.document.craft);
    for (const part of [intro, first.element]) setAttribute(part, 'hidden', has);
    setAttribute(opener, 'hidden', !has);
    if (!has) {
      fold.element.hidden = true;
      setAttribute(fold.button, 'aria-expanded', false);
      first.update();
    } else fold.update();
  }
  return { update };
}

function createList({ client, begin }) {
  const element = h('ul', { class: 'crafts' });
  const craft = one => h('button', { type: 'button', class: 'craft', onclick: () => begin(one) }, h('b', {}, one.title), h('span', {}, one.say));
  let listed = false;
  const { want } = createNewest({
    request: () => null,
    ask: () => client.crafts(),
    answered(crafts) {
      listed = true;
      setChildren(
        element,
        crafts.map(one => h('li', {}, craft(one))),
      );
    },
    failed: problem => setText(element, problem.message),
  });
  return { element, update: () => listed || want() };
}
