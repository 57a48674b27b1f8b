// What an address says besides the scene: which motions are hidden, and how fast they play.

import assert from 'node:assert/strict';
import test from 'node:test';
import { fromHash, toHash } from '../../static/state/persistence.js';
import { hiddenNames, shownIn, shownIndexes, withShown } from '../../static/state/shown.js';
import { FIELDS, SCENE } from './_scene.mjs';

const SPEEDS = [1, 0.5, 0.25, 0.1];
const store = (...hidden) => ({ document: SCENE, answer: null, view: { hidden } });

test('there and back, and the scene is read all the same', async () => {
  const scene = await toHash(SCENE, FIELDS);
  const hash = withShown(scene, store('back'), 0.25);
  assert.equal(hash, `${scene}&hidden=2&speed=0.25`);
  assert.deepEqual(shownIn(hash, SPEEDS), { hidden: [1], speed: 0.25 });
  assert.deepEqual(await fromHash(hash), await fromHash(scene));
  assert.deepEqual(hiddenNames(store(), [1]), ['back']);
});

test('what is as always is left out', async () => {
  const scene = await toHash(SCENE, FIELDS);
  assert.equal(withShown(scene, store(), null), scene);
  assert.equal(withShown('', store()), '');
  assert.deepEqual(shownIn(scene, SPEEDS), { hidden: [], speed: null });
  assert.deepEqual(shownIn('', SPEEDS), { hidden: [], speed: null });
});

test('a scene too long for an address leaves what is hidden in it', async () => {
  const hash = withShown('', store('out', 'back'), 0.5);
  assert.equal(hash, '#hidden=1,2&speed=0.5');
  assert.equal(await fromHash(hash), null);
  assert.deepEqual(shownIn(hash, SPEEDS), { hidden: [0, 1], speed: 0.5 });
});

test('nonsense hides nothing and chooses no speed', () => {
  assert.deepEqual(shownIn('#s=x&hidden=0,-1,a,1.5,,7&speed=40', SPEEDS), { hidden: [6], speed: null });
  assert.deepEqual(hiddenNames(store(), [6]), []);
});

test('a name that belongs to no motion hides none', () => {
  assert.deepEqual(shownIndexes(store('gone', 'out')), [1]);
  assert.equal(withShown('#s=x', store('gone')), '#s=x');
});
