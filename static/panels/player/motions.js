// What moves, a button each that hides it and shows it again; and the line that says what becomes of what is shown.

import { tr } from '../../state/language.js';
import { h, s, setAttribute, setText } from '../shared/dom.js';
import { marker } from '../shared/path_key.js';
import { motionName } from '../../state/fields.js';

const MOST_TOLD = 2; // motions in the line

/** `line`: the element that says it. */
export function createMotions({ store, line }) {
  const element = h('div', { class: 'player-motions', role: 'group', 'aria-label': tr('Shown') });
  const back = h('button', { type: 'button', class: 'player-button', title: tr('Hold back where things go, then reveal it (H)'), onclick: () => turnBack() });
  let buttons = [];

  function draw() {
    buttons = store.document.motions.map((_, index) =>
      h('button', { type: 'button', class: 'player-motion', onclick: () => turn(index) }, sign(index), h('span', {}, motionName(store, index))),
    );
    element.replaceChildren(...buttons, back);
    update();
  }

  function turn(index) {
    const name = motionName(store, index),
      { hidden } = store.view;
    store.look({ hidden: hidden.includes(name) ? hidden.filter(one => one !== name) : [...hidden, name] });
  }

  const isHeldBack = () => store.view.withheld !== null;

  // where it all goes is not told until it is revealed
  function turnBack() {
    store.look({ withheld: isHeldBack() ? null : { motions: store.document.motions.map((_, index) => motionName(store, index)) } });
  }

  function update() {
    buttons.forEach((button, index) => setAttribute(button, 'aria-pressed', !store.view.hidden.includes(motionName(store, index))));
    setAttribute(back, 'aria-pressed', isHeldBack());
    setText(back, isHeldBack() ? tr('Reveal') : tr('Hold back'));
    setText(line, lineOf(store));
  }

  store.on('answer', draw);
  store.on('view', update);
  return { element, turn, turnBack };
}

/** 'Lob out lands 5.21 m spinward after 1.06 s; Lob back lands …', of the first two that are shown. */
export function lineOf({ answer, view }) {
  if (view.withheld) return tr('Where does it go?');
  const shown = (answer?.motions ?? []).filter(({ name, in_short: short }) => short && !view.hidden.includes(name));
  const told = shown.slice(0, MOST_TOLD).map(({ name, in_short: short }) => `${name} ${short}`);
  const more = shown.length - told.length;
  if (more) told.push(tr('and {count} more', { count: more }));
  return told.length ? `${told.join('; ')}.` : tr('Everything is hidden.');
}

const sign = index => s('svg', { class: 'key', width: 16, height: 16, viewBox: '0 0 16 16', 'aria-hidden': true }, marker(index, 8, 8, 5, 'stage'));
