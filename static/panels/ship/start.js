// The craft of the Lantern Wheel's world to start from, each under its drawing's sentence.

import { tr } from '../../state/language.js';
import { createNewest } from '../../state/newest.js';
import { RADIUS, SPIN } from '../../state/fields.js';
import { withCraft } from '../../state/ship.js';
import { showQuantity } from '../../state/units.js';
import { choiceRow, createChoice } from '../shared/choice.js';
import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createFold } from '../shared/fold.js';
import { passFocus } from './focus.js';

export function createStart({ element, store, client }) {
  let keeps = false, // whether the habitat keeps its radius and spin
    begun = false; // and nothing drawn yet
  const make = () => createList({ store, client, begin, kept: { now: () => keeps, choose: keep } });
  const first = make(),
    fold = createFold({ words: () => tr('Start from another craft'), make: () => [make()] });
  const away = h('button', { type: 'button', class: 'link', onclick: remove }, tr('Take the craft out of the scene'));
  const opener = h('p', { class: 'links' }, fold.button, away),
    intro = h('p', { class: 'words' }, tr('No craft is in this scene yet. Start from one of these, and change its parts.'));
  element.append(intro, first.element, opener, fold.element);

  function keep(wanted) {
    keeps = wanted;
    update();
  }

  async function begin(craft) {
    const kept = keeps;
    try {
      const chosen = kept ? (await client.crafts(store.read(RADIUS))).find(({ id }) => id === craft.id) : craft;
      if (!chosen)
        return store.tell({
          kind: 'refused',
          field: null,
          say: tr('{craft} does not fit this radius: a part of it would be too short or too long.', { craft: craft.title }),
        });
      if (!fold.element.hidden) fold.toggle();
      begun = !store.ship.answer;
      store.edit(draft => withCraft(draft, chosen, kept));
      toTop();
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: tr('The craft could not be fetched: {why}', { why: problem.message }) });
    }
  }

  // the place scrolls by itself, or on a small screen with the page
  function toTop() {
    const body = element.closest('.body');
    if (body.scrollHeight > body.clientHeight) body.scrollTop = 0;
    else body.scrollIntoView({ block: 'start' });
    passFocus(body.parentElement.querySelector('.head'), fold.button);
  }

  // what is drawn first comes in over the sentences, and a page that scrolls would go on with them
  function settle() {
    if (!begun || !store.ship.answer) return;
    begun = false;
    toTop();
  }

  function remove() {
    store.set('craft', null);
    store.tell({ kind: 'told', say: tr('The craft is out of the scene.'), undo: true });
    toTop();
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
  return { update, settle };
}

function createList({ store, client, begin, kept }) {
  const list = h('ul', { class: 'crafts' });
  const label = tr('Radius and spin');
  const choice = createChoice({
    label,
    options: [
      { value: false, say: tr('the craft’s') },
      { value: true, say: tr('as they are') },
    ],
    chosen: kept.now,
    choose: kept.choose,
  });
  const comes = h('p', { class: 'small' });
  const element = h('div', {}, choiceRow(label, choice), comes, list);
  const craft = one => h('button', { type: 'button', class: 'craft', onclick: () => begin(one) }, h('b', {}, one.title), h('span', {}, one.say));
  let listed = false;
  const { want } = createNewest({
    request: () => null,
    ask: () => client.crafts(),
    answered(crafts) {
      listed = true;
      setChildren(
        list,
        crafts.map(one => h('li', {}, craft(one))),
      );
    },
    failed: problem => setText(list, problem.message),
  });
  function update() {
    const { units } = store.view;
    choice.update();
    const radius = showQuantity(store.read(RADIUS), 'm', units),
      spin = showQuantity(store.read(SPIN), 'rpm', units);
    setText(
      comes,
      kept.now()
        ? tr('The habitat keeps its {radius} and {spin}: all lengths of the craft are made to fit, its masses stay.', { radius, spin })
        : tr('The habitat takes the craft’s radius and spin.'),
    );
    if (!listed) want();
  }
  return { element, update };
}
