import assert from 'node:assert/strict';
import test from 'node:test';

import { angleAt, at, companionPoints, endOf, isContact, pathPoints, sampleTime, upper } from '../../static/time/track.js';

const grid = { fps: [24, 1], samples_per_frame: 2, count: 10 };
const near = (a, b) => assert.ok(Math.abs(a - b) < 1e-12, `${a} is not ${b}`);

// Samples at 1/48 and 2/48; released before the first, landed after the last.
function thrown() {
  return {
    first: 1,
    count: 2,
    along_m: [1, 2],
    height_m: [1, 1],
    axial_m: [0, 0],
    rotating_m: [10, 1, 0, 10, 2, 0],
    inertial_m: [10, 1, 5, 10, 2, 5],
    rotating_velocity_m_s: [0, 48, 0, 0, 50, 0],
    events: [event('release', 0.5 / 48, 0.5), event('deck', 2.5 / 48, 4)],
    stream: null,
  };
}

function event(kind, time_s, along_m) {
  return { kind, time_s, along_m, height_m: 1, axial_m: 0, rotating_m: [10, along_m, 0], inertial_m: [10, along_m, 5] };
}

test('sample k is at k over fps times samples a frame', () => {
  near(sampleTime({ fps: [24000, 1001], samples_per_frame: 3 }, 2), (2 * 1001) / 72000);
});

test('a path is its samples and events in order of time', () => {
  const path = pathPoints(thrown(), grid);
  assert.deepEqual([...path.along_m], [0.5, 1, 2, 4]);
  near(path.starts_s, 0.5 / 48);
  near(path.ends_s, 2.5 / 48);
});

test('an event at a sample takes its place: no point is there twice', () => {
  const motion = thrown();
  motion.events[0] = event('release', 1 / 48, 7);
  assert.deepEqual([...pathPoints(motion, grid).along_m], [7, 2, 4]);
});

test('between neighbours a value is linear, and outside the ends it holds', () => {
  const path = pathPoints(thrown(), grid);
  near(at(path, 1.5 / 48, 'along_m'), 1.5);
  near(at(path, 2.25 / 48, 'along_m'), 3);
  near(at(path, 0, 'along_m'), 0.5);
  near(at(path, 9, 'along_m'), 4);
  const out = [0, 0, 0];
  assert.equal(at(path, 1.5 / 48, 'rotating_m', out), out);
  assert.deepEqual(out, [10, 1.5, 0]);
});

test('what only samples know is read between samples', () => {
  const out = [0, 0, 0];
  at(pathPoints(thrown(), grid), 1.5 / 48, 'rotating_velocity_m_s', out);
  near(out[1], 49);
  assert.equal(at(pathPoints(thrown(), grid), 1 / 48, 'coriolis_m_s2', out), null);
});

test('at two events of one instant the later one holds, not a step across them', () => {
  const motion = thrown();
  motion.events.push(event('rest', 2.5 / 48, 9));
  near(at(pathPoints(motion, grid), 2.5 / 48, 'along_m'), 9);
});

test('a flight shorter than a sample is its events alone', () => {
  const motion = {
    first: 1,
    count: 0,
    along_m: [],
    height_m: [],
    axial_m: [],
    rotating_m: [],
    inertial_m: [],
    events: [event('release', 0.1 / 48, 0), event('deck', 0.3 / 48, 1)],
    stream: null,
  };
  const path = pathPoints(motion, grid);
  assert.equal(path.count, 2);
  near(at(path, 0.2 / 48, 'along_m'), 0.5);
});

// 400 samples and a contact halfway between every second pair of them; at contact n the place is −n.
function bouncing() {
  const count = 400;
  const row = fn => Array.from({ length: count }, (_, k) => fn(k));
  const contacts = Array.from({ length: 200 }, (_, n) => ({
    ...event('deck', (2 * n + 0.5) / 48, -n),
    velocity_m_s: [1, -1, 0],
    velocity_after_m_s: [1, 1, 0],
  }));
  return {
    first: 0,
    count,
    along_m: row(k => k),
    height_m: row(() => 1),
    axial_m: row(() => 0),
    rotating_m: row(k => [10, k, 0]).flat(),
    inertial_m: row(k => [10, k, 5]).flat(),
    rotating_velocity_m_s: row(k => [k % 4 < 1 ? -5 : 5, 0, 0]).flat(),
    events: [event('release', 0, 0), ...contacts, event('rest', 400 / 48, 7)],
    stream: null,
  };
}

