import assert from 'node:assert/strict';
import { test } from 'node:test';
import { pathPoints } from '../../static/time/track.js';
import { Arrows } from '../../static/views/arrows.js';
import { sharedUniforms } from '../../static/views/materials.js';

const grid = { fps: [1, 1], samples_per_frame: 1 };
const findings = { felt_g: Float32Array.from([0.4, 0, 0, 0, 0.2, 0, 0, 0, 0]), floor_greatest_g: 0.4 };
const still = new Float32Array(9);
const motion = { first: 0, height_m: still.subarray(0, 3), along_m: still, axial_m: still, rotating_m: still, inertial_m: still, events: [], findings };
const path = pathPoints(motion, grid);
const over = { tumbles: true, motion, path, ends_s: 2, starts_s: 0, fastest_m_s: 0, stage: { no_arrows: ['velocity', 'centrifugal', 'coriolis'] } };
const model = { ground: { on: () => ({ x: 0, y: 0, z: 0 }) } };
const eye = { span_m: 100, metresPerPx: 0.1, axes: { right: [1, 0, 0], up: [0, 1, 0] } };
const which = { velocity: true, centrifugal: true, coriolis: true, alone: false };

test('in a craft that tumbles an arrow points the way that is down on the floor, as long as it is felt', () => {
  const arrows = new Arrows(sharedUniforms());
  const at = (time_s, show = which) => arrows.update(model, [over], over, time_s, eye, show, 2);
  const [first] = at(0);
  assert.equal(first.word, 'down on the floor');
  assert.ok(Math.abs(first.value_g - 0.4) < 1e-6);
  assert.ok(Math.hypot(first.tip.x, first.tip.y + 9, first.tip.z) < 1e-5, 'out of the craft is down as it is drawn');
  const [later] = at(1);
  assert.ok(Math.hypot(later.tip.x - 4.5, later.tip.y, later.tip.z) < 1e-5, 'half as much, spinward');
  assert.deepEqual(at(2), [], 'nothing felt, nothing drawn');
  assert.deepEqual(at(0, { ...which, centrifugal: false }), []);
});

test('an arrow is said to be drawn while it is, and no longer', () => {
  const flown = Object.fromEntries(['rotating_velocity_m_s', 'coriolis_m_s2', 'centrifugal_m_s2'].map(key => [key, Float32Array.from({ length: 9 }, () => 3)]));
  const thrown = { path: pathPoints({ ...motion, ...flown }, grid), ends_s: 2, starts_s: 0, fastest_m_s: 5, stage: { no_arrows: ['centrifugal'] } };
  const wheel = { answer: { angle_rad: [0], spin_rad_s: [0], grid }, radius_m: 50 };
  const arrows = new Arrows(sharedUniforms());
  const drawn = (time_s, show = which) => {
    arrows.update(wheel, [thrown], thrown, time_s, eye, show, 2);
    return { ...arrows.drawn };
  };
  assert.deepEqual(drawn(1), { velocity: true, centrifugal: false, coriolis: true });
  assert.deepEqual(drawn(1, { ...which, velocity: false }), { velocity: false, centrifugal: false, coriolis: true });
  assert.deepEqual(drawn(2.5), { velocity: false, centrifugal: false, coriolis: false }, 'it has come down');
});
