// Where a step of a talk asks the room: guesses are taken while it is held, and told how near they were once the landing has been seen. No elements.

import { questionOf } from './guesses.js';

const TINY_S = 1e-6;

/** `store.guesses` follows the talk, until the function that it gives is called.
 *  @param {{store: any, clock: any, talk: any}} hall */
export function askAlong({ store, clock, talk }) {
  const { guesses } = store;
  let asked = /** @type {any} */ (null); // the step
  let count = 0;

  function read() {
    const { step, phase } = talk;
    if (step !== asked) {
      asked = step;
      count += 1;
      guesses.close();
    }
    if (phase !== 'held') return watch();
    const question = questionOf(store.answer, step.ask.motion, count);
    if (question) guesses.ask(question);
  }

  // another answer lands elsewhere
  function answered() {
    if (talk.phase === 'held') read();
  }

  function watch() {
    if (talk.phase !== 'revealed' || guesses.motion === null || guesses.revealed) return;
    guesses.stop();
    if (clock.time_s >= landsAt(store.answer, guesses.motion) - TINY_S) guesses.reveal();
  }

  const offs = [...['step', 'phase'].map(topic => talk.on(topic, read)), store.on('answer', answered), clock.on(watch)];
  read();
  return () => {
    for (const off of offs) off();
    guesses.close();
  };
}

/** When a motion of an answer comes down; one that never does: when its path ends.
 *  @param {any} answer @param {string} name */
export function landsAt(answer, name) {
  const motion = answer?.motions.find((/** @type {any} */ one) => one.name === name);
  return motion?.landing?.time_s ?? motion?.events.at(-1)?.time_s ?? 0;
}
