// A cup stands where a pour would come down at home: on the companion's path, between its samples.

import assert from 'node:assert/strict';
import test from 'node:test';
import { downAt } from '../../static/panels/moves/pour.js';

const path = { height_m: [1.0, 1.2, 1.0, 0.6, 0.2], along_m: [0, 1, 2, 3, 4], axial_m: [0, 0, 0, 0, 1] };

test('a path comes down to a height between two samples, after it has risen past it', () => {
  const near = (place, along_m, axial_m) => Math.hypot(place.along_m - along_m, place.axial_m - axial_m) < 1e-12;
  assert.ok(near(downAt(path, 0.8), 2.5, 0));
  assert.ok(near(downAt(path, 0.4), 3.5, 0.5));
  assert.ok(near(downAt(path, 1.1), 1.5, 0));
});

test('one that does not come down so far, or is none, has no such place', () => {
  assert.equal(downAt(path, 0.1), null);
  assert.equal(downAt(path, 1.3), null);
  assert.equal(downAt({ height_m: [0.2, 0.4], along_m: [0, 1], axial_m: [0, 0] }, 0.3), null);
  assert.equal(downAt(null, 0.8), null);
});
