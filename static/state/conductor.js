// Puts the steps of a talk on the stages: scene and answer in one move, the view, the clock, and what is held back. It knows no elements and no
// server, so that the page, who follows it and a talk in one file are conducted alike.

import { tr } from './language.js';
import { landsAt } from './asking.js';
import { RADIUS, SPIN, getAt, putAt } from './fields.js';
import { viewOfStep } from './step_view.js';

const MOVE_MS = 1200,
  TICK_MS = 33;
const ANSWERS_KEPT = 6;
const TINY_S = 1e-9;
const LENT = ['place', 'arrows', 'companion', 'companionOutside', 'measure', 'alone', 'merged', 'swapped']; // of the view, while a talk is given

const TIMERS = { later: (fn, ms) => setTimeout(fn, ms), forget: timer => clearTimeout(timer), now: () => performance.now() };

/** @typedef {{eased: boolean, ms: number}} Move */

/** answerOf(step) → promise of the answer of its scene; calm(): nothing may move by itself; look({eased, ms}): the
 *  eyes go from where they are to where the view sends them, or are there at once; ready(step) → promise: what its place is made of is there; live: the store's live changes are answered, so that dials may move, or
 *  live(from, to) tells it of two scenes.
 *  Topics of `on`: 'begin' a step is on its way, 'shown' it stands on the stages, 'end'.
 *  @param {{talk: any, store: any, clock: any, answerOf: (step: any) => any, calm?: () => boolean, look?: (move: Move) => void, ready?: (step: any) => any, live?: boolean | ((from: any, to: any) => boolean),
 *    timers?: any}} hall */
