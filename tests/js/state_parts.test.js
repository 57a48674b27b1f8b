// While a dial moves: paths alone, with what was told last kept out of sight, and everything once it rests.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAsk } from '../../static/api/ask.js';
import { completed, movingParts } from '../../static/state/parts.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const CAUSES = { drift_parts_m: { order: [], coriolis: -1 }, drift_parts_none: null };
const told = way => ({
  words: [`It lands ${way}.`],
  pieces: [`It lands ${way}.`],
  assumptions: ['No wind.'],
  prose: { past: way, present: way },
  in_short: way,
  within_reach: [],
});
const bare = time_s => ({ name: 'Lob', events: [], landing: { time_s } });
const whole = (time_s, way, scene = SCENE) => ({
  scene,
  prose: { past: way },
  motions: [{ ...bare(time_s), ...told(way), landing: { time_s, ...CAUSES } }],
  compare: [{ name: 'Other', prose: { past: way }, motions: [{ ...bare(9), ...told('there') }] }],
});

test('a partial answer has its own paths, and what was told before is no more than kept', () => {
  const before = whole(1, 'far');
  const now = completed({ scene: SCENE, motions: [bare(2)] }, before, 'own_paths');
  assert.equal(now.partial, true);
  assert.deepEqual(now.motions[0].landing, { time_s: 2, ...CAUSES });
  assert.deepEqual(now.motions[0].words, before.motions[0].words);
  assert.equal(now.motions[0].in_short, '', 'what is read out would be of other paths');
  assert.equal(now.compare, before.compare);
  const other = completed({ scene: SCENE, motions: [{ ...bare(2), name: 'New' }], compare: [] }, before, 'paths');
  assert.deepEqual([other.motions[0].words, other.motions[0].landing.drift_parts_m, other.compare], [[], null, []]);
});

test('other habitats are left out only while nothing of theirs changes', () => {
  const document = { ...SCENE, compare: [{ name: 'Other', habitat: SCENE.habitat }] };
  const state = { document: { ...document, habitat: { radius_m: 70 } }, answered: document, answer: whole(1, 'far') };
  assert.equal(movingParts(state, null), 'own_paths');
  assert.equal(movingParts(state, { follower: 'habitat.spin_rpm' }), 'own_paths');
  assert.equal(movingParts(state, { follower: 'compare.0.habitat.spin_rpm' }), 'paths');
  assert.equal(movingParts({ ...state, document: { ...document, motions: [] } }, null), 'paths');
  assert.equal(movingParts({ ...state, answer: { ...state.answer, compare: [] } }, null), 'paths');
});

function bench() {
  const timers = new Map(),
    asked = [];
  let now_ms = 0,
    number = 0;
  const waits = {
    later: (fn, ms) => {
      number += 1;
      timers.set(number, { fn, at_ms: now_ms + ms });
      return number;
    },
    forget: id => timers.delete(id),
    now: () => now_ms,
  };
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS, timers: waits });
  const trace = (document, { parts }) => new Promise(resolve => asked.push({ document, parts, answer: resolve }));
  const ask = createAsk({ store, trace, timers: waits, now: () => now_ms });
  const settle = () => new Promise(resolve => setTimeout(resolve));
  async function pass(ms) {
    now_ms += ms;
    for (const [id, { fn, at_ms }] of [...timers]) if (at_ms <= now_ms && timers.delete(id)) fn();
    await settle();
  }
  return { store, ask, asked, pass, settle };
}

async function opened() {
  const all = bench();
  all.ask.ask();
  all.asked[0].answer(whole(1, 'far', all.store.document));
  await all.settle();
  return all;
}

test('a dial that moves is asked for paths, and for all the rest within 150 ms of its rest, held or let go', async () => {
  const { store, asked, pass, settle } = await opened();
  assert.equal(asked[0].parts, 'all');
  store.set('habitat.radius_m', 60, { live: true });
  assert.equal(asked[1].parts, 'own_paths');
  asked[1].answer({ scene: store.document, motions: [bare(2)] });
  await settle();
  assert.equal(store.answer.motions[0].landing.time_s, 2);
  assert.equal(asked.length, 2);
  await pass(100);
  assert.deepEqual([asked.length, asked[2].parts], [3, 'all']);
  asked[2].answer(whole(2, 'farther', store.document));
  await settle();
  assert.deepEqual([store.answer.partial, store.toldBehind, asked.length], [undefined, false, 3]);
  store.set('habitat.radius_m', 61, { live: true });
  asked[3].answer({ scene: store.document, motions: [bare(3)] });
  await settle();
  store.set('habitat.radius_m', 61); // let go
  assert.equal(asked[4].parts, 'all');
});

test('words of other values stand beside new ones for a moment only, and not after what was typed', async () => {
  const { store, asked, pass, settle } = await opened();
  for (const radius_m of [60, 62, 64, 66]) {
    store.set('habitat.radius_m', radius_m, { live: true });
    asked.at(-1).answer({ scene: asked.at(-1).document, motions: [bare(radius_m)] });
    await settle();
    await pass(80);
  }
  assert.deepEqual([store.behind, store.toldBehind], [false, true]);
  store.set('habitat.radius_m', 70);
  assert.deepEqual([store.behind, store.toldBehind], [true, true]);
});
