// How often the canvas of the stages is made anew: for another size, and for another number of drawn pixels now and then.

import assert from 'node:assert/strict';
import test from 'node:test';

import { Picture } from '../../static/views/picture.js';
import { FrameTimer } from '../../static/views/webgl.js';

function pictureOf(ratios) {
  const sizes = [];
  const picture = Object.assign(Object.create(Picture.prototype), {
    ratio: 1,
    timer: { still: 1.5, adapted: () => ratios.shift() ?? 1 },
    shared: { uDpr: {}, uNow: {} },
    renderer: { setDrawingBufferSize: (...size) => sizes.push(size) },
  });
  return { picture, sizes };
}

test('the canvas keeps its size until another is asked for', () => {
  const { picture, sizes } = pictureOf([1, 1, 0.84, 0.84]);
  picture.resize(600, 400);
  picture.resize(600, 400);
  for (let frame = 0; frame < 4; frame += 1) picture.begin(frame / 60, false);
  picture.resize(600, 400);
  picture.resize(600, 410);
  assert.deepEqual(sizes, [
    [600, 400, 1],
    [600, 400, 0.84],
    [600, 410, 0.84],
  ]);
});

test('frames that take long and short in turns do not change the drawn pixels from one to the next', () => {
  const timer = new FrameTimer({}, { software: true });
  let changes = 0;
  for (let frame = 0; frame < 120; frame += 1) {
    timer.learn(frame % 3 === 1 ? 130 : 30); // 63 ms in the mean: neither slow nor quick
    const before = timer.ratio;
    if (timer.adapted() !== before) changes += 1;
  }
  assert.ok(changes <= 2, `${changes} times`);
  for (let frame = 0; frame < 60; frame += 1) {
    timer.learn(130);
    timer.adapted();
  }
  assert.ok(timer.ratio < 0.7, 'frames that all take long are drawn with fewer pixels');
  for (let frame = 0; frame < 60; frame += 1) {
    timer.learn(69 * timer.ratio ** 2 + 30); // at a ratio of 0.6 as quick as it must be
    timer.adapted();
  }
  assert.ok(69 * timer.ratio ** 2 + 30 <= 1000 / 15, 'and at 15 frames a second at least');
});

test('where one size is too large and the next too small it turns back ever more seldom', () => {
  const timer = new FrameTimer({}, { software: true });
  const changes = [];
  for (let frame = 0, before = timer.ratio; frame < 2000; frame += 1) {
    timer.learn(timer.ratio > 0.9 ? 100 : 20);
    if (timer.adapted() !== before) changes.push(frame);
    before = timer.ratio;
  }
  const early = changes.filter(frame => frame < 200).length,
    late = changes.filter(frame => frame >= 1200).length;
  assert.ok(early >= 4 && late <= 6, `it would go to and fro twice a second without an end: ${changes}`);
});

test('a graphics processor that falls behind first leaves off what only it draws, and then draws fewer pixels', () => {
  globalThis.window = { devicePixelRatio: 1 };
  const timer = new FrameTimer({}, { software: false });
  delete globalThis.window;
  assert.ok(timer.fine);
  const steps = [];
  for (let frame = 0; frame < 200; frame += 1) {
    timer.learn(130);
    const step = `${timer.adapted() === 1} ${timer.fine}`;
    if (step !== steps.at(-1)) steps.push(step);
  }
  assert.deepEqual(steps, ['true true', 'true false', 'false false']);
  assert.equal(new FrameTimer({}, { software: true }).fine, false);
});
