// No seat sees more than 60° from top to bottom, whatever it is told to frame.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Eye } from '../../static/views/cameras.js';

const rig = fov => ({ target: [0, 0, 0], azimuth: 0, level: false, yaw: 0, tilt: 0, distance: 10, fov });

test('the field of view of an eye is 60° at most', () => {
  const eye = new Eye();
  for (const [wanted, seen] of [
    [30, 30],
    [60, 60],
    [95, 60],
  ]) {
    eye.follow(rig(wanted));
    eye.place(800, 400, 0, 100);
    assert.equal(eye.camera.fov, seen);
  }
});
