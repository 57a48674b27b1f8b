// An answer and the inputs beside it: never of two scenes; while a hand drags, for a moment at most.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

function bench() {
  const clock = { ms: 0, due: [] };
  const timers = {
    now: () => clock.ms,
    later: (fn, ms) => {
      const timer = { fn, at: clock.ms + ms };
      clock.due.push(timer);
      return timer;
    },
    forget: timer => {
      clock.due = clock.due.filter(one => one !== timer);
    },
  };
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS, timers });
  const told = [];
  store.on('behind', () => told.push([store.behind, store.feelBehind]));
  const pass = ms => {
    clock.ms += ms;
    for (const timer of clock.due.filter(({ at }) => at <= clock.ms)) {
      timers.forget(timer);
      timer.fn();
    }
  };
  const answer = (scene = store.document) => store.setAnswer({ scene, motions: [] }, scene);
  answer();
  return { store, told, pass, answer };
}
const RADIUS = 'habitat.radius_m';

test('what is typed, chosen, added, taken away or undone leaves the old answer behind at once', () => {
  const { store, told, answer } = bench();
  const changes = [
    () => store.set(RADIUS, 60),
    () => store.set('motions.0.body', 'cup'),
    () => store.edit(draft => draft.motions.pop()),
    () => store.edit(draft => draft.motions.push(structuredClone(SCENE.motions[1]))),
    () => store.edit(draft => Object.assign(draft.habitat, { shape: 'torus' }), { live: true }),
    () => store.undo(),
  ];
  for (const change of changes) {
    change();
    assert.equal(store.behind, true, String(change));
    answer();
    assert.equal(store.behind, false, String(change));
  }
  assert.equal(told.length, 2 * changes.length);
});

test('while a hand drags the last answer stays for a moment, and what comes later than that is never shown', () => {
  const { store, pass, answer } = bench();
  const first = store.document;
  const positions = [57, 58, 59, 60].map(radius => {
    store.set(RADIUS, radius, { live: true });
    pass(50);
    return store.document;
  });
  assert.equal(store.behind, false);
  answer(positions[1]); // left 100 ms ago
  assert.equal(store.behind, false);
  pass(100);
  assert.equal(store.behind, false);
  pass(60); // 260 ms
  assert.equal(store.behind, true);
  answer(positions[2]); // left 210 ms ago
  assert.equal(store.behind, false);
  pass(100);
  answer(first);
  assert.equal(store.behind, true);
  answer();
  assert.equal(store.behind, false);
});

test('letting go of what was dragged starts no new moment, and what was typed after it has none', () => {
  const { store, pass } = bench();
  store.set(RADIUS, 57, { live: true });
  pass(200);
  store.set(RADIUS, 57);
  assert.equal(store.behind, false);
  pass(60);
  assert.equal(store.behind, true);
  store.undo();
  assert.equal(store.behind, false, 'back at what was answered');
  store.set(RADIUS, 57, { live: true });
  store.set('motions.0.speed_m_s', 9);
  assert.equal(store.behind, true);
});

test('words that no answer depends on leave it where it is', () => {
  const { store } = bench();
  store.set('title', 'Another title');
  store.edit(draft => {
    draft.person = { height_m: 1.6 };
  });
  assert.equal(store.behind, false);
});

test('another scene comes with its own answer, and what people felt in the last one is not told of it', () => {
  const { store } = bench();
  store.setFeel({ says: { short: 'inside all' } });
  assert.equal(store.feelBehind, false);
  const same = structuredClone(SCENE),
    other = { ...structuredClone(SCENE), habitat: { radius_m: 200, spin_rpm: 1 } };
  store.open(same, { scene: same, motions: [] });
  assert.deepEqual([store.behind, store.feelBehind], [false, false], 'the same habitat');
  store.open(other, { scene: other, motions: [] });
  assert.deepEqual([store.behind, store.feelBehind], [false, true]);
  store.setFeel({ says: { short: 'beyond two' } });
  assert.equal(store.feelBehind, false);
  store.set(RADIUS, 100);
  store.setFeel(null, new Error('away'));
  assert.equal(store.feelBehind, true);
});

test('a dial that follows another is answered with it', () => {
  const { store } = bench();
  store.set(RADIUS, 112, { live: true });
  store.setAnswer({ scene: store.document, motions: [] }, store.document, { path: 'habitat.spin_rpm', value: 2.12, step: false });
  assert.equal(store.behind, false);
});
