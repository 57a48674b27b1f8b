// Presenting: what each key does, how large words are, and what the presenter has turned on. No elements.

import { tr, trLater } from './language.js';

/** What may be pressed, {what, keys, listed, say}: by a clicker, on a keyboard, as a button, or in the speaker's window. */
export const PRESSES = [
  {
    what: 'next',
    keys: ['PageDown', 'ArrowRight', 'ArrowDown'],
    listed: trLater('Page Down, right, down'),
    say: trLater('on: what is held back, then the next step'),
  },
  { what: 'back', keys: ['PageUp', 'ArrowLeft', 'ArrowUp'], listed: trLater('Page Up, left, up'), say: trLater('back to the step before') },
  { what: 'play', keys: [' '], listed: trLater('Space'), say: trLater('play or pause') },
  { what: 'dark', keys: ['b', '.'], listed: trLater('B, full stop'), say: trLater('dark screen, and light again') },
  { what: 'freeze', keys: ['f'], listed: 'F', say: trLater('freeze: all stands still, and goes on') },
  { what: 'slow', keys: ['s'], listed: 'S', say: trLater('slow: a quarter of the speed, and back') },
  { what: 'swap', keys: ['x'], listed: 'X', say: trLater('swap the stages') },
  { what: 'merge', keys: ['m'], listed: 'M', say: trLater('merge: one stage fills, the other is small in it') },
  { what: 'dials', keys: ['d'], listed: 'D', say: trLater('the dials, large') },
  { what: 'laser', keys: ['l'], listed: 'L', say: trLater('a bright dot that follows the pointer') },
  { what: 'notes', keys: ['n'], listed: 'N', say: trLater('the speaker’s window') },
  { what: 'room', keys: ['r'], listed: 'R', say: trLater('the code by which phones follow, and how many do') },
  { what: 'first', keys: ['Home'], listed: trLater('Home'), say: trLater('the first step') },
  { what: 'last', keys: ['End'], listed: trLater('End'), say: trLater('the last step') },
  { what: 'help', keys: ['?'], listed: '?', say: trLater('this list') },
  { what: 'leave', keys: ['Escape'], listed: trLater('Esc'), say: trLater('leave') },
];
const OWN = new Map(PRESSES.flatMap(({ what, keys }) => keys.map(key => [key, what])));
const ARROWS = new Set(['ArrowRight', 'ArrowDown', 'ArrowLeft', 'ArrowUp']);
const SLIDES = new Set([...ARROWS, 'Home', 'End']); // what moves a slider

/** What a key does while presenting: one of PRESSES, 'nothing' where the key is kept from the browser (a clicker's F5 would load the page
 *  anew), or null where it is somebody else's.
 *  @param {{key: string, ctrlKey?: boolean, metaKey?: boolean, altKey?: boolean, shiftKey?: boolean}} event
 *  @param {'' | 'slider' | 'text'} at what has the focus by somebody's own doing: a slider that was tabbed to keeps its arrows, a field its text */
export function pressOf({ key, ctrlKey = false, metaKey = false, altKey = false, shiftKey = false }, at = '') {
  if (ctrlKey || metaKey || altKey) return null;
  if (key === 'F5') return 'nothing';
  if (shiftKey && key !== '?' && key.length > 1) return null; // with Shift the arrows look round on a stage
  if (at === 'slider' && SLIDES.has(key)) return null;
  if (at === 'text' && !key.startsWith('Page')) return null;
  return OWN.get(key) ?? OWN.get(key.toLowerCase()) ?? null;
}

const LABEL_PX = 14; // of a stage's labels where `--type` is 1
const LEAST_PX = 15;
const SHARE = 0.024; // of the width at most: a narrow window takes no larger words

/** How many px high the labels of the stages are: 24 in a window 720 high, 28 in one of 1080, 40 in one of 2160; less in a small one.
 *  @param {number} width @param {number} height */
export function labelPx(width, height) {
  const high = height < 720 ? height / 30 : 16 + height / 90;
  return Math.max(LEAST_PX, Math.min(high, SHARE * width));
}

/** `--type` while presenting: everything that grows is so many times as large as at a desk.
 *  @param {number} width @param {number} height */
export const presentingType = (width, height) => Number((labelPx(width, height) / LABEL_PX).toFixed(3));

const SWIPE_PX = 60,
  SWIPE_MS = 800;

/** What a finger's way over the stages does: 'next' to the left, 'back' to the right, or null.
 *  @param {number} dx @param {number} dy @param {number} ms */
