// Who holds a jug: where they stand, and that their hand comes to it.

import assert from 'node:assert/strict';
import test from 'node:test';

import { holderOf } from '../../static/views/attendant.js';
import { armTo, figureGeometry } from '../../static/views/lay_figure.js';

const WHEEL = { radius_m: 56, level: false };
const pour = (height_m, heading_deg = 0, more = {}) => ({
  stream: { regime: 'stream' },
  input: { heading_deg },
  release: { height_m },
  ...more,
});

test('whoever pours stands behind the jug and a shoulder aside, whichever way it pours', () => {
  for (const [heading, along, axial] of [
    [0, -0.5, -0.22],
    [90, 0.22, -0.5],
    [180, 0.5, 0.22],
  ]) {
    const { along_m, axial_m } = holderOf(pour(1.4, heading), WHEEL);
    assert.ok(Math.hypot(along_m - along, axial_m - axial) < 1e-12, `${heading}: ${along_m} ${axial_m}`);
  }
});

test('nobody holds a tap, what is out of reach, or a jug in a habitat of a few metres', () => {
  assert.equal(holderOf(pour(1.4, 0, { stream: { regime: 'drips' } }), WHEEL), null);
  assert.ok(holderOf(pour(1.4, 0, { stream: { regime: 'drips' }, input: { tilt: [{}] } }), WHEEL), 'what tilts is a jug');
  assert.equal(holderOf(pour(3), WHEEL), null);
  assert.equal(holderOf(pour(0.3), WHEEL), null);
  assert.equal(holderOf(pour(1.4), { radius_m: 3, level: false }), null);
  assert.equal(holderOf({ stream: null, release: { height_m: 1.4 } }, WHEEL), null);
});

const thrown = (height_m, heading_deg, speed_m_s = 6) => ({
  stream: null,
  stage: { attended_m: 0.3 },
  input: { heading_deg, speed_m_s },
  release: { height_m },
});

// The drawn figure's own points, where they are from what is let go: (along, up, axial).
function pointsOf({ along_m, axial_m, heading_rad, hand }) {
  const { array } = figureGeometry(hand).getAttribute('position');
  const [s, c] = [Math.sin(heading_rad), Math.cos(heading_rad)];
  return Array.from({ length: array.length / 3 }, (_, k) => {
    const [x, y, z] = array.slice(3 * k, 3 * k + 3);
    return [along_m + c * x - s * z, y, axial_m + s * x + c * z];
  });
}

test('what is thrown or dropped starts in the hand, and does not go through who threw it', () => {
  for (const heading of [0, 90, 180, 270, 315, null])
    for (const height of [1.1, 1.5, 1.75]) {
      const points = pointsOf(holderOf(heading === null ? thrown(height, 0, 0) : thrown(height, heading), WHEEL));
      const off = ([x, y, z], far = 0) => Math.hypot(x - far * Math.cos((heading * Math.PI) / 180), y - height, z - far * Math.sin((heading * Math.PI) / 180));
      assert.ok(Math.min(...points.map(point => off(point))) < 0.05, `${heading}, ${height} m: nothing of the hand is at the ball`);
      const trunk = points.filter(([, y]) => y > 0.9).filter(([x, , z]) => Math.hypot(x, z) > 0.12);
      if (heading !== null)
        for (const far of [0.3, 0.45, 0.6]) assert.ok(Math.min(...trunk.map(point => off(point, far))) > 0.1, `${heading}: through the thrower`);
    }
  assert.equal(holderOf(thrown(3, 0), WHEEL), null);
  assert.equal(holderOf(thrown(0.1, 0), WHEEL), null, 'nor is what rolls on the deck');
});

test('the arm is two pieces from shoulder to hand, the elbow below; what is too far is pointed at', () => {
  for (const [forward, up] of [
    [0.33, 1.4],
    [0.33, 1.8],
    [0.33, 1.1],
  ]) {
    const { elbow, upper, fore } = armTo([forward, up]);
    const end = [elbow[0] - 0.28 * Math.sin(fore), elbow[1] + 0.28 * Math.cos(fore)];
    assert.ok(Math.hypot(end[0] - forward, end[1] - up) < 1e-6, `${end}`);
    assert.ok(Math.hypot(elbow[0] + 0.3 * Math.sin(upper), elbow[1] - 1.42 - 0.3 * Math.cos(upper)) < 1e-9);
    assert.ok(elbow[1] < 1.42 + (0.3 * Math.abs(up - 1.42)) / Math.hypot(forward, up - 1.42) + 1e-9);
  }
  const { upper, fore } = armTo([0.33, 2.1]);
  assert.ok(Math.abs(upper - fore) < 0.01);
});
