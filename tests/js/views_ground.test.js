import assert from 'node:assert/strict';
import test from 'node:test';

import { drawnGround, readShape, triad } from '../../static/views/ground.js';
import { drawnPoint } from '../../static/views/place.js';

const near = (a, b, by = 1e-9) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);
const DEG = Math.PI / 180;

// Corners as the server gives them: (R − height) e_r + along e_φ + axial z, rotating frame.
function floor({ radius_m, azimuth_deg, length_m, width_m, ceiling_m = null }) {
  const [c, s] = [Math.cos(azimuth_deg * DEG), Math.sin(azimuth_deg * DEG)];
  const corner = (height, along, z) => [(radius_m - height) * c - along * s, (radius_m - height) * s + along * c, z];
  const corners = height =>
    [
      [-1, 1],
      [1, 1],
      [1, -1],
      [-1, -1],
    ].map(([a, z]) => corner(height, (a * length_m) / 2, (z * width_m) / 2));
  return { name: 'floor', radius_m, azimuth_deg, corners_m: corners(0), ceiling_corners_m: ceiling_m ? corners(ceiling_m) : null, levels: [] };
}

const PODS = drawnGround(
  readShape(
    { radius_m: 30 },
    {
      floors: [
        floor({ radius_m: 30, azimuth_deg: 0, length_m: 10, width_m: 6, ceiling_m: 3 }),
        floor({ radius_m: 20, azimuth_deg: 120, length_m: 8, width_m: 4 }),
      ],
    },
    { section_m: null, level: false },
  ),
);
test('what has turned is called what it is', () => {
  const names = Object.entries(GROUNDS).map(([shape, ground]) => [shape, ground.whole]);
  assert.deepEqual(Object.fromEntries(names), { cylinder: 'habitat', torus: 'habitat', sphere: 'habitat', turntable: 'turntable' });
});

const GROUNDS = {
  cylinder: drawnGround(readShape({ radius_m: 56 }, {}, { section_m: null, level: false })),
  torus: drawnGround(readShape({ radius_m: 56 }, {}, { section_m: 8, level: false })),
  sphere: drawnGround(readShape({ radius_m: 40 }, {}, { section_m: 40, level: false })),
  turntable: drawnGround(readShape({ radius_m: 2 }, {}, { section_m: null, level: true })),
};

test("a place and what is under its point are each other's inverse on every shape", () => {
  for (const [kind, ground] of Object.entries(GROUNDS)) {
    for (const turn of [0, 0.7]) {
      const under = ground.under(ground.on(0.4, 0.3, 1.2, turn, {}), turn);
      near(under.along_m, 0.4);
      near(under.axial_m, 1.2);
      near(under.height_m, 0.3);
      assert.ok(kind);
    }
  }
  for (const turn of [0, -2]) {
    const under = PODS.under(PODS.at(1.5, 0.8, -1, turn, {}, 1), turn, 1);
    near(under.along_m, 1.5);
    near(under.height_m, 0.8);
    near(under.axial_m, -1);
  }
});

test('a flat floor is read off its corners', () => {
  const [first, second] = PODS.floors;
  near(first.half_m[0], 5);
  near(first.half_m[1], 3);
  near(first.ceiling_m, 3);
  near(second.half_m[0], 4);
  assert.equal(second.ceiling_m, null);
  const corner = floor({ radius_m: 20, azimuth_deg: 120, length_m: 8, width_m: 4 }).corners_m[1];
  const drawn = drawnPoint(corner, 0, 30, {});
  const placed = PODS.at(4, 0, 2, 0, {}, 1);
  for (const c of ['x', 'y', 'z']) near(placed[c], drawn[c]);
});

test('past the edge of a floor or a turntable nothing is underneath', () => {
  assert.equal(PODS.under(PODS.at(5.1, 1, 0, 0, {}, 0), 0, 0), null);
  assert.equal(GROUNDS.turntable.under(GROUNDS.turntable.at(0, 1, 2.1, 0, {}), 0), null);
});

test('one stands on the surface of torus and sphere, however far off the equator', () => {
  const { torus, sphere } = GROUNDS;
  for (const z of [0, 3, -6]) {
    const p = torus.on(10, 0, z, 0.3, {});
    near(Math.hypot(Math.hypot(p.x, 56 - p.y) - 48, p.z), 8);
    const q = sphere.on(10, 0, 3 * z, 0.3, {});
    near(Math.hypot(q.x, 40 - q.y, q.z), 40);
  }
});

test('spinward, up and axial are right-handed, and up is the axis on a turntable', () => {
  for (const level of [false, true]) {
    const { spin, up, axial } = triad(0.6, level);
    const cross = [spin[1] * up[2] - spin[2] * up[1], spin[2] * up[0] - spin[0] * up[2], spin[0] * up[1] - spin[1] * up[0]];
    cross.forEach((c, k) => near(c, axial[k]));
  }
  assert.deepEqual(triad(0.6, true).up, [0, 0, 1]);
});

test('how far spinward is round the axis where the thing is, on a turntable straight', () => {
  const place = (along_m, height_m = 0, axial_m = 0) => ({ along_m, height_m, axial_m });
  near(GROUNDS.cylinder.spinward(place(0), place(10)), 10);
  near(GROUNDS.cylinder.spinward(place(0), place(21.5, 56 - 2.4)), (21.5 / 56) * 2.4);
  near(GROUNDS.cylinder.spinward(place(5), place(5 + 2 * Math.PI * 56 * 3 - 4)), -4, 1e-6);
  near(GROUNDS.turntable.spinward(place(1, 0, 0.5), place(1 + 2 * (Math.PI / 2), 0, 0.2)), 0.2); // a quarter round
  near(PODS.spinward(place(1), place(-2)), -3);
});
