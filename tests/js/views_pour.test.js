import assert from 'node:assert/strict';
import test from 'node:test';

import { eachDrop, streamLines } from '../../static/views/pour.js';

const near = (a, b, by = 1e-9) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);
const RATE = 10;

// Two drops that move along the axis (z) at 1 and 2 m/s, sampled ten times a second.
const DROPS = {
  born_s: [0.0, 0.25],
  ends_s: [0.5, 1.0],
  diameter_m: [0.004, 0.006],
  first: [0, 3],
  count: [6, 8],
  rotating_m: [...Array.from({ length: 6 }, (_, k) => [10, 0, k / RATE]), ...Array.from({ length: 8 }, (_, k) => [10, 0, (2 * (k + 3)) / RATE])].flat(),
};

function drops(time_s, most = 100) {
  const found = [];
  eachDrop(DROPS, RATE, time_s, 10, most, (p, diameter) => found.push({ ...p, diameter }));
  return found;
}

test('a drop is between its two samples while it flies, and not before or after', () => {
  assert.equal(drops(-0.1).length, 0);
  const [one] = drops(0.15);
  near(one.z, 0.15);
  assert.equal(one.diameter, 0.004);
  const both = drops(0.45);
  near(both[0].z, 0.45);
  near(both[1].z, 0.9);
  assert.deepEqual(
    drops(0.7).map(d => d.diameter),
    [0.006],
  );
  assert.equal(drops(1.2).length, 0);
});

test('of many drops only so many are told', () => {
  assert.equal(drops(0.45, 1).length, 1);
});

// Parcels that left a second apart and fall along the axis at 1 m/s for two seconds; the last of them dripped.
const parcel = flows => Array.from({ length: 3 }, (_, i) => [10, 0, flows ? i : 0]).flat();
const THREAD = {
  leaves_s: [0, 1, 2, 3],
  whole_s: [2, 2, 2, 2],
  flows: [1, 1, 1, 0],
  rotating_m: [1, 1, 1, 0].flatMap(flows => parcel(flows)),
  diameter_m: [8, 6, 4, 8, 6, 4, 8, 6, 4, 0, 0, 0].map(mm => mm / 1000),
};

test('the stream goes from the lip to where it breaks and tapers', () => {
  const [line] = streamLines(THREAD, 2, 10);
  near(line.time[0], 0);
  near(line.time.at(-1), 2);
  line.time.forEach((age, i) => near(line.points[3 * i + 2], age));
  near(line.diameter[0], 0.008);
  near(line.diameter.at(-1), 0.004);
});

test('before it flows, after it has gone, and where it drips there is none', () => {
  assert.deepEqual(streamLines(THREAD, 0, 10), []);
  assert.deepEqual(streamLines(THREAD, 9, 10), []);
  const lines = streamLines(THREAD, 3.5, 10);
  assert.equal(lines.length, 1);
  assert.ok(lines[0].time[0] >= 0.9);
});
