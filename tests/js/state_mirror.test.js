// The same motion the other way round: headings and spins as a mirror shows them.

import assert from 'node:assert/strict';
import test from 'node:test';
import { mirrored, otherWay, otherWord, sameAgain, OWN, axisOf, axisWords, nameOf } from '../../static/state/motions.js';

const cross = ([a, b, c], [d, e, f]) => [b * f - c * e, c * d - a * f, a * e - b * d];
const near = (a, b) => a.every((part, i) => Math.abs(part - b[i]) < 1e-6);
const FIELDS = { kinds: { throw: { mirrored: true }, roll: { mirrored: true }, drop: { mirrored: false } } };
const ball = { kind: 'throw', name: 'serve', heading_deg: 30, speed_m_s: 6, place: { along_m: 2, height_m: 1 }, body: 'handball' };

test('a heading and its mirror image', () => {
  for (const [from, to] of [[0, 180], [180, 0], [90, 90], [30, 150], [-30, -150], [270, -90], [-180, 0], [360, 180]]) {
    assert.equal(otherWay(from), to, `${from}`);
  }
});

test('twice mirrored is the motion again', () => {
  const motion = { ...ball, carried: { speed_m_s: 2, heading_deg: 40 }, ball_spin_rpm: 300, ball_spin_axis: [1, 2, 3] };
  assert.deepEqual(mirrored(mirrored(motion)), motion);
});

test('a thrower or a ramp that says no heading faces spinward, so its image faces antispinward', () => {
  const out = mirrored({ kind: 'roll', ramp: { slope_deg: 5 }, carried: { speed_m_s: 1 } });
  assert.deepEqual([out.heading_deg, out.ramp.heading_deg, out.carried.heading_deg], [180, 180, 180]);
});

test('the sideways push of a spinning ball, spin × velocity, is mirrored too', () => {
  const axis = [1, 2, 3],
    out = mirrored({ ...ball, ball_spin_axis: axis });
  const velocity = heading => [Math.cos((heading * Math.PI) / 180), 0, Math.sin((heading * Math.PI) / 180)];
  const [spinward, up, axial] = cross(axis, velocity(30));
  assert.ok(near(cross(out.ball_spin_axis, velocity(out.heading_deg)), [-spinward, up, axial]));
});

test('a forward roll stays a forward roll; a ball spun about the upright turns the other way', () => {
  const motion = { ...ball, ball_spin_rpm: 60, ball_spin_axis: axisOf('forward', 30) };
  const out = mirrored(motion);
  assert.equal(out.ball_spin_rpm, 60);
  assert.equal(nameOf(out.ball_spin_axis, out.heading_deg), 'forward');
  assert.equal(mirrored({ kind: 'roll', heading_deg: 0, ball_spin_rpm: 60 }).ball_spin_rpm, -60);
});

test('where the image goes, and what has none', () => {
  assert.equal(otherWord(FIELDS, ball), 'antispinward');
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 200 }), 'spinward');
  assert.equal(otherWord(FIELDS, { kind: 'throw' }), 'antispinward');
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 90 }), null);
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: -270 }), null);
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 90, ball_spin_rpm: 9, ball_spin_axis: [0, 1, 0] }), 'antispinward');
  assert.equal(otherWord(FIELDS, { kind: 'drop' }), null);
  assert.equal(otherWord(FIELDS, { kind: 'stand' }), null);
});

test('the copy has a name of its own and stands where the first does', () => {
  const copy = sameAgain(FIELDS, ball, 'serve', ['serve', 'serve antispinward']);
  assert.equal(copy.name, 'serve antispinward 2');
  assert.deepEqual(copy.place, ball.place);
  assert.equal(copy.heading_deg, 150);
});

test('a forward roll has no slip where the ball touches the ground under it', () => {
  for (const heading of [0, 90, 135, -60]) {
    const t = (heading * Math.PI) / 180;
    // a ball of radius 1: velocity + spin × (0, −1, 0) = 0 at the rate of rolling
    const slip = cross(axisOf('forward', heading), [0, -1, 0]);
    assert.ok(near(slip, [-Math.cos(t), 0, -Math.sin(t)]), `${heading}`);
  }
});

test('axes have names whatever their length, and else are one’s own', () => {
  assert.equal(nameOf([0, 0, 5], 90), 'axial');
  assert.equal(nameOf([0, 3, 0], 10), 'upright');
  assert.equal(nameOf([1, 1, 0], 10), OWN);
  assert.equal(axisWords([0, 0, -2], 0), 'in a forward roll');
  assert.equal(axisWords([1, 1, 1], 0), 'about an axis of its own');
});
