// The net of landings: which throw lies under a point of its drawing.

import assert from 'node:assert/strict';
import test from 'node:test';
import { firstOver, landingsRequest, lands, nearestTo, rangeOf, spotOf, throwAt } from '../../static/state/landings.js';

// two elevations by three speeds, all on one line along the deck; the last throw of all meets the ceiling
const NET = {
  over: [
    { field: 'elevation_deg', count: 2, values: [10, 40] },
    { field: 'speed_m_s', count: 3, values: [2, 4, 6] },
  ],
  ended: [0, 0, 0, 0, 0, 1],
  along_m: [1, 2, 3, 2, 4, 0],
  axial_m: [0, 0, 0, 0, 0, 0],
  net: { up: 'elevation_deg' },
  drawing: { box_px: [20, 10, 220, 110], along_m: [0, 4], up: [0, 50] },
};

test('a throw lies in the drawing at its landing and its elevation, and is found there again', () => {
  assert.deepEqual(spotOf(NET, [0, 1]), [120, 90]);
  assert.deepEqual(nearestTo(NET, [122, 88]), [0, 1]);
  assert.deepEqual(throwAt(NET, [0, 1]), { elevation_deg: 10, speed_m_s: 4 });
});

test('what does not land is under no point, nor is anything far off', () => {
  assert.equal(lands(NET, [1, 2]), false);
  assert.equal(nearestTo(NET, spotOf(NET, [1, 2])), null);
  assert.equal(nearestTo(NET, [20, 110]), null);
});

test('across the deck the second axis is the place itself', () => {
  const across = { ...NET, axial_m: [0, 1, 2, 3, 4, 5], net: { up: 'axial_m' }, drawing: { ...NET.drawing, up: [0, 5] } };
  assert.deepEqual(spotOf(across, [1, 1]), [220, 30]);
});

test('the first ranges hold the throw as it is, and nothing is asked while nothing varies', () => {
  const [rows, columns] = firstOver(['elevation_deg', 'speed_m_s'], { speed_m_s: 9 });
  assert.deepEqual([rows, columns.last], [{ field: 'elevation_deg', first: 0, last: 80, count: 41 }, 18]);
  assert.deepEqual(rangeOf('speed_m_s', 1, 12).count, 45);
  assert.ok(rows.count * columns.count <= 40_000);
  assert.equal(landingsRequest({}, 'out', null), null);
});

test('the net is of one throw: no other motion, and no figure that varies, makes it another', () => {
  const over = firstOver(['elevation_deg', 'speed_m_s'], {}),
    scene = motions => ({ title: 'A', habitat: { radius_m: 5 }, motions });
  const out = { kind: 'throw', name: 'out', speed_m_s: 3, heading_deg: 90 },
    asked = motions => JSON.stringify(landingsRequest(scene(motions), 'out', over));
  assert.equal(asked([out]), asked([{ ...out, speed_m_s: 9 }, { kind: 'drop' }]));
  assert.notEqual(asked([out]), asked([{ ...out, heading_deg: 0 }]));
});
