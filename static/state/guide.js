// A short look round the page: its steps, and at which it is. No DOM.

import { trLater } from './language.js';

/** `points`: a selector of what the step is about. */
// biome-ignore format: a row is a step
export const STEPS = [
  { points: '#stages', say: trLater('Two stages, one clock. Aboard the deck stands still and what is free curves; Outside the stars stand still and the same thing goes straight.') },
  { points: '#dials', say: trLater('Drag Radius or Spin: both stages, every distance and every sentence follow while you drag.') },
  { points: '#cards', say: trLater('Six questions, 1 to 6, each with its answer so far. This one is open: press any figure in its sentence to change it.') },
  { points: '#foot', say: trLater('Take it away saves what you see: a page to print, pictures, paths for other programs, the scene. The key ? lists all keys, and brings this look back.') },
];

/** {at, step, count, isLast, next(), back(), leave()}; `turned(guide)`: after each change, `at` null once it is over. */
export function createGuide({ turned }) {
  const guide = {
    at: /** @type {number | null} */ (0),
    count: STEPS.length,
    get step() {
      return guide.at === null ? null : STEPS[guide.at];
    },
    get isLast() {
      return guide.at === STEPS.length - 1;
    },
    next: () => go(guide.isLast ? null : (guide.at ?? 0) + 1),
    back: () => go(Math.max(0, (guide.at ?? 0) - 1)),
    leave: () => go(null),
  };
  function go(at) {
    if (guide.at === null) return;
    guide.at = at;
    turned(guide);
  }
  return guide;
}
