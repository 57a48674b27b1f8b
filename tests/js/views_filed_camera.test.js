// A camera of a file as the rig of an eye: what an eye files, it takes back.

import assert from 'node:assert/strict';
import test from 'node:test';

import { Eye } from '../../static/views/cameras.js';
import { rigOfFiled } from '../../static/views/filed_camera.js';

const R = 56;
const filedFrom = rig => {
  const eye = new Eye();
  eye.follow(rig);
  eye.place(800, 500, 0, 400);
  return eye.asFiled(R);
};
const close = (a, b) => assert.ok(Math.abs(a - b) < 1e-6, `${a} is not ${b}`);
const sameCamera = (a, b) => {
  for (const name of ['position_m', 'target_m', 'up']) for (const k of [0, 1, 2]) close(a[name][k], b[name][k]);
  close(a.vertical_fov_deg, b.vertical_fov_deg);
};

test('filed and taken back, an eye sees the same: all ways round, up and down, along the rim, and from above', () => {
  for (const level of [false, true])
    for (const azimuth of [0, 1, 2.5, -3])
      for (const yaw of [0, 0.7, -Math.PI / 2, 2.8])
        for (const tilt of [-1.2, 0, 0.4, 1.5]) {
          const filed = filedFrom({ target: [3, 4, -2], azimuth, level, yaw, tilt, distance: 12, fov: 34 });
          const rig = rigOfFiled(filed, R, level);
          assert.equal(rig.axes, undefined);
          sameCamera(filedFrom(rig), filed);
        }
});

test('a level ground’s camera that banks keeps its bank', () => {
  const filed = { position_m: [0, 0, 9], target_m: [0, 4, 0], up: [1, 0, 0], vertical_fov_deg: 40 };
  const rig = rigOfFiled(filed, R, true);
  const seen = filedFrom(rig);
  for (const k of [0, 1, 2]) close(seen.position_m[k], filed.position_m[k]);
});

test('a move over its own time goes on to a goal that changes under way', () => {
  const rig = { target: [0, 0, 0], azimuth: 0, level: false, yaw: 0, tilt: 0.2, distance: 10, fov: 30 };
  const eye = new Eye();
  eye.follow(rig);
  eye.depart({ eased: true, ms: 1200, now_ms: 0 });
  eye.follow({ ...rig, distance: 20 }, { eased: true, now_ms: 10 });
  assert.equal(eye.seen(600).distance < 20, true);
  eye.follow({ ...rig, distance: 40 });
  assert.ok(eye.seen(1100).distance > 20);
  assert.equal(eye.seen(1200).distance, 40);
  assert.equal(eye.moving, false);
  eye.depart({ eased: false, ms: 1200, now_ms: 1300 });
  assert.equal(eye.moving, false);
});
