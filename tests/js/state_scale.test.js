// The spread of values on a slider's track, and the page's own small words.

import assert from 'node:assert/strict';
import test from 'node:test';
import { apart, makeScale, roundTo } from '../../static/state/scale.js';
import { elevationWords, freshName, headingWords, motionsWords, typedHeading } from '../../static/state/words.js';

const RADIUS = makeScale({ min: 2, max: 10000, scale: 'log' });
const SPIN = makeScale({ min: 0, max: 30, scale: 'fine_low' });
const HEIGHT = makeScale({ min: 0, max: 4, scale: 'linear' });

test('fraction and value undo each other over the whole track', () => {
  for (const scale of [RADIUS, SPIN, HEIGHT]) {
    for (let f = 0; f <= 1; f += 0.05) assert.ok(Math.abs(scale.toFraction(scale.toValue(f)) - f) < 1e-9);
    assert.equal(scale.toFraction(scale.min), 0);
    assert.equal(scale.toFraction(scale.max), 1);
  }
});

test('a log track gives each decade the same room', () => {
  const decade = RADIUS.toFraction(100) - RADIUS.toFraction(10);
  assert.ok(Math.abs(RADIUS.toFraction(1000) - RADIUS.toFraction(100) - decade) < 1e-12);
});

test('spin reaches zero and is finest at the low end', () => {
  const room = (a, b) => (SPIN.toFraction(b) - SPIN.toFraction(a)) / (b - a);
  assert.equal(SPIN.toValue(0), 0);
  assert.ok(room(0, 1) > 2 * room(1, 3));
  assert.ok(room(1, 3) > 2 * room(3, 30));
});

test('what lies off the track is drawn at its end', () => {
  assert.equal(RADIUS.toFraction(50000), 1);
  assert.equal(RADIUS.toFraction(0.5), 0);
});

test('a fine step is a hundredth of the decade one is in', () => {
  assert.deepEqual([56, 560, 5.6].map(RADIUS.step), [0.1, 1, 0.01]);
  assert.equal(SPIN.step(3), 0.01);
  assert.ok(SPIN.step(0) > 0);
  assert.equal(HEIGHT.step(1.5), 0.01);
});

test('steps leave no dust of binary fractions', () => {
  assert.equal(roundTo(0.1 + 0.2, 0.01), 0.3);
  assert.equal(roundTo(56.149999, 0.1), 56.1);
});

test('ticks stand inside the track, with zero first where it is there', () => {
  assert.ok(RADIUS.ticks().every(({ value }) => value >= 2 && value <= 10000));
  assert.deepEqual(
    SPIN.ticks()
      .filter(tick => tick.size === 2)
      .map(tick => tick.value),
    [0, 0.1, 1, 10],
  );
});

test('headings in words', () => {
  assert.deepEqual(
    [0, 180, -180, 90, 270, -90, 360].map(degrees => headingWords(degrees)),
    ['spinward', 'antispinward', 'antispinward', 'along the axis', 'back along the axis', 'back along the axis', 'spinward'],
  );
  assert.equal(headingWords(30), '30° off spinward');
  assert.equal(headingWords(350), '10° off spinward');
  assert.deepEqual(
    [90, 270].map(degrees => headingWords(degrees, ['outward', 'inward'])),
    ['outward', 'inward'],
  );
  assert.deepEqual([35, -10, 0, 90, -90].map(elevationWords), ['35° up', '10° down', 'level', 'straight up', 'straight down']);
  assert.deepEqual(
    ['axial', 'Along the axis', 'anti', 'spinward', 'back', '-30°', '45'].map(typed => typedHeading(typed)),
    [90, 90, 180, 0, 270, -30, 45],
  );
  assert.deepEqual(
    ['a', 'up', ''].map(typed => typedHeading(typed)),
    [null, null, null],
  );
  assert.equal(typedHeading('inward', ['outward', 'inward']), 270);
});

test('a cast in words, and a name nobody has yet', () => {
  const kinds = { throw: { one: 'throw', many: 'throws' }, drop: { one: 'drop', many: 'drops' } };
  assert.equal(motionsWords([{ kind: 'throw' }, { kind: 'throw' }], kinds), 'two throws');
  assert.equal(motionsWords([{ kind: 'drop' }], kinds), 'one drop');
  assert.equal(motionsWords([{ kind: 'throw' }, { kind: 'drop' }, { kind: 'drop' }], kinds), 'three motions');
  assert.equal(motionsWords([], kinds), 'nothing yet');
  assert.equal(freshName('Lob', ['Lob', 'Lob 2']), 'Lob 3');
});

test('figures of ticks never run together, on the shortest track either', () => {
  for (const scale of [RADIUS, SPIN])
    for (const px of [40, 81, 99, 140, 170, 320]) {
      const named = scale
        .ticks()
        .filter(tick => tick.size === 2)
        .map(tick => ({ value: tick.value, at_px: px * scale.toFraction(tick.value), wide_px: 6.2 * String(tick.value).length }));
      const shown = apart(named, 7);
      assert.equal(shown.at(-1), named.at(-1));
      for (const [i, tick] of shown.slice(1).entries())
        assert.ok(tick.at_px - tick.wide_px / 2 - (shown[i].at_px + shown[i].wide_px / 2) >= 7, `${px}: ${shown.map(one => one.value)}`);
      if (px >= 320) assert.equal(shown.length, named.length);
    }
});
