import assert from 'node:assert/strict';
import test from 'node:test';

import { tiltAt } from '../../static/views/vessels.js';

const POUR = { input: { elevation_deg: 0, tilt: [{ time_s: 2, elevation_deg: -40 }] }, stream: { first_leaves_s: 1, last_leaves_s: 5 } };

test('a jug stands upright before and after its pour, and leans with its lip meanwhile', () => {
  assert.equal(tiltAt(POUR, 0), 12);
  assert.equal(tiltAt(POUR, 7), 12);
  assert.ok(tiltAt(POUR, 1.5) < tiltAt(POUR, 2.5));
  assert.equal(tiltAt(POUR, 4), 68 + 40); // held after the last point
  assert.equal(tiltAt({ ...POUR, input: { elevation_deg: -90 } }, 3), 118); // never upside down
});
