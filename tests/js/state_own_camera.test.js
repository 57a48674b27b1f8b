// A camera of one's own between its rows, and its picture in a stage of other shape.

import assert from 'node:assert/strict';
import test from 'node:test';
import { FIRST_CAMERA, cameraRequest, filmBack } from '../../static/state/camera_request.js';
import { cameraAt, frameIn } from '../../static/state/own_camera.js';

const row = (time_s, x, vertical_fov_deg) => ({ time_s, position_m: [x, -54, 6], target_m: [0, -54, 0], up: [0, 1, 0], vertical_fov_deg });

test('between rows it goes straight, before the first and after the last it stands', () => {
  const camera = { rows: [row(1, 0, 30), row(3, 4, 50)] };
  assert.deepEqual(
    [0, 1, 2.5, 3, 9].map(t => [cameraAt(camera, t).position_m[0], cameraAt(camera, t).vertical_fov_deg]),
    [
      [0, 30],
      [0, 30],
      [3, 45],
      [4, 50],
      [4, 50],
    ],
  );
  assert.equal(cameraAt({ rows: [row(1, 7, 30)] }, 5).position_m[0], 7);
});

test('its picture lies whole in a stage, whatever the stage is like', () => {
  const wide = frameIn(16 / 9, 40, { width: 1000, height: 400 });
  assert.deepEqual([Math.round(wide.x), wide.y, Math.round(wide.width), wide.height], [144, 0, 711, 400]);
  assert.ok(Math.abs(wide.fov - 40) < 1e-9);
  const tall = frameIn(2, 40, { width: 400, height: 800 });
  assert.deepEqual([tall.x, tall.y, tall.width, tall.height], [0, 300, 400, 200]);
  // the stage's field of view: four times as high at the same distance
  assert.ok(Math.abs(Math.tan((tall.fov * Math.PI) / 360) - 4 * Math.tan((40 * Math.PI) / 360)) < 1e-9);
});

test('it is asked for by its lens, or by its field of view', () => {
  const [lens] = cameraRequest({}, FIRST_CAMERA).camera.rows,
    [field] = cameraRequest({}, { ...FIRST_CAMERA, by: 'field' }).camera.rows;
  assert.ok(lens.focal_length_mm === 35 && !('field_of_view_deg' in lens));
  assert.ok(field.field_of_view_deg === 54 && !('focal_length_mm' in field));
});

test('a film of another width keeps its shape; its height changes alone', () => {
  assert.deepEqual(filmBack({ width_mm: 36, height_mm: 20.25 }, 'width_mm', 24.9), { width_mm: 24.9, height_mm: 14.006 });
  assert.deepEqual(filmBack({ width_mm: 24.9, height_mm: 14.006 }, 'height_mm', 18.7), { width_mm: 24.9, height_mm: 18.7 });
});
