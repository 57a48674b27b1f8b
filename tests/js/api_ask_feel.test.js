// What people would feel: asked from the first opening of its place on, of the open scene alone, and not twice for the same.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAskFeel } from '../../static/api/ask.js';
import { createStore, feltPart } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const flush = () => new Promise(resolve => setImmediate(resolve));

function bench() {
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS }),
    asked = [];
  const feel = (body, { units, signal }) => new Promise((give, refuse) => asked.push({ body, units, signal, give, refuse }));
  createAskFeel({ store, feel });
  return { store, asked };
}

test('nothing is asked before its place is opened, and nothing twice', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 57);
  assert.equal(asked.length, 0);
  store.look({ place: 4 });
  store.look({ chosen: 1 });
  asked[0].give({ of: 57 });
  await flush();
  store.look({ place: 2 });
  assert.deepEqual([asked.length, asked[0].body.habitat.radius_m, store.feel], [1, 57, { of: 57 }]);
  store.look({ units: 'us' });
  assert.deepEqual([asked.length, asked[1].units], [2, 'us']);
});

test('a failure is kept beside the last answer although the view changed meanwhile', async () => {
  const { store, asked } = bench();
  store.look({ place: 4 });
  asked[0].give({ of: 56 });
  await flush();
  store.set('habitat.radius_m', 58);
  store.look({ chosen: 1 });
  asked[1].refuse(new Error('gone'));
  await flush();
  assert.deepEqual([store.feel, store.feelProblem.message, asked.length], [{ of: 56 }, 'gone', 2]);
});

test('what was asked of another scene is aborted, and the new one asked at once though it is alike', async () => {
  const { store, asked } = bench();
  store.look({ place: 4 });
  store.open(structuredClone(store.document), { motions: [] });
  assert.deepEqual([asked.length, asked[0].signal.aborted], [2, true]);
  asked[0].give('old');
  await flush();
  assert.equal(store.feel, null);
  asked[1].give('new');
  await flush();
  assert.equal(store.feel, 'new');
});

test('the limits somebody set are asked about with the habitat, and no motions', () => {
  const own = [{ name: 'Ours', quantity: 'spin_rpm', greatest: 2 }];
  const body = feltPart({ ...SCENE, own_limits: own });
  assert.deepEqual([body.own_limits, body.habitat, 'motions' in body], [own, SCENE.habitat, false]);
});

test('of a craft that tumbles they are asked about with its tumble, and with what it weighs', () => {
  const over = { kind: 'tumble', about_x_rpm: 1 },
    craft = { parts: [] };
  const body = feltPart({ ...SCENE, craft, motions: [{ kind: 'drop' }, over] });
  assert.deepEqual([body.motions, body.craft], [[over], craft]); // biome-ignore format: a row
});
