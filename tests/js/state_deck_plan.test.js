// The deck seen along the axis: a place and the point under it, there and back, on every kind of ground.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createPlan, turn, viewOf } from '../../static/state/deck_plan.js';

const near = (a, b, off = 1e-9) => assert.ok(Math.abs(a - b) < off, `${a} is not ${b}`);
const FLOORS = [
  { radius_m: 100, azimuth_deg: 0, corners_m: [[100, -5, -4], [100, 5, -4], [100, 5, 4], [100, -5, 4]] }, // biome-ignore format: a row
  { radius_m: 90, azimuth_deg: 180, corners_m: [[-90, 8, -4], [-90, -8, -4], [-90, -8, 4], [-90, 8, 4]] }, // biome-ignore format: a row
];

test('along 0 lies at the foot, spinward to the right, and a quarter round at the side', () => {
  const plan = createPlan({ radius_m: 50, ceiling_m: 4 });
  assert.deepEqual(plan.at({ along_m: 0, height_m: 2 }), [0, 48]);
  const [x, y] = plan.at({ along_m: 25 * Math.PI, height_m: 0 });
  near(x, 50);
  near(y, 0);
  assert.deepEqual(plan.rings, [50, 46]);
});

test('a point dragged to gives the place under it, counted from the thrower the nearer way', () => {
  const plan = createPlan({ radius_m: 50 }),
    held = { along_m: 0, height_m: 1.4, axial_m: 2 };
  for (const along_m of [-120, -3, 0, 40, 150]) {
    const back = plan.under(plan.at({ ...held, along_m }), held, { along_m: 0 });
    near(back.along_m, along_m);
    assert.deepEqual([back.height_m, back.axial_m], [1.4, 2]);
  }
  near(plan.under(plan.at({ ...held, along_m: 310 }), held, { along_m: 300 }).along_m, 310);
});

test('flat floors hold somebody to their length, and a turntable moves them in and out', () => {
  const craft = createPlan({ shape: 'tumbler', radius_m: 100 }, FLOORS),
    held = { along_m: 0, height_m: 1, axial_m: 0, floor: 1 };
  near(craft.under(craft.at({ ...held, along_m: 3 }), held, held).along_m, 3);
  near(craft.under(craft.at({ ...held, along_m: 30 }), held, held).along_m, 8);
  assert.equal(craft.turn_m, null);
  const table = createPlan({ shape: 'turntable', radius_m: 2 });
  const put = table.under([0, 1.5], { along_m: 0, height_m: 1, axial_m: 1 }, { along_m: 0 });
  near(put.axial_m, 1.5);
});

test('a throw that goes far is shown in the whole, one that goes near by in its neighbourhood, upright', () => {
  const plan = createPlan({ radius_m: 50 }),
    ends = along_m => [0, along_m].map(one => plan.at({ along_m: one, height_m: 1 }));
  assert.deepEqual(viewOf(plan, ends(100), 1 / 3, 0).middle, [0, 0]);
  const close = viewOf(plan, ends(5), 0.016, plan.azimuth({ along_m: 2.5, height_m: 0 }));
  assert.ok(close.half_m < 5);
  near(close.middle[0], 0);
  near(turn(plan.at({ along_m: 30, height_m: 0 }), 30 / 50)[0], 0);
});
