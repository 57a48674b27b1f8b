// What the room is asked, as those who follow are told it: where a motion comes down, and between which marks. No elements.

import { nearestWay, questionOf } from './guesses.js';

const LEAST_M = 5,
  SPARE = 1.6; // so much farther than it goes one may mark
const ROUND = [1, 2, 2.5, 5, 10];

/** As a `now` has it, or null: `guesses` of the store; revealed: no mark is taken any more; down: it has been seen where it lands, and then `landing_m`
 *  (null: it does not) and all marks are told.
 *  @param {any} guesses @param {any} answer @param {string} page what tells the questions of this page from those of another */
export function askOf(guesses, answer, page) {
  const question = guesses.motion === null ? null : questionOf(answer, guesses.motion, guesses.id);
  if (!question) return null;
  const half_m = reachOf(question, answer);
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

// How far on both sides alike marks may be placed, so that this does not tell which way it goes, m.
function reachOf({ motion, from_m, landing_m, round_m }, answer) {
  const { companion } = answer.motions.find(({ name }) => name === motion);
  const far_m = Math.max(LEAST_M, SPARE * Math.abs(landing_m === null ? 0 : nearestWay(landing_m - from_m, round_m)));
  const most_m = roundUp(Math.max(far_m, SPARE * Math.abs(companion?.landing?.drift_m ?? 0)));
  return round_m ? Math.min(most_m, round_m / 2) : most_m;
}

/** @param {number} value */
function roundUp(value) {
  const decade = 10 ** Math.floor(Math.log10(value));
  return decade * (ROUND.find(step => step * decade >= value - 1e-9) ?? 10);
}
