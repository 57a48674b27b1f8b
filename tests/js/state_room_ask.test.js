// What those who follow are asked: between marks that tell nothing of the way, and where it landed only once that was seen.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createGuesses, questionOf } from '../../static/state/guesses.js';
import { askOf } from '../../static/state/room_ask.js';

const answer = (landing_m, plain_m = null) => ({
  scene: { habitat: { radius_m: 56 } },
  motions: [
    {
      name: 'Lob',
      events: [{ kind: 'release', along_m: 2 }],
      landing: landing_m === null ? null : { along_m: landing_m, time_s: 1, way: { of_turn: 0.1 } },
      companion: plain_m === null ? null : { landing: { drift_m: plain_m } },
    },
  ],
});

test('the room is asked, told that it is too late, and told where it was', () => {
  const guesses = createGuesses(),
    lob = answer(7.2, -9);
  assert.equal(askOf(guesses, lob, 'p'), null);
  guesses.ask(questionOf(lob, 'Lob', 4));
  guesses.add(3, 'phone 0');
  const open = { id: 'p-4', motion: 'Lob', low_m: -18, high_m: 22, revealed: false, down: false, landing_m: null, marks: [] };
  assert.deepEqual(askOf(guesses, lob, 'p'), open);
  guesses.stop();
  assert.deepEqual(askOf(guesses, lob, 'p'), { ...open, revealed: true });
  guesses.reveal();
  assert.deepEqual(askOf(guesses, lob, 'p'), { ...open, revealed: true, down: true, landing_m: 7.2, marks: [3] });
});

test('marks reach as far on both sides, round figures, and no farther than half way round', () => {
  const reach = (...landing) => {
    const guesses = createGuesses();
    guesses.ask(questionOf(answer(...landing), 'Lob', 1));
    const { low_m, high_m } = askOf(guesses, answer(...landing), 'p');
    assert.ok(Math.abs(low_m + high_m - 4) < 1e-9);
    return high_m - 2;
  };
  assert.deepEqual([reach(2), reach(null), reach(7.2), reach(-30)], [5, 5, 10, 100]);
  assert.ok(Math.abs(reach(130, 500) - Math.PI * 56) < 1e-9);
});
