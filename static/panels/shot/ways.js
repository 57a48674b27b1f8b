// The ways that arrive, as the server says them: press one and it is drawn strong on the stages and the plan; the chosen one can become the motion,
// and be thrown back. When none arrives, what is nearest, and what would do as buttons.

import { tr } from '../../state/language.js';
import { indexOf, isWay, takeWay, throwBack } from '../../state/shot.js';
import { h, setAttribute, setChildren } from '../shared/dom.js';

const FIRST = 5; // ways that are listed at once

export function createWays({ store, clock, heard }) {
  const list = h('ol', { class: 'ways', 'aria-label': tr('Ways that arrive') }),
    instead = h('div', { class: 'instead' });
  const element = h('div', {}, list, instead);
  let shown = null,
    all = false; // also those after the first

  function showAll() {
    all = true;
    shown = null;
    update();
  }

  function choose(k) {
    store.setShot({ chosen: k });
  }

  /** The chosen way becomes the motion: one step to undo, played from its beginning. */
  function take(way) {
    const { motion } = store.shot.aim,
      index = indexOf(store, motion);
    store.edit(draft => takeWay(draft, index, way));
    store.look({ chosen: index, hidden: store.view.hidden.filter(name => name !== motion) });
    clock.seek(store.read(`motions.${index}.start_s`) ?? 0);
    if (!matchMedia('(prefers-reduced-motion: reduce)').matches) clock.play();
  }

  function back(way) {
    const { motion, aim } = throwBack(store, store.shot.aim, way);
    store.edit(draft => {
      takeWay(draft, indexOf(store, store.shot.aim.motion), way);
      draft.motions.push(motion);
    });
    store.look({ chosen: store.document.motions.length - 1 });
    store.setShot({ aim, chosen: 0 }, { step: false }); // one with the throw that is added
    heard.say(tr('{motion} is added, from where it was caught.', { motion: motion.name }));
  }

  function one(way, k) {
    const { chosen, aim } = store.shot,
      on = k === chosen,
      taken = isWay(store.document.motions[indexOf(store, aim.motion)], way);
    const button = h(
      'button',
      { type: 'button', class: 'way-says', 'aria-pressed': on, onclick: () => choose(k) },
      h('span', { class: 'way-mark', 'aria-hidden': true }),
      way.says,
    );
    const more = on && [
      way.off_says && h('p', { class: 'small' }, way.off_says),
      h(
        'p',
        { class: 'links' },
        taken
          ? h('span', { class: 'small taken' }, tr('This is how it is thrown now.'))
          : h('button', { type: 'button', class: way.blocked_by ? 'btn' : 'btn strong', onclick: () => take(way) }, tr('Throw it like this')),
        !aim.to.motion && !way.blocked_by && h('button', { type: 'button', class: 'link', onclick: () => back(way) }, tr('And back')),
      ),
    ];
    return h('li', { class: on ? 'way-row chosen' : 'way-row' }, button, more);
  }

  // what would make something arrive
  function would({ says, fixed, set }) {
    const does = () => {
      if (set) for (const [path, value] of Object.entries(set)) store.set(path, value);
      if (fixed) store.setShot({ aim: { ...store.shot.aim, fixed } }, { step: !set });
      element.querySelector('button')?.focus({ preventScroll: true });
    };
    return h('button', { type: 'button', class: 'btn', onclick: does }, says);
  }

  function update() {
    const { answer, chosen, aim } = store.shot;
    const key = [answer, chosen, aim, store.document.motions[indexOf(store, aim.motion)]];
    if (shown?.every((part, i) => part === key[i])) return;
    shown = key;
    const focused = [...list.querySelectorAll('.way-says')].indexOf(document.activeElement);
    setAttribute(list, 'hidden', !answer?.ways.length);
    const ways = answer?.ways ?? [],
      rows = all ? ways : ways.slice(0, Math.max(FIRST, chosen + 1));
    setChildren(
      list,
      rows.map(one),
      rows.length < ways.length &&
        h('li', {}, h('button', { type: 'button', class: 'link', onclick: showAll }, tr('Show all {count}', { count: ways.length }))),
    );
    setChildren(instead, answer?.would_do.length ? h('p', { class: 'links' }, answer.would_do.map(would)) : []);
    if (focused >= 0) list.querySelectorAll('.way-says')[Math.min(focused, list.children.length - 1)]?.focus({ preventScroll: true });
  }
  return { element, update };
}
