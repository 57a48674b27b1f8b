// What the room is asked, as those who follow are told it: where a motion comes down, and between which marks. No elements.

import { questionOf, roomOf } from './guesses.js';

/** As a `now` has it, or null: `guesses` of the store; revealed: no mark is taken any more; down: it has been seen where it lands, and then `landing_m`
 *  (null: it does not) and all marks are told.
 *  @param {any} guesses @param {any} answer @param {string} page what tells the questions of this page from those of another */
export function askOf(guesses, answer, page) {
  const question = guesses.motion === null ? null : questionOf(answer, guesses.motion, guesses.id);
  if (!question) return null;
  const half_m = roomOf(question, answer.motions.find((/** @type {any} */ one) => one.name === question.motion)?.companion);
  return {
    id: `${page}-${guesses.id}`,
    motion: question.motion,
    low_m: question.from_m - half_m,
    high_m: question.from_m + half_m,
    revealed: !guesses.open,
    down: guesses.revealed,
    landing_m: guesses.landing_m,
    marks: guesses.revealed ? guesses.marks : [],
  };
}