export function swipeOf(dx, dy, ms) {
  if (Math.abs(dx) < SWIPE_PX || Math.abs(dx) < 2 * Math.abs(dy) || ms > SWIPE_MS) return null;
  return dx < 0 ? 'next' : 'back';
}

/** A scene without a talk, as a talk of one step. On: play; back: to the start. */
export function oneStep({ store, clock }) {
  return {
    get title() {
      return store.document.title || tr('Untitled scene');
    },
    get steps() {
      return [this.step];
    },
    get step() {
      return { line: this.title, notes: '' };
    },
    at: 0,
    phase: 'plain',
    go: () => clock.seek(0),
    next: () => clock.play(),
    back: () => clock.seek(0),
    on: (topic, hear) => (topic === 'step' ? store.on('document', hear) : () => {}),
  };
}

const SLOWED = 0.25; // of the step's speed
const LEAST_PACE = 0.1;

/** What the presenter has turned on: {dark, frozen, slow, dials, laser, dot}; `dot`: where the bright dot is, {stage, x, y} in shares of that stage,
 *  or null. press(what) does one of PRESSES; those that want a window ('notes', 'help', 'leave') it only tells. on(hear): hear(what) after each.
 *  @param {{store: any, clock: any, talk: any}} parts */
export function createPresenting({ store, clock, talk }) {
  let hearers = /** @type {((what: string) => void)[]} */ ([]);
  let played = false; // before it stood still
  let pace = /** @type {number | null} */ (null); // before it was slow
  const state = {
    dark: false,
    frozen: false,
    slow: false,
    dials: false,
    laser: false,
    dot: /** @type {{stage: string, x: number, y: number} | null} */ (null),
    /** Another talk, or none: null. */
    give(/** @type {any} */ next) {
      talk = next ?? oneStep({ store, clock });
    },
    get talk() {
      return talk;
    },
    press(/** @type {string} */ what) {
      acts[what]?.();
      tell(what);
    },
    /** Where the pointer is over a stage, or null. */
    point(/** @type {{stage: string, x: number, y: number} | null} */ dot) {
      if (!state.laser) return;
      state.dot = dot;
      tell('dot');
    },
    /** All of it off: presenting is over. */
    rest() {
      wake();
      clock.lendPace(null);
      Object.assign(state, { dials: false, laser: false, dot: null });
      tell('rest');
    },
    on(/** @type {(what: string) => void} */ hear) {
      hearers = [...hearers, hear];
      return () => {
        hearers = hearers.filter(one => one !== hear);
      };
    },
  };
  state.give(talk);

  /** @type {Record<string, () => void>} */
  const acts = {
    next: () => step(() => talk.next()),
    back: () => step(() => talk.back()),
    first: () => step(() => talk.go(0)),
    last: () => step(() => talk.go(talk.steps.length - 1)),
    play() {
      if (state.dark || state.frozen) wakeAnd(true);
      else clock.toggle();
    },
    dark() {
      if (state.dark) return wakeAnd(played && !state.frozen);
      standStill();
      state.dark = true;
    },
    freeze() {
      if (state.frozen) return wakeAnd(played);
      standStill();
      state.frozen = true;
    },
    slow() {
      if (state.slow) return quicken();
      state.slow = true;
      pace = clock.pace;
      clock.lendPace(Math.max(LEAST_PACE, SLOWED * clock.pace));
    },
    swap: () => store.look({ swapped: !store.view.swapped }),
    merge: () => store.look({ merged: !store.view.merged }),
    dials() {
      state.dials = !state.dials;
    },
    laser() {
      state.laser = !state.laser;
      state.dot = null;
    },
  };

  function standStill() {
    if (!state.dark && !state.frozen) played = clock.playing;
    clock.pause();
  }

  function wakeAnd(/** @type {boolean} */ plays) {
    if (!state.dark || plays) state.frozen = false;
    state.dark = false;
    if (plays) clock.play();
  }

  // another step has a speed of its own, and plays or not of itself
  function step(/** @type {() => void} */ go) {
    wake();
    go();
  }

  function wake() {
    Object.assign(state, { dark: false, frozen: false });
    quicken();
  }

  function quicken() {
    state.slow = false;
    if (pace !== null) clock.lendPace(pace);
    pace = null;
  }

  function tell(/** @type {string} */ what) {
    for (const hear of hearers) hear(what);
  }
  return state;
}