export function createConductor({ talk, store, clock, answerOf, calm = () => false, look = () => {}, ready = () => {}, live = false, timers = TIMERS }) {
  const hearers = new Map();
  const emit = topic => {
    for (const hear of [...(hearers.get(topic) ?? [])]) hear();
  };
  const answers = new Map(); // promises, by the scene as text
  let offs = [];
  let lent = /** @type {any} */ (null); // what the view goes back to
  let newest = 0; // of the steps that were put on
  let timer = 0;
  let stop_s = null, // where the clock stops of itself
    last_s = 0;

  function answered(step) {
    const key = JSON.stringify(step.scene);
    const asked = answers.get(key) ?? Promise.resolve(answerOf(step));
    answers.delete(key);
    answers.set(key, asked);
    asked.catch(() => answers.delete(key));
    if (answers.size > ANSWERS_KEPT) answers.delete(answers.keys().next().value);
    return asked;
  }

  const isShown = ({ scene }) => !store.stale && !store.answer?.partial && same(store.document, scene);

  async function show() {
    const mine = (newest += 1),
      { step } = talk,
      first = conductor.shown === null;
    timers.forget(timer);
    if (!step) return;
    stop_s = null;
    clock.pause();
    conductor.waiting = true;
    emit('begin');
    try {
      const [answer] = await Promise.all([isShown(step) ? null : answered(step), ready(step)]);
      if (mine !== newest) return;
      await put(step, answer, { mine, eased: !first && !calm() });
    } catch (problem) {
      if (mine === newest) fail(problem);
    }
  }

  async function put(step, answer, { mine, eased }) {
    const dials = moved(store.document, step.scene), // null: another scene, which is cut to
      move = { eased: eased && dials !== null, ms: MOVE_MS };
    store.look({ withheld: withheld() });
    if (move.eased) look(move);
    if (move.eased && dials?.length && isLive(store.document, step.scene) && !(await turn(dials, step.scene, mine))) return;
    clock.seek(startOf(step));
    if (answer) store.open(step.scene, answer);
    store.look({ ...viewOfStep(step, store.view.presets), beside: null, served: 0 });
    if (!move.eased) look(move);
    conductor.shown = step;
    conductor.waiting = false;
    arm(step);
    emit('shown');
    const next = talk.steps[talk.at + 1];
    if (!next) return;
    answered(next).catch(() => {}); // told when it is shown
    ready(next);
  }

  // The dials on their way, as a hand would move them; false once another step is wanted.
  function turn(dials, scene, mine) {
    const began_ms = timers.now();
    const ways = dials.map(path => [path, getAt(store.document, path), getAt(scene, path)]);
    return new Promise(resolve => {
      const tick = () => {
        if (mine !== newest) return resolve(false);
        const u = (timers.now() - began_ms) / MOVE_MS;
        if (u >= 1) return resolve(true);
        for (const [path, from, to] of ways) store.set(path, between(path, from, to, u), { live: true });
        timer = timers.later(tick, TICK_MS);
      };
      tick();
    });
  }

  const isLive = (from, to) => (typeof live === 'function' ? live(from, to) : live);
  const heldUntil = ({ ask }) => (talk.phase === 'held' ? (ask.until_s ?? 0) : Infinity);
  const withheld = () => (talk.phase === 'held' ? { motions: [talk.step.ask.motion], until_s: heldUntil(talk.step) } : null);
  const startOf = step => Math.min(step.from_s ?? 0, heldUntil(step));
  const pauseOf = step => (step.until_s !== null && step.until_s !== undefined && step.until_s < clock.end_s - TINY_S ? step.until_s : null);

  // the clock as the step wants it, from its start
  function arm(step) {
    const start_s = startOf(step);
    stop_s = talk.phase === 'held' ? heldUntil(step) : pauseOf(step);
    clock.setLoop(null);
    clock.lendPace(step.pace ?? 1);
    clock.seek(start_s);
    last_s = clock.time_s;
    if ((step.plays ?? true) && clock.time_s < (stop_s ?? clock.end_s) - TINY_S) clock.play();
  }

  function playOn() {
    last_s = clock.time_s;
    if (clock.time_s < clock.end_s - TINY_S) clock.play();
  }

  function phase() {
    const { step } = talk;
    if (conductor.shown !== step) return; // its phase is read when it is put on
    if (talk.phase === 'held') {
      store.look({ withheld: withheld() });
      return arm(step);
    }
    if (store.view.withheld) store.look({ withheld: { ...store.view.withheld, until_s: null } }); // the clock may go on, and all is framed
    reveal();
    const pause_s = pauseOf(step);
    stop_s = pause_s !== null && pause_s > clock.time_s + TINY_S ? pause_s : null;
    playOn();
  }

  // what was held back shows itself as it comes down, and not before
  function reveal() {
    const { withheld: held } = store.view;
    if (held && talk.phase === 'revealed' && clock.time_s >= landsAt(store.answer, held.motions[0]) - TINY_S) store.look({ withheld: null });
  }

  function resume() {
    stop_s = null;
    playOn();
  }

  // at its pause point, or where it waits for guesses: beyond that nobody sees while it is held
  function watch() {
    reveal();
    const before_s = last_s;
    last_s = clock.time_s;
    if (clock.playing) talk.paused = false; // by hand
    if (stop_s === null || clock.time_s < stop_s - TINY_S) return;
    const held = talk.phase === 'held';
    if (!held && !(clock.playing && before_s < stop_s - TINY_S)) return;
    if (held && !clock.playing && clock.time_s <= stop_s + TINY_S) return;
    clock.pause();
    clock.seek(stop_s);
    if (!held) talk.pause();
  }

  /** @param {any} problem */
  function fail({ message }) {
    conductor.waiting = false;
    store.tell({ kind: 'failed', field: null, say: tr('This step could not be shown: {why}', { why: message }), again: show });
  }

  function settled() {
    if (!conductor.waiting) return Promise.resolve();
    return /** @type {Promise<void>} */ (
      new Promise(resolve => {
        const off = conductor.on('shown', () => {
          off();
          resolve();
        });
      })
    );
  }

  const conductor = {
    /** The step that stands on the stages; null before the first does. */
    shown: /** @type {any} */ (null),
    /** Whether another is on its way. */
    waiting: false,
    get conducting() {
      return lent !== null;
    },
    /** From the step the talk is at, until `end`. */
    begin() {
      if (lent) return;
      lent = Object.fromEntries(LENT.map(name => [name, store.view[name]]));
      store.look({ lent: true });
      offs = [
        talk.on('step', show),
        talk.on('phase', phase),
        talk.on('resume', resume),
        clock.on(watch),
        store.on('view', patch => patch && 'units' in patch && answers.clear()),
      ];
      show();
    },
    /** The view goes back to what it was; the scene stays. */
    end() {
      if (!lent) return;
      newest += 1;
      timers.forget(timer);
      for (const off of offs) off();
      stop_s = null;
      Object.assign(conductor, { shown: null, waiting: false });
      const back = lent;
      lent = null;
      clock.lendPace(null);
      store.look({ ...back, withheld: null, lent: false });
      emit('end');
    },
    /** Once the step that is wanted is shown. */
    settled,
    on(topic, hear) {
      if (!hearers.has(topic)) hearers.set(topic, new Set());
      hearers.get(topic).add(hear);
      return () => hearers.get(topic).delete(hear);
    },
  };
  return conductor;
}

const same = (a, b) => a === b || JSON.stringify(a) === JSON.stringify(b);

// The dials in which two scenes differ; null where they differ in anything else.
function moved(from, to) {
  const rest = scene => putAt(putAt(scene, RADIUS, 0), SPIN, 0);
  if (!same(rest(from), rest(to))) return null;
  return [RADIUS, SPIN].filter(path => getAt(from, path) !== getAt(to, path));
}

// a radius goes by ratios, as it is looked at
function between(path, from, to, u) {
  const eased = u * u * (3 - 2 * u);
  return path === RADIUS && from > 0 && to > 0 ? from * (to / from) ** eased : from + (to - from) * eased;
}
