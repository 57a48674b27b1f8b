// Answers on the wire: base64 of little-endian float32, offsets from an anchor, times rebuilt from the grid.

import assert from 'node:assert/strict';
import test from 'node:test';
import { decodeAnswer } from '../../static/api/client.js';

const f4 = (shape, numbers) => {
  const bytes = Buffer.alloc(4 * numbers.length);
  numbers.forEach((value, i) => bytes.writeFloatLE(value, 4 * i));
  return { shape, f4: bytes.toString('base64') };
};
const answer = () => ({
  grid: { fps: [24000, 1001], samples_per_frame: 3, count: 3 },
  angle_rad: f4([3], [0, 0.5, 1]),
  motions: [
    {
      anchor_m: [10000, 0, 0],
      rotating_m: f4([2, 3], [0, 0, 0, -0.25, 0.5, 1]),
      along_m: f4([2], [0, 0.5]),
      events: [{ kind: 'release' }],
      companion: { rotating_m: f4([1, 3], [1, 2, 3]) },
    },
    { anchor_m: null, rotating_m: f4([0, 3], []), companion: null },
  ],
});

test('arrays come out typed, flat, with their shape', () => {
  const { angle_rad: angle, motions } = decodeAnswer(answer());
  assert.deepEqual([...angle], [0, 0.5, 1]);
  assert.deepEqual(motions[0].rotating_m.shape, [2, 3]);
  assert.equal(motions[0].events[0].kind, 'release');
});

test('offsets from the anchor become places, in double precision', () => {
  const { motions } = decodeAnswer(answer());
  assert.deepEqual([...motions[0].rotating_m], [10000, 0, 0, 9999.75, 0.5, 1]);
  assert.ok(motions[0].rotating_m instanceof Float64Array);
  assert.deepEqual([...motions[0].companion.rotating_m], [10001, 2, 3]);
  assert.equal(motions[1].rotating_m.length, 0);
});

test('times are those of the grid', () => {
  const { time_s: time } = decodeAnswer(answer());
  assert.deepEqual([...time], [0, 1001 / 72000, 2002 / 72000]);
});

test('habitats beside the scene’s own come out the same way', () => {
  const { compare } = decodeAnswer({ ...answer(), compare: [{ name: 'wide', ...answer(), grid: { fps: [24, 1], samples_per_frame: 2, count: 2 } }] });
  assert.deepEqual([...compare[0].time_s], [0, 1 / 48]);
  assert.deepEqual([...compare[0].motions[0].rotating_m], [10000, 0, 0, 9999.75, 0.5, 1]);
});
