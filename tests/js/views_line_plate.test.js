// The flat plate: names never lie on one another, and the arrow that says which way is spinward is right wherever it stands.

import assert from 'node:assert/strict';
import test from 'node:test';

const made = [];
globalThis.document = {
  createElementNS: (_, tag) => {
    const element = {
      tag,
      setAttribute(name, value) {
        this[name] = value;
      },
      append() {},
    };
    made.push(element);
    return element;
  },
};
const { LinePlate, apart, placed } = await import('../../static/views/line_plate.js');

const ROOM = { top: 42, side: 22, foot: 30, arrow: 34, highest: 44, text: 18, paper: '#FFFFFF', named: true };

// a wheel of radius 10 m, so many px a metre, its release at `foot` px from the left and its deck there at `deck` px from the top
function plateOf(px, foot, deck) {
  const plate = new LinePlate({ append() {} }, 'aboard', ROOM);
  Object.assign(plate, { rect: { width: 320, height: 160 }, model: { radius_m: 10 }, taken: [], px, x0: foot, y0: deck });
  made.length = 0;
  plate.spinward();
  return { plate, arrow: made.find(({ tag }) => tag === 'path').d };
}

const overlapping = boxes => boxes.some(([l, t, r, b], i) => boxes.some((o, k) => k > i && l < o[2] && r > o[0] && t < o[3] && b > o[1]));

test('near the release the arrow points to the right', () => {
  assert.match(plateOf(40, 160, 130).arrow, /^M200 34h90/);
});

test('with the whole wheel in the picture it goes about the axis, to the right under it', () => {
  const { plate, arrow } = plateOf(5, 160, 130);
  const [, x1, y1, x2, y2] = /^M([\d.]+) ([\d.]+)A30 30 0 0 0 ([\d.]+) ([\d.]+)$/.exec(arrow).map(Number);
  assert.ok(x1 < 160 && x2 > 160 && y1 === y2 && y1 > 80, arrow);
  assert.ok(
    plate.taken.some(([l, t, r, b]) => l < 160 && r > 160 && t < 80 && b > 80),
    'its word is at the axis',
  );
});

test('a good way round the wheel it stands over the release', () => {
  assert.match(plateOf(14, 40, 130).arrow, /^M25 34h90/);
});

test('names that want one spot stand apart, inside the sheet, and one that has no room is left out', () => {
  const plate = { room: ROOM, rect: { width: 320, height: 160 }, taken: [] };
  const names = [
    'Lob out, 5.21 m',
    'Lob back, 10.73 m',
    'plain gravity',
    'a name of some length',
    'another',
    'and one more',
    'one further',
    'the last but one',
    'the last',
  ];
  let left = 0;
  for (const words of names) {
    const spot = placed(plate, [[300, 100]], words);
    if (!spot) {
      left += 1;
      continue;
    }
    const wide = words.length * 0.54 * 18,
      start = Math.max(8, Math.min(320 - 8 - wide, spot[0] - wide / 2));
    plate.taken.push([start, spot[1] - 16.2, start + wide, spot[1] + 5.4]);
    assert.ok(spot[1] > ROOM.highest && spot[1] < 156);
  }
  assert.equal(overlapping(plate.taken), false);
  assert.ok(left > 0 && plate.taken.length > 2);
  assert.equal(apart(plate, 300, 100, 'no room for it'), 100);
});

test('words wider than the sheet have no room on it', () => {
  assert.equal(placed({ room: ROOM, rect: { width: 320, height: 160 }, taken: [] }, [[160, 100]], 'Lob back, 10.73 m, 3.0 % of the way round'), null);
});

test('a name goes along its path before it is left out', () => {
  const plate = { room: ROOM, rect: { width: 320, height: 160 }, taken: [[0, 0, 160, 160]] };
  const spots = [
    [60, 100],
    [260, 100],
  ];
  assert.deepEqual(placed(plate, spots, 'tea'), [260, 100]);
});
