// The throw that arrives for each flight time: which part is drawn, what stands at a time, and round figures.

import assert from 'node:assert/strict';
import test from 'node:test';
import { drawnPart, roundFigures, throwAfter } from '../../static/state/by_flight.js';

const CURVE = { flight_s: [0.1, 0.5, 1, 2, 4], speed_m_s: [60, 10, 5, 6, 12], heading_deg: [0, 0, 0, 0, 180], elevation_deg: [2, 10, 30, 60, 88] };

test('throws much faster than those that matter are left off', () => {
  assert.deepEqual(drawnPart(CURVE, []), { from_s: 0.5, to_s: 4, most_m_s: 15, least_deg: 0 });
  assert.deepEqual(drawnPart(CURVE, [30]), { from_s: 0.1, to_s: 4, most_m_s: 60, least_deg: 0 });
  assert.equal(drawnPart({ ...CURVE, elevation_deg: [2, -10, 3, 4, 5] }, []).least_deg, -90);
  assert.equal(drawnPart({ flight_s: [1], speed_m_s: [5], elevation_deg: [9] }, []), null);
  assert.equal(drawnPart({ flight_s: [], speed_m_s: [], elevation_deg: [] }, []), null);
});

test('at a time stands what lies between two throws that are known, and nothing beside them', () => {
  assert.deepEqual(throwAfter(CURVE, 1.5), { flight_s: 1.5, speed_m_s: 5.5, elevation_deg: 45, heading_deg: 0 });
  assert.equal(throwAfter(CURVE, 3.5).heading_deg, 180);
  assert.equal(throwAfter(CURVE, 4).speed_m_s, 12);
  assert.equal(throwAfter(CURVE, 0.05), null);
  assert.equal(throwAfter(CURVE, 4.1), null);
});

test('round figures within the ends', () => {
  assert.deepEqual(roundFigures(0, 15, 3), [0, 5, 10, 15]);
  assert.deepEqual(roundFigures(0.5, 4, 5), [1, 2, 3, 4]);
  assert.deepEqual(roundFigures(0.06, 0.31, 5), [0.1, 0.15, 0.2, 0.25, 0.3]);
  assert.deepEqual(roundFigures(0, 60, 5), [0, 20, 40, 60]);
});
