// Presenting: the whole window for the stages, a line over them, clock and lanes below. It owns the keys while it lasts. It asks nothing of the
// server and knows no place of the workbench, so that a single file presents by it too.

import { tr } from '../../state/language.js';
import { askAlong } from '../../state/asking.js';
import { createPresenting, presentingType } from '../../state/presenting.js';
import { createSpeaking } from '../../state/speaking.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { createDot, placeOf } from './dot.js';
import { createFull } from './full.js';
import { createGuessBar, guessWords } from './guess_bar.js';
import { attachHands } from './hands.js';
import { createHelp } from './help.js';
import { createSurtitle } from './surtitle.js';

const TOLD = {
  dark: state => (state.dark ? tr('The screen is dark. Press B for light.') : tr('Light again.')),
  freeze: state => (state.frozen ? tr('Frozen.') : tr('It goes on.')),
  slow: state => (state.slow ? tr('Slow.') : tr('At the step’s own speed.')),
  laser: state => (state.laser ? tr('Bright dot on.') : tr('Bright dot off.')),
  dials: state => (state.dials ? tr('Dials shown.') : tr('Dials hidden.')),
  swap: () => tr('Stages swapped.'),
  merge: (_, view) => (view.merged ? tr('One stage fills the screen.') : tr('Both stages.')),
};

/** `element`: the frame that holds stages and desk (`.stages`, `.desk`); `notes()` opens the speaker's window and
 *  `Channel` is BroadcastChannel, where there can be one; `room`: those who follow, where some may (room.js);
 *  left(): it was left. → {enter(talk), leave(), isOn, state, press(what)}: a talk as of state/talk.js, or none: the scene as it stands. */
export function createPresent({ store, clock, talk = null, element, notes = null, Channel = null, room = null, left = () => {} }) {
  const state = createPresenting({ store, clock, talk });
  const dials = element.querySelector('.dials'); // a file that plays by itself asks nobody for another answer
  const there = { notes, room, dials };
  const offered = what => there[what] !== null;
  const surtitle = createSurtitle({ press });
  const help = createHelp({ press, offered });
  const light = () => press('dark');
  const cover = h(
    'section',
    { class: 'present-dark', 'aria-label': tr('Dark screen'), tabindex: -1, hidden: true, onclick: light },
    h('p', { class: 'unseen' }, TOLD.dark({ dark: true })),
  );
  const told = h('p', { class: 'unseen', role: 'status' });
  const bar = createGuessBar({ store });
  const dot = createDot({ element });
  const full = createFull({ left: leave });
  const says = () => (store.guesses.motion === null ? '' : guessWords(store.guesses, store.view.units));
  const speaking = createSpeaking({ presenting: state, store, clock, press, says, Channel });
  const under = [surtitle.element, ...element.querySelectorAll('.stages, .desk')];
  let hands = null,
    before = null, // how the page was set
    offs = [],
    followed = []; // the talk

  function enter(next = null) {
    state.give(next ?? talk);
    if (hands) return follow();
    before = { folded: store.view.folded, swapped: store.view.swapped, merged: store.view.merged };
    element.prepend(surtitle.element);
    element.append(cover, told);
    element.querySelector('.desk').prepend(bar.element);
    element.classList.add('presenting');
    grow();
    store.look({ presenting: true });
    hands = attachHands({ element, press, idle });
    const off = new AbortController();
    addEventListener('resize', grow, { signal: off.signal });
    element.addEventListener('pointermove', event => state.point(placeOf(event)), { signal: off.signal });
    // a slider let go by the pointer is no place for a clicker's keys, and a stage no place for a ring about it
    element.addEventListener('pointerup', event => event.target.matches('input[type=range], .stage-view') && surtitle.focus(), { signal: off.signal });
    addEventListener('pagehide', speaking.end, { signal: off.signal });
    const heardBy = [clock.on(speaking.changed), ...['view', 'guesses', 'document'].map(topic => store.on(topic, speaking.changed))];
    offs = [() => off.abort(), state.on(heard), ...heardBy];
    full.enter();
    room?.begin(state, element);
    follow();
    speaking.begin();
    surtitle.focus();
  }

  function follow() {
    for (const one of followed) one();
    followed = [...['step', 'phase', 'steps'].map(topic => state.talk.on(topic, update)), askAlong({ store, clock, talk: state.talk })];
    update();
  }

  function leave() {
    if (!hands) return;
    hands.stop();
    hands = null;
    for (const off of [...offs, ...followed]) off();
    followed = [];
    full.leave();
    speaking.end();
    room?.end();
    state.rest();
    show();
    for (const part of [surtitle.element, cover, told, bar.element]) part.remove();
    element.classList.remove('presenting', 'idle', 'with-dials', 'pointing');
    element.style.removeProperty('--type');
    store.look({ presenting: false, withheld: null, ...before });
    left();
  }

  function press(what) {
    if (!hands || !offered(what)) return;
    full.back();
    state.press(what);
  }

  function heard(what) {
    if (what === 'help') help.show();
    if (what === 'leave') leave();
    if (what === 'room') room.toggle();
    if (what === 'notes') {
      full.lend();
      notes();
    }
    show();
    speaking.changed();
    if (what === 'dark') (state.dark ? cover : surtitle.element.firstChild).focus({ preventScroll: true });
    if (TOLD[what]) setText(told, TOLD[what](state, store.view));
  }

  function show() {
    cover.hidden = !state.dark;
    for (const part of under) part.inert = state.dark;
    element.classList.toggle('with-dials', state.dials);
    element.classList.toggle('pointing', state.laser);
    dot.show(state.dot);
  }

  // what somebody uses by the keyboard stays in sight
  function idle(still) {
    const used = element.querySelector('.desk :focus-visible, .surtitle-tools :focus-visible');
    element.classList.toggle('idle', still && !used && !state.dials);
  }

  function update() {
    surtitle.update(state.talk);
    setText(told, state.talk.step?.line ?? '');
    setAttribute(told, 'data-step', state.talk.at);
    speaking.changed();
  }

  function grow() {
    element.style.setProperty('--type', presentingType(innerWidth, innerHeight));
    store.look({ type: store.view.type }); // whoever measures words does so anew
  }

  return {
    enter,
    leave,
    press,
    state,
    get isOn() {
      return hands !== null;
    },
  };
}
