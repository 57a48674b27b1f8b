// No seat sees more than 60° from top to bottom, whatever it is told to frame; and a move comes to an end.
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

test('a move ends in its time, and while a camera of one’s own is looked through there is none', () => {
  const eye = new Eye();
  eye.follow(rig(30));
  eye.follow(rig(40), { eased: true, now_ms: 0 });
  assert.equal(eye.moving, true);
  eye.own = { position: [0, 0, 5], target: [0, 0, 0], up: [0, 1, 0], fov: 30 };
  eye.place(800, 400, 100, 100);
  assert.equal(eye.moving, false);
  eye.own = null;
  eye.place(800, 400, 5000, 100);
  assert.equal(eye.moving, false);
  eye.follow(rig(30), { eased: true, now_ms: 5000 });
  eye.place(800, 400, 5100, 100);
  assert.equal(eye.moving, true);
});
