// What is aimed is on the stages, and so in pictures of them, where place 5 is open, and nowhere else: as it was when they were read.

import assert from 'node:assert/strict';
import test from 'node:test';

import { Group } from '../../static/vendor/three.module.js';
import { Actors } from '../../static/views/actors.js';
import { Half } from '../../static/views/half.js';
import { sharedUniforms } from '../../static/views/materials.js';
import { Aimed } from '../../static/views/shot/aimed.js';

const way = { name: 'Way 1', path: { rotating_m: [0, 0, 0, 1, 0, 0], inertial_m: [0, 0, 0, 1, 0, 0], time_s: [0, 1] }, blocked_by: null };

function aimedAt(place) {
  const shared = sharedUniforms(),
    actors = new Actors(shared, 'aboard');
  const eye = { metresPerPx: 0.01, axes: { right: [1, 0, 0], up: [0, 1, 0] } };
  const half = { frame: 'aboard', actors, eye, group: new Group(), model: { radius_m: 56, motions: [], ground: {} }, rect: { height: 400 }, linePx: 4 };
  const aim = { motion: 'Ball', to: { motion: 'Ring' }, within_m: 0.5 };
  const store = { view: { place }, shotBehind: false, shot: { aim, answer: { ways: [way], nearest: null }, chosen: 0, landings: null, flown: null } };
  const aimed = new Aimed(shared, half, store, { end_s: 1 }, null);
  aimed.read();
  const seen = () => [aimed.group.visible, aimed.update(0.5).length > 0, aimed.points().length > 0, aimed.crowd().length > 0];
  return { half, store, aimed, seen };
}

const ALL = [true, true, true, true],
  NONE = [false, false, false, false];

test('a picture keeps what was aimed where it began at place 5, and gets none of it where it did not, whatever place is opened meanwhile', () => {
  for (const [from, to, wanted] of [
    [5, 2, ALL],
    [2, 5, NONE],
  ]) {
    const { store, aimed, seen } = aimedAt(from);
    assert.deepEqual(seen(), wanted, `at place ${from}`);
    store.view.place = to;
    assert.deepEqual(seen(), wanted, `place ${to} is opened while a clip is made`);
    const { aim } = store.shot;
    store.shot.aim = null;
    assert.deepEqual(seen(), wanted, 'nothing is aimed any more');
    store.shot.aim = aim;
    aimed.read();
    assert.deepEqual(seen(), wanted === ALL ? NONE : ALL, 'the stages read it anew');
  }
});

test('a picture of what moves, with its paths or without, has no way that was not taken', () => {
  const { half, aimed } = aimedAt(5);
  const part = { mesh: {}, group: {}, dots: {}, meshes: [] };
  const stage = { actors: half.actors, vessels: part, dims: part, tape: part, paths: part, compared: part, touches: part, aimed };
  for (const paths of [true, false]) assert.ok(Half.prototype.besidesWhatMoves.call(stage, paths).includes(aimed.group));
});
