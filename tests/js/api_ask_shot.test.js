// An aim is asked for while its place is open, of the newest catcher alone, and not twice for the same.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAskShot } from '../../static/api/ask_shot.js';
import { ValidationError } from '../../static/api/errors.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const flush = () => new Promise(resolve => setImmediate(resolve));
const AIM = { motion: 'out', to: { along_m: 4, height_m: 1.4, axial_m: 0 }, within_m: 0.15, fixed: { speed_m_s: 6 } };
const put = (store, along_m, live) => store.setShot({ aim: { ...AIM, to: { ...AIM.to, along_m } } }, { live });

function bench() {
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS }),
    asked = [];
  const aim = (body, { units, signal }) => new Promise((give, refuse) => asked.push({ body, units, signal, give, refuse }));
  createAskShot({ store, aim });
  return { store, asked };
}

test('nothing is asked before the place is open and something is aimed, then the whole scene with it', async () => {
  const { store, asked } = bench();
  store.look({ place: 5 });
  assert.equal(asked.length, 0);
  store.setShot({ aim: AIM });
  const { title, ...scene } = SCENE;
  const thrown = { ...SCENE.motions[0], speed_m_s: 0, heading_deg: 0, elevation_deg: 0 }; // which are sought
  assert.deepEqual(asked[0].body, { scene: { ...scene, motions: [thrown] }, ...AIM });
  asked[0].give({ ways: [{ flight_s: 1 }], short: 'one throw' });
  await flush();
  store.look({ chosen: 1 });
  assert.deepEqual([asked.length, store.shot.answer.short, store.shotBehind], [1, 'one throw', false]);
  store.look({ place: 2 });
  store.set('habitat.radius_m', 60);
  assert.equal(asked.length, 1);
  store.look({ place: 5 });
  assert.deepEqual([asked.length, asked[1].body.scene.habitat.radius_m], [2, 60]);
});

test('of a drag the newest catcher alone is asked about once the one under way is back', async () => {
  const { store, asked } = bench();
  store.look({ place: 5 });
  for (const along_m of [1, 2, 3]) put(store, along_m, true);
  assert.equal(asked.length, 1);
  asked[0].give({ ways: [] });
  await flush();
  assert.deepEqual([asked.length, asked[1].body.to.along_m], [2, 3]);
  asked[1].give({ ways: [] });
  put(store, 3, false); // at rest long flights are looked for too
  await flush();
  assert.deepEqual(
    asked.map(({ body }) => body.flight_max_s),
    [15, 15, undefined],
  );
});

test('a refusal is told once, another failure is asked again, and the choice goes with the way it was of', async () => {
  const { store, asked } = bench();
  store.look({ place: 5 });
  store.setShot({ aim: AIM });
  asked[0].refuse(new ValidationError([{ say: 'Reach was 0.' }]));
  await flush();
  store.look({ chosen: 1 });
  assert.deepEqual([asked.length, store.shot.problem.message], [1, 'Reach was 0.']);
  put(store, 5);
  asked[1].refuse(new Error('gone'));
  await flush();
  store.look({ chosen: 0 });
  asked[2].give({ ways: [{ flight_s: 1 }, { flight_s: 4 }] });
  await flush();
  store.setShot({ chosen: 1 });
  put(store, 6);
  asked[3].give({ ways: [{ flight_s: 4.2 }, { flight_s: 9 }] });
  await flush();
  assert.deepEqual([store.shot.problem, store.shot.chosen], [null, 0]);
});

test('another scene aborts what was asked of the one before and has no aim yet', () => {
  const { store, asked } = bench();
  store.look({ place: 5 });
  store.setShot({ aim: AIM });
  store.open(structuredClone(SCENE), { motions: [] });
  assert.deepEqual([asked.length, asked[0].signal.aborted, store.shot.aim], [1, true, null]);
});
