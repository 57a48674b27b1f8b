import assert from 'node:assert/strict';
import test from 'node:test';

import { Crowd, Spots } from '../../static/views/spots.js';

const WIDE = 60;
const HIGH = 20;

function spots(...taken) {
  const one = new Spots();
  const crowd = new Crowd();
  crowd.clear(400, 300);
  one.begin(400, 300, [crowd]);
  for (const rect of taken) one.take(...rect);
  return { one, crowd };
}

test('labels of one point lie beside each other, the farthest with a line to it, and what finds no room gives way', () => {
  const { one } = spots();
  const placed = [];
  for (let k = 0; k < 60; k += 1) {
    const spot = one.find({ points: [[200, 150]] }, WIDE, HIGH, -1, 0);
    if (!spot) break;
    placed.push({ ...spot });
    one.take(spot.x, spot.y, WIDE, HIGH);
  }
  assert.ok(placed.length > 8 && placed.length < 60);
  placed.forEach((a, i) =>
    placed.slice(i + 1).forEach(b => assert.ok(Math.abs(a.x - b.x) >= WIDE || Math.abs(a.y - b.y) >= HIGH, `${a.x} ${a.y} on ${b.x} ${b.y}`)),
  );
  assert.equal(placed[0].led, false);
  assert.equal(placed.at(-1).led, true);
});

test('a label keeps its spot while that is free, and leaves it when it is not', () => {
  const { one } = spots();
  const { key, cost, x, y } = { ...one.find({ points: [[200, 150]] }, WIDE, HIGH, -1, 0) };
  const crowded = spots([x, y, WIDE, HIGH]).one;
  assert.notEqual(crowded.find({ points: [[200, 150]] }, WIDE, HIGH, key, cost).key, key);
  const free = spots().one;
  assert.equal(free.find({ points: [[203, 151]] }, WIDE, HIGH, key, cost).key, key);
});

test('a point off the stage has no label; one that hides a path is put elsewhere', () => {
  const { one, crowd } = spots();
  assert.equal(one.find({ points: [[-40, 150]] }, WIDE, HIGH, -1, 0), null);
  crowd.line(0, 130, 400, 130); // just over the anchor
  assert.ok(one.find({ points: [[200, 150]] }, WIDE, HIGH, -1, 0).y > 130);
});

test('a spot meets exactly what it would overlap, wherever on the stage or over its edge that lies', () => {
  let seed = 1;
  const chance = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  const rects = Array.from({ length: 60 }, () => [500 * chance() - 50, 420 * chance() - 60, 10 + 60 * chance(), 6 + 40 * chance()]);
  const { one } = spots(...rects);
  for (let k = 0; k < 500; k += 1) {
    const [x, y, w, h] = [400 * chance(), 280 * chance(), 10 + 50 * chance(), 20];
    const meets = rects.some(([a, b, c, d]) => x < a + c + 4 && a < x + w + 4 && y < b + d + 2 && b < y + h + 2);
    assert.equal(one.meets(x, y, w, h), meets, `${x} ${y} ${w} ${h}`);
  }
});
