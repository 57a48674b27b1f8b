// A talk as it is made: its steps kept, changed, moved and taken away, each in a step that can be undone. No elements.

import { motionName } from './fields.js';
import { PLAIN_STEP, stepOfView } from './step_view.js';

export const MOST_STEPS = 200;
const UNDO_STEPS = 200;

/** Of a talk as of state/talk.js. on(hear): hear({typing}) after every change, undone ones too. */
export function createEdits(talk) {
  const hearers = new Set();
  let past = /** @type {any[]} */ ([]),
    future = /** @type {any[]} */ ([]),
    typed = /** @type {string | null} */ (null); // what is being typed: one step to undo

  const now = () => ({ title: talk.title, about: talk.about, steps: talk.steps, at: talk.at });
  function put(/** @type {any} */ next, /** @type {string | null} */ typing = null) {
    if (typing === null || typing !== typed) {
      past = [...past.slice(1 - UNDO_STEPS), now()];
      future = [];
    }
    typed = typing;
    talk.set(next);
    for (const hear of hearers) hear({ typing: typing !== null });
  }
  function travel(/** @type {any[]} */ from, /** @type {any[]} */ to) {
    const next = from.pop();
    if (!next) return false;
    to.push(now());
    typed = null;
    talk.set(next);
    for (const hear of hearers) hear({ typing: false });
    return true;
  }
  const spliced = (/** @type {number} */ at, /** @type {number} */ gone, /** @type {any[]} */ ...steps) => {
    const list = [...talk.steps];
    list.splice(at, gone, ...steps);
    return list;
  };

  return {
    get canUndo() {
      return past.length > 0;
    },
    get canRedo() {
      return future.length > 0;
    },
    get isFull() {
      return talk.steps.length >= MOST_STEPS;
    },
    /** Another talk in its place, {title, about, steps}: a step to undo too. */
    open: talkDocument => put({ title: talkDocument.title, about: talkDocument.about ?? '', steps: talkDocument.steps, at: 0 }),
    name: title => put({ title }, 'title'),
    describe: about => put({ about }, 'about'),
    /** A step after the one the talk is at, where it is at from then on. */
    keep(step) {
      const at = talk.steps.length ? talk.at + 1 : 0;
      put({ steps: spliced(at, 0, step), at });
    },
    /** Part of a step; `typing`: by a hand that types. */
    change(at, part, { typing = false } = {}) {
      put({ steps: spliced(at, 1, inOrder({ ...talk.steps[at], ...part }, part)) }, typing ? `${at} ${Object.keys(part)}` : null);
    },
    duplicate: at => put({ steps: spliced(at + 1, 0, { ...talk.steps[at] }), at: at + 1 }),
    /** To where step `to` is; false where there is none. */
    move(at, to) {
      if (to < 0 || to >= talk.steps.length || to === at) return false;
      const steps = spliced(at, 1);
      steps.splice(to, 0, talk.steps[at]);
      put({ steps });
      return true;
    },
    remove: at => put({ steps: spliced(at, 1) }),
    undo: () => travel(past, future),
    redo: () => travel(future, past),
    on: hear => hearers.add(hear),
  };
}

/** What is on the stages now as a step; `moved`: cameras that no longer stand at their seats (state/step_view.js). Words are left to be written. */
export function stepNow({ store, clock, moved }) {
  const names = store.document.motions.map((_, i) => motionName(store, i));
  const named = store.document.motions.every(({ name }, i) => name === names[i]);
  const scene = named ? store.document : { ...store.document, motions: store.document.motions.map((motion, i) => ({ ...motion, name: names[i] })) };
  const { view } = store;
  const kept = stepOfView(view, clock, moved);
  return { ...PLAIN_STEP, ...kept, scene, from_s: hundredths(kept.from_s), hidden: kept.hidden.filter(name => names.includes(name)) };
}

/** The document of a talk, as a file holds it: a scene is left out where it is that of the step before. */
export function talkDocument({ title, about, steps }) {
  const texts = steps.map(({ scene }) => JSON.stringify(scene));
  return {
    rimfall_talk: 1,
    title,
    about,
    steps: steps.map(({ change, scene, ...step }, i) => (i && texts[i] === texts[i - 1] ? step : { scene, ...step })),
  };
}

const hundredths = seconds => Math.round(seconds * 100) / 100;

// It begins, stands still to ask, and pauses in that order: what was set last holds, and the others give way.
function inOrder(step, part) {
  let { from_s, until_s, ask } = step;
  if ('until_s' in part && until_s !== null) from_s = Math.min(from_s, until_s);
  else if (until_s !== null && until_s < from_s) until_s = null;
  if ('ask' in part && ask) {
    from_s = Math.min(from_s, ask.until_s);
    if (until_s !== null && until_s < ask.until_s) until_s = null;
  } else if (ask) ask = { ...ask, until_s: Math.min(Math.max(ask.until_s, from_s), until_s ?? Infinity) };
  return { ...step, from_s, until_s, ask };
}
