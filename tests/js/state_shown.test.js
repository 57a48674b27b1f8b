// What an address says besides the scene: which motions are hidden, and how fast they play.

import assert from 'node:assert/strict';
import test from 'node:test';
import { fromHash, toHash } from '../../static/state/persistence.js';
import { aimIn } from '../../static/state/aim_link.js';
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

const AIM = { motion: 'out', to: { along_m: 58.64, height_m: 1.4, axial_m: 0 }, within_m: 0.15, fixed: { speed_m_s: 9 } };
const aiming = (aim, shot = { asked: true }, place = 5) => ({
  ...store(),
  fields: { kinds: { throw: { stage: { aimed: true } } } },
  shot: { aim, ...shot },
  view: { hidden: [], place },
});

test('an aim that was asked for goes there and back, whatever is kept and whoever catches', () => {
  assert.equal(withShown('#s=x', aiming(AIM)), '#s=x&throw=1&to=58.64,1.4,0&within=0.15&keep=speed_m_s,9&place=5');
  for (const aim of [
    AIM,
    { ...AIM, motion: 'back', to: { motion: 'out' }, fixed: { least: 'speed_m_s' } },
    { ...AIM, to: { ...AIM.to, floor: 1 }, fixed: { flight_s: 1.4 } },
  ]) {
    const there = aiming(aim);
    assert.deepEqual(aimIn(withShown('#s=x', there), there), { aim, open: true });
  }
  assert.equal(aimIn(withShown('#s=x', aiming(AIM, { asked: true }, 2)), aiming(AIM)).open, false);
});

test('the first aim of all, and nonsense, say nothing', () => {
  assert.equal(withShown('#s=x', aiming(AIM, { asked: false })), '#s=x');
  const good = { throw: '1', to: '1,2,3', within: '0.1', keep: 'least' };
  const there = aiming(AIM);
  const read = said => aimIn(`#s=x&${new URLSearchParams(said)}`, there);
  assert.notEqual(read(good), null);
  for (const wrong of [
    { throw: '3' },
    { throw: '' },
    { to: '1,x,3' },
    { to: '1,2' },
    { to: '1' },
    { to: '9' },
    { to: '' },
    { within: '0' },
    { within: 'x' },
    { keep: 'colour,1' },
    { keep: 'speed_m_s' },
    { keep: 'speed_m_s,fast' },
  ])
    assert.equal(read({ ...good, ...wrong }), null, JSON.stringify(wrong));
});
