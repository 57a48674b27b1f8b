// Guesses along the deck: what is taken, how they lie about the landing, and that a wheel's deck has no ends.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createGuesses, nearestWay, questionOf } from '../../static/state/guesses.js';

const QUESTION = { id: 1, motion: 'Lob back', from_m: 0, landing_m: -10, round_m: 100 };
const close = (a, b) => assert.ok(Math.abs(a - b) < 1e-9, `${a}, not ${b}`);

test('a guess is taken while it is asked, and not after the landing was seen', () => {
  let told = 0;
  const guesses = createGuesses({ changed: () => (told += 1) });
  assert.equal(guesses.place(3), -1);
  assert.equal(guesses.add(3), false);
  guesses.ask(QUESTION);
  assert.equal(guesses.place(3), 0);
  assert.equal(guesses.place(-4), 1);
  guesses.move(1, -5);
  assert.ok(guesses.add(7, 'phone 1'));
  assert.ok(guesses.add(8, 'phone 1')); // it thought better of it
  assert.equal(guesses.add(Number.NaN), false);
  assert.deepEqual(guesses.marks, [3, -5, 8]);
  assert.deepEqual([guesses.nearest_m, guesses.landing_m], [null, null]); // nobody is told before
  guesses.reveal();
  assert.deepEqual([guesses.nearest_m, guesses.landing_m], [5, -10]);
  assert.equal(guesses.place(1), -1);
  guesses.ask(QUESTION); // shown once more: they stay
  assert.equal(guesses.marks.length, 3);
  guesses.ask({ ...QUESTION, id: 2 });
  assert.deepEqual(guesses.marks, []);
  guesses.close();
  assert.equal(guesses.motion, null);
  assert.equal(told, 10);
});

test('distances go the nearest way round', () => {
  const guesses = createGuesses();
  guesses.ask({ ...QUESTION, landing_m: 48 });
  guesses.place(149); // once round, and 49 m
  guesses.place(-45);
  close(guesses.own[0], 49);
  close(guesses.spinward(-53), 47);
  guesses.reveal();
  close(guesses.nearest_m, 1);
  close(nearestWay(93, 100), -7);
  close(nearestWay(93, null), 93);
});

test('the middle guess and the middle half lie where they are, over the seam of the ring too', () => {
  const guesses = createGuesses();
  // R-7 of 1 2 3 4 10: 2, 3, 4 (numpy.percentile([1, 2, 3, 4, 10], [25, 50, 75]))
  guesses.ask(QUESTION);
  for (const mark of [10, 1, 4, 2, 3]) guesses.add(mark);
  assert.deepEqual(guesses.spread, { median_m: 3, from_m: 2, to_m: 4 });
  guesses.ask({ ...QUESTION, id: 2 });
  for (const mark of [48, 49, -50, -49, -45]) guesses.add(mark);
  const { median_m, from_m, to_m } = guesses.spread;
  close(Math.abs(median_m), 50);
  close(from_m, 49);
  close(to_m, -49);
});

test('what is asked of a motion is read off the answer', () => {
  const answer = {
    scene: { habitat: { radius_m: 10 } },
    motions: [
      { name: 'a', events: [{ kind: 'release', along_m: 2 }], landing: { along_m: 5, way: { of_turn: 0.05 } } },
      { name: 'b', events: [], landing: { along_m: 5, way: { of_turn: null } } },
    ],
  };
  assert.deepEqual(questionOf(answer, 'a', 7), { id: 7, motion: 'a', from_m: 2, landing_m: 5, round_m: 20 * Math.PI });
  assert.equal(questionOf(answer, 'b', 7).round_m, null);
  assert.equal(questionOf(answer, 'c', 7), null);
});
