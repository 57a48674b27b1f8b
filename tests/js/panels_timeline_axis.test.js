// The timeline's scale, its ruler, its lanes and their words.

import assert from 'node:assert/strict';
import test from 'node:test';
import { breakOf, createAxis } from '../../static/panels/timeline/axis.js';
import { laneRows, placeWords } from '../../static/panels/timeline/rows.js';
import { ticksOf } from '../../static/panels/timeline/ruler.js';

const LOBS = [0, 0.37, 1.06, 1.09, 2.56];

test('a roll of a minute leaves the throws beside it most of the width', () => {
  const axis = createAxis([...LOBS, 60], 60);
  assert.equal(axis.break_s, 3);
  assert.ok(axis.at(1.06) > 0.2); // of the width: 0.018 where all is one scale
  assert.equal(axis.at(0), 0);
  assert.equal(axis.at(60), 1);
});

test('a scene whose motions last alike has one scale', () => {
  assert.equal(breakOf(LOBS, 3), null);
  assert.equal(breakOf([10, 20, 30, 60], 60), null);
  assert.equal(breakOf([1, 30, 40, 60], 60), null); // most of it happens late
  assert.equal(breakOf([], 60), null);
  assert.equal(createAxis([2.9], 3).at(1.5), 0.5);
});

test('a ball that lands early and rests late is not crushed either', () => {
  assert.equal(breakOf([1.07, 1.9, 2.4, 2.7, 60], 60), 4);
});

test('time and place undo each other on both sides of the break, and never run backwards', () => {
  const axis = createAxis([...LOBS, 60], 60);
  let last = -1;
  for (let time = 0; time <= 60; time += 0.25) {
    assert.ok(Math.abs(axis.timeAt(axis.at(time)) - time) < 1e-9, String(time));
    assert.ok(axis.at(time) > last);
    last = axis.at(time);
  }
});

test('labelled times on the ruler stand apart, however long the span and narrow the window', () => {
  for (const [from, to] of [[0, 0.5], [0, 3], [3, 60], [0, 600], [0, 36000]]) // biome-ignore format: spans
    for (const px of [90, 244, 524, 2000]) {
      const labelled = ticksOf(from, to, px).filter(tick => tick.long);
      const apart = labelled.slice(1).map((tick, i) => ((tick.time - labelled[i].time) / (to - from)) * px);
      assert.ok(apart.every(gap => gap > 55), `${from} to ${to} on ${px}: ${apart}`); // biome-ignore format: one thing
      assert.ok(labelled.length <= 8);
    }
});

test('eight lanes lie inside the timeline, with three each has its words', () => {
  for (const [count, height] of [
    [2, 80],
    [3, 95],
    [8, 160],
    [8, 80],
    [20, 200],
  ]) {
    // biome-ignore format: rows
    const { first, gap } = laneRows(count, height);
    assert.ok(first + (count - 1) * gap <= height - 6, `${count} in ${height}`);
    assert.ok(gap > 1.5);
  }
  assert.equal(laneRows(3, 91).lettered, true); // a phone's
  assert.equal(laneRows(8, 80).lettered, false);
  assert.equal(laneRows(1, 50).gap, 15);
});

test('lanes grow with the type size', () => {
  assert.deepEqual(laneRows(2, 400, 1.8), { first: 68.4, gap: 27, lettered: true });
});

const widthOf = words => words.length * 7;
const put = (from, to, width) => placeWords(['Lob out lands 1.06', 'lands 1.06', 'Lob out'], { from, to, width, widthOf });

test('words of a lane stand behind its end, else before it, else shortened, and never beyond the edge', () => {
  assert.deepEqual(put(8, 100, 500), { words: 'Lob out lands 1.06', x: 112, anchor: 'start' });
  assert.deepEqual(put(8, 400, 500), { words: 'Lob out lands 1.06', x: 388, anchor: 'end' });
  assert.deepEqual(put(90, 120, 230), { words: 'lands 1.06', x: 132, anchor: 'start' });
  assert.equal(put(0, 20, 60), null);
  for (let to = 8; to < 240; to += 4) {
    const { words, x, anchor } = put(8, to, 244);
    const [left, right] = anchor === 'end' ? [x - widthOf(words), x] : [x, x + widthOf(words)];
    assert.ok(left >= 0 && right <= 244, `${to}: ${left} to ${right}`);
  }
});
