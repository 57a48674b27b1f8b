// A step of a talk as the page's view, and the view as a step.

import assert from 'node:assert/strict';
import test from 'node:test';

import { stepOfView, viewOfStep } from '../../static/state/step_view.js';
import { SCENE } from './_scene.mjs';

const PRESETS = { aboard: 'b', outside: 'd' };
const CAMERA = { position_m: [0, 1, 2], target_m: [0, 0, 0], up: [0, 1, 0], vertical_fov_deg: 30 };

test('what a step keeps of the view is what it puts back', () => {
  const view = { ...viewOfStep({ scene: SCENE }, PRESETS), alone: 'outside', swapped: true, hidden: ['out'], measure: 'off', chosen: 1 };
  view.arrows = { ...view.arrows, velocity: false };
  const step = stepOfView(view, { time_s: 0.5, pace: 0.25, playing: false });
  assert.deepEqual(viewOfStep({ ...step, scene: SCENE }, PRESETS), view);
  assert.deepEqual([step.from_s, step.pace, step.plays, step.show], [0.5, 0.25, false, 'outside']);
});

test('a moment in the midst stands still; at the start and at the end all of it is played', () => {
  const kept = clock => {
    const { from_s, plays } = stepOfView(viewOfStep({ scene: SCENE }, PRESETS), { pace: 1, end_s: 3, ...clock });
    return [from_s, plays];
  };
  assert.deepEqual(
    [kept({ time_s: 1 }), kept({ time_s: 1, playing: true }), kept({ time_s: 0 }), kept({ time_s: 3 })],
    [
      [1, false],
      [1, true],
      [0, true],
      [0, true],
    ],
  );
});

test('a place that no talk shows is left for the motions', () => {
  const view = viewOfStep({ scene: SCENE }, PRESETS);
  const kept = place => stepOfView({ ...view, place }, { time_s: 0, pace: 1 }).place;
  assert.deepEqual([0, 1, 2, 3, 4, 5, 6].map(kept), [2, 2, 2, 2, 4, 5, 6]);
});

test('a moved camera is kept in the stead of its seat', () => {
  const step = stepOfView(viewOfStep({ scene: SCENE }, PRESETS), { time_s: 0, pace: 1 }, { outside: CAMERA });
  assert.deepEqual(step.seats, { aboard: 'b', outside: CAMERA });
  assert.deepEqual(viewOfStep(step, PRESETS).cameras, { aboard: null, outside: CAMERA });
  assert.deepEqual(viewOfStep(step, { aboard: 'e', outside: 'w' }).presets, { aboard: 'b', outside: 'w' });
});
