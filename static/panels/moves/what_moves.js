// Place 2: a card a motion, and what adds one.

import { isRightToLeft, tr } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { clearPlace, kindGroups, otherWord, sameAgain } from '../../state/motions.js';
import { homeCount } from '../../state/homes.js';
import { isTumble, mayBeAdded } from '../../state/ship.js';
import { shapeOf } from '../../state/shapes.js';
import { freshName } from '../../state/words.js';
import { $, h, setAttribute } from '../shared/dom.js';
import { createCard } from './card.js';
import { createProse } from './prose.js';

const WIDE_PX = 368; // of what adds one, as in rows.css, and how far it stays from the window's edges
const GAP_PX = 8;

export function createWhatMoves({ store, large, explain }) {
  let cards = [],
    builtFor = null;
  const { kinds } = store.fields;
  const adding = $('#adding');
  const add = kind => {
    const { add: words, short } = kinds[kind];
    // what is read out holds what is seen
    const said = words.toLowerCase().includes(short.toLowerCase())
      ? tr('Add {thing}', { thing: words })
      : tr('{name}: add {thing}', { name: short, thing: words });
    const say = `${said[0].toUpperCase()}${said.slice(1)}`;
    return h('button', { type: 'button', class: 'btn', 'aria-label': say, title: say, onclick: () => addMotion(kind) }, short);
  };
  const groups = kindGroups(kinds).map(([word, of]) => {
    const buttons = of.map(kind => ({ kind, button: add(kind) }));
    const own = h('span', { class: 'add-word', 'aria-hidden': true }, word),
      offered = h('span', { class: 'add-kinds' }, ...buttons.map(({ button }) => button));
    return { buttons, element: h('div', { class: 'add-group', role: 'group', 'aria-label': word }, own, offered) };
  });
  const inCraft = h('p', { class: 'small', hidden: true }, tr('In a craft that tumbles only drops and throws are worked out.'));
  adding.append(...groups.map(({ element }) => element), inCraft);
  adding.addEventListener('beforetoggle', ({ newState }) => newState === 'open' && placeAdding());

  const prose = createProse({ store, words: tr('The whole scene as prose'), prose: () => store.answer?.prose ?? null, of: () => tr('the whole scene') });
  $('#scene-prose').append(prose.element);

  const whose = $('#moves-whose');
  whose.textContent = tr('Told for this habitat. “What does it look like?” tells where each lands in every one.');

  const names = () => store.document.motions.map((_, i) => motionName(store, i));

  function addMotion(kind) {
    if (adding.popover) adding.hidePopover();
    const motion = structuredClone(kinds[kind].new);
    motion.place = clearPlace(motion.place, store.document.motions);
    motion.name = freshName(kinds[kind].title, names());
    store.edit(draft => {
      draft.motions.push(motion);
    });
    chooseLast();
  }
  function duplicate(index) {
    insert(index, { ...structuredClone(store.document.motions[index]), name: freshName(names()[index], names()) });
  }
  function mirror(index) {
    const motion = store.document.motions[index];
    if (otherWord(store.fields, motion)) insert(index, sameAgain(store.fields, motion, names()[index], names()));
  }
  function insert(index, motion) {
    store.edit(draft => {
      draft.motions.splice(index + 1, 0, motion);
    });
    store.look({ chosen: index + 1 });
  }
  function remove(index) {
    const gone = names()[index];
    store.edit(draft => {
      draft.motions.splice(index, 1);
    });
    store.look({
      chosen: Math.max(0, Math.min(index, store.document.motions.length - 1)),
      hidden: store.view.hidden.filter(name => name !== gone),
    });
    store.tell({ kind: 'told', say: tr('{name} is gone.', { name: gone }), undo: true });
  }
  function chooseLast() {
    store.look({ chosen: store.document.motions.length - 1 });
    cards.at(-1)?.element.scrollIntoView({ block: 'nearest' });
  }

  // under its button, or where there is more room over it; within the window
  function placeAdding() {
    const { left, right, top, bottom } = $('#add-open').getBoundingClientRect();
    const { clientWidth } = document.documentElement,
      wide = Math.min(WIDE_PX, clientWidth - 2 * GAP_PX);
    const over = innerHeight - bottom < 220 && top > innerHeight - bottom;
    Object.assign(adding.style, {
      left: `${Math.max(GAP_PX, Math.min(isRightToLeft ? left : right - wide, clientWidth - wide - GAP_PX))}px`,
      top: over ? 'auto' : `${bottom + 6}px`,
      bottom: over ? `${innerHeight - top + 6}px` : 'auto',
      maxHeight: `${Math.max(top, innerHeight - bottom) - 14}px`,
    });
  }

  function offer() {
    const { motions } = store.document;
    for (const { buttons, element } of groups) {
      for (const { kind, button } of buttons) setAttribute(button, 'hidden', !mayBeAdded(motions, kind));
      setAttribute(element, 'hidden', !buttons.some(({ kind }) => mayBeAdded(motions, kind)));
    }
    setAttribute(inCraft, 'hidden', !motions.some(isTumble));
  }

  // cards are made anew only when the cast changes: a card in use keeps its focus
  function update() {
    const cast = [shapeOf(store.document.habitat), ...store.document.motions.map(motion => motion.kind)].join();
    if (cast !== builtFor) {
      builtFor = cast;
      cards = store.document.motions.map((motion, index) => createCard({ store, index, kind: motion.kind, duplicate, mirror, remove, large, explain }));
      $('#cards').replaceChildren(...cards.map(card => card.element));
    }
    const none = cards.length === 0; // then all that may be added stands in the place
    setAttribute($('#nothing'), 'hidden', !none);
    setAttribute($('#add-open'), 'hidden', none);
    setAttribute($('#scene-prose'), 'hidden', none);
    offer();
    setAttribute(whose, 'hidden', none || homeCount(store) < 2);
    setAttribute(adding, 'popover', none ? null : 'auto');
    if (store.view.place !== 2) return;
    cards.forEach(card => card.update());
    prose.update();
  }
  for (const topic of ['document', 'answer', 'view', 'notice']) store.on(topic, update);
  update();
}
