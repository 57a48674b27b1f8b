// The mark where something landed: what is carried on from it must not look like a second one.

import assert from 'node:assert/strict';
import test from 'node:test';

import { Paths } from '../../static/views/paths.js';

test('a landing is marked full Aboard, where the body lies on it, and as an outline Outside, where the deck carries the body on', () => {
  const landed = { kind: 'deck', time_s: 1, rotating_m: [56, 3, 0], inertial_m: [55, 9, 0] };
  const lob = { landing: landed, motion: { events: [landed] }, style: { marker: 'disc', color: '#F8B840', open: false } };
  const marked = frame => {
    const added = [];
    const marks = { begin() {}, end() {}, add: (_, look) => added.push(look) };
    Object.assign(Object.create(Paths.prototype), { frame, marks }).readMarks({ radius_m: 56 }, [lob]);
    return added;
  };
  assert.deepEqual([marked('aboard').length, marked('outside').length], [1, 1]);
  assert.equal(marked('aboard')[0].alpha, 1);
  assert.ok(marked('outside')[0].alpha < 0.5);
});
