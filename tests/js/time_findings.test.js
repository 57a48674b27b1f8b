// What a kind tells beside its path, read at a time: between samples, at the ends, told once, or not at all.

import assert from 'node:assert/strict';
import test from 'node:test';
import { findingAt, findingRange, sweeps } from '../../static/time/findings.js';

const grid = { fps: [24, 1], samples_per_frame: 2, count: 100 }; // 48 a second
const motion = { first: 48, findings: { feet_g: new Float32Array([1, 2, 4]), takes_s: 7, slack: false, none: null } };

test('between two samples it lies on the line between them, outside it is the nearest', () => {
  assert.equal(findingAt(motion, grid, 'feet_g', 1), 1);
  assert.ok(Math.abs(findingAt(motion, grid, 'feet_g', 1 + 1.5 / 48) - 3) < 1e-9);
  assert.equal(findingAt(motion, grid, 'feet_g', 0), 1);
  assert.equal(findingAt(motion, grid, 'feet_g', 50), 4);
});

test('what is told once is that, and what is not a number is nothing', () => {
  assert.equal(findingAt(motion, grid, 'takes_s', 3), 7);
  for (const name of ['slack', 'none', 'absent']) assert.equal(findingAt(motion, grid, name, 1), null, name);
  assert.equal(findingAt({ first: 0, findings: { feet_g: new Float32Array(0) } }, grid, 'feet_g', 0), null);
  assert.equal(findingAt({ first: 0 }, grid, 'feet_g', 0), null);
});

test('least and greatest', () => {
  assert.deepEqual(findingRange(motion, 'feet_g'), [1, 4]);
  assert.deepEqual(findingRange(motion, 'takes_s'), [7, 7]);
  assert.equal(findingRange(motion, 'absent'), null);
});

test('a pass is an event of its own kind', () => {
  assert.deepEqual(sweeps({ findings: { sweeps_by: [{ time_s: 8, distance_m: 2 }] } }), [{ kind: 'sweep', time_s: 8, distance_m: 2 }]);
  assert.deepEqual(sweeps({}), []);
});
