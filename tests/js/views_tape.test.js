// The tape laid by name: the places there are to choose, and what it keeps of them.

import assert from 'node:assert/strict';
import test from 'node:test';

import { Tape } from '../../static/views/measure.js';
import { tapePlaces } from '../../static/views/tape_ends.js';

const lob = {
  i: 1,
  name: 'Lob',
  floor: 0,
  starts_s: 0.5,
  ends_s: 1.6,
  path: { count: 12 },
  release: { along_m: 3, height_m: 1.5, axial_m: -1 },
  motion: {
    events: [
      { kind: 'apex', time_s: 1 },
      { kind: 'deck', time_s: 1.56 },
      { kind: 'rest', time_s: 1.6 },
    ],
  },
};

test('each motion offers its start, the ground under it, what it meets, and where it is now', () => {
  const places = tapePlaces([lob, { ...lob, i: 2, path: { count: 0 } }], 0.9);
  assert.deepEqual(
    places.map(({ say }) => say.replaceAll('\u00a0', ' ')),
    ['Lob at the start', 'the ground under the start of Lob', 'Lob meets the deck, 1.56 s', 'Lob comes to rest, 1.60 s', 'Lob at 0.90 s, the clock'],
  );
  assert.deepEqual(places[1].end, { along_m: 3, axial_m: -1, floor: 0 });
  assert.deepEqual(places[2].end, { motion: 1, time_s: 1.56 });
  assert.equal(tapePlaces([lob], 9).at(-1).end.time_s, 1.6, 'no later than its end');
});

test('either end can be put first, and changed without the other', () => {
  const tape = Object.assign(Object.create(Tape.prototype), { ends: [] });
  tape.put(0, 'a');
  assert.deepEqual(tape.ends, ['a']);
  tape.put(1, 'b');
  tape.put(0, 'c');
  assert.deepEqual(tape.ends, ['c', 'b']);
  tape.put(1, 'd');
  assert.deepEqual(tape.ends, ['c', 'd']);
  tape.ends = [];
  tape.put(1, 'e');
  tape.put(0, 'f');
  assert.deepEqual(tape.ends, ['f', 'e']);
});