test('200 contacts all stay corners of the path, in order of time', () => {
  const path = pathPoints(bouncing(), grid);
  assert.equal(path.count, 400 + 200 + 1); // the release takes the first sample's place
  assert.equal(path.corners.length, 202);
  assert.equal(path.breaks_s.length, 200);
  for (let i = 1; i < path.count; i += 1) assert.ok(path.time_s[i] > path.time_s[i - 1]);
  for (const n of [0, 57, 199]) near(at(path, (2 * n + 0.5) / 48, 'along_m'), -n);
  near(at(path, 1e3, 'along_m'), 7);
});

test('the same two samples and contact whichever comes first in the answer', () => {
  const motion = bouncing();
  const path = pathPoints(motion, grid);
  motion.events.reverse();
  assert.deepEqual([...pathPoints(motion, grid).along_m], [...path.along_m]);
});

test('a velocity holds up to a contact and is the next one after it', () => {
  const path = pathPoints(bouncing(), grid);
  const v = k => at(path, k / 48, 'rotating_velocity_m_s', [0, 0, 0])[0];
  near(v(0.49), -5);
  near(v(0.51), 5);
  near(v(3.5), 0); // no contact between samples 3 and 4: halfway from 5 to −5
});

test('what is no contact breaks nothing', () => {
  assert.deepEqual(
    ['deck', 'floor', 'ceiling', 'hub', 'wall', 'release', 'apex', 'grip', 'slip', 'rest', 'edge'].filter(kind => isContact({ kind })),
    ['deck', 'floor', 'ceiling', 'hub', 'wall'],
  );
});

test('between two attitudes the shorter turning is meant', () => {
  const motion = { ...thrown(), attitude_wxyz: [1, 0, 0, 0, -1, 0, 0, -1e-9] };
  const q = at(pathPoints(motion, grid), 1.5 / 48, 'attitude_wxyz', [0, 0, 0, 0]);
  near(q[0], 1);
  near(q[3], 0.5e-9);
  assert.equal(at(pathPoints(thrown(), grid), 1 / 48, 'attitude_wxyz', [0, 0, 0, 0]), null);
});

test('a companion keeps its own samples', () => {
  const path = companionPoints({ first: 1, height_m: [1, 0.5, 0], rotating_m: new Float64Array(9) }, grid, 0.9 / 48);
  near(path.starts_s, 0.9 / 48);
  near(path.ends_s, 3 / 48);
});

test('the angle is linear on the grid and goes on at the last spin', () => {
  const answer = { grid, angle_rad: [0, 1, 3], spin_rad_s: [48, 72, 96], habitat: { omega_rad_s: 48 } };
  near(angleAt(answer, 1.5 / 48), 2);
  near(angleAt(answer, 3 / 48), 5);
  near(angleAt({ grid, angle_rad: [], spin_rad_s: [], habitat: { omega_rad_s: 2 } }, 3), 6);
});

test('the scene ends with the last parcel of a pour', () => {
  const answer = { motions: [{ stream: null }, { stream: { first_leaves_s: 0, last_leaves_s: 2 } }] };
  near(endOf(answer, [{ ends_s: 1.5 }, { ends_s: 0.6 }]), 2.6);
});

test('what is hidden does not keep the clock going, unless all of it is', () => {
  const answer = { motions: [{ name: 'throw' }, { name: 'roll' }] },
    paths = [{ ends_s: 3 }, { ends_s: 60 }];
  near(
    endOf(answer, paths, motion => motion.name !== 'roll'),
    3,
  );
  near(
    endOf(answer, paths, () => false),
    60,
  );
});

test('where the drops go their own ways it ends with the last of them', () => {
  const pour = ends_s => ({ stream: { first_leaves_s: 0, last_leaves_s: 2 }, findings: { drops: { ends_s: Float64Array.from(ends_s) } } });
  near(endOf({ motions: [pour([1.1, 1.9, 1.4])] }, [{ ends_s: 0.6 }]), 1.9);
  near(endOf({ motions: [pour([0.2])] }, [{ ends_s: 0.6 }]), 0.6);
  near(endOf({ motions: [pour([])] }, [{ ends_s: 0.6 }]), 2.6);
});

test('upper finds the first later time', () => {
  assert.equal(upper([0, 1, 1, 2], 1), 3);
  assert.equal(upper([0, 1], -1), 0);
  assert.equal(upper([], 1), 0);
});
