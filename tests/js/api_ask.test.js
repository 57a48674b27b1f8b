// Asking: one in flight, the newest waits, older answers never overtake, failures keep the last good picture.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAsk } from '../../static/api/ask.js';
import { Unanswered, ValidationError } from '../../static/api/errors.js';
import { heldHome } from '../../static/state/homes.js';
import { createStatus } from '../../static/state/status.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

// a transport whose answers come when the test says so, and timers that fire when it says so
function bench() {
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS });
  const asked = [],
    timers = new Map();
  let timer = 0;
  const waits = {
    later(fn, ms) {
      timers.set((timer += 1), { fn, ms });
      return timer;
    },
    forget: id => timers.delete(id),
  };
  const clock = { ms: 0 };
  const status = createStatus(waits);
  const trace = (document, options) =>
    new Promise((resolve, reject) => {
      asked.push({ document, options, answer: (scene = document) => resolve({ scene, motions: [] }), fail: reject });
    });
  const ask = createAsk({ store, trace, status, timers: waits, now: () => clock.ms });
  const pass = ms => [...timers].filter(([, one]) => one.ms === ms).forEach(([id, { fn }]) => (timers.delete(id), fn()));
  return { store, ask, asked, timers, status, clock, pass };
}
const settle = () =>
  new Promise(resolve => {
    setTimeout(resolve);
  });
const radius = store => store.answer?.scene.habitat.radius_m;

test('while one is in flight only the newest document waits', async () => {
  const { store, asked } = bench();
  for (const r of [57, 58, 59]) store.set('habitat.radius_m', r, { live: true });
  assert.equal(asked.length, 1);
  asked[0].answer();
  await settle();
  assert.deepEqual(
    asked.map(one => one.document.habitat.radius_m),
    [57, 59],
  );
  assert.equal(radius(store), 57);
  assert.equal(store.stale, true);
  asked[1].answer();
  await settle();
  assert.equal(radius(store), 59);
  assert.equal(store.stale, false);
  assert.equal(asked.length, 2);
});

test('an answer for a scene no longer open is dropped', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 57);
  const other = { ...structuredClone(SCENE), habitat: { radius_m: 200, spin_rpm: 1 } };
  store.open(other, { scene: other, motions: [] });
  asked[0].answer();
  await settle();
  assert.equal(radius(store), 200);
  assert.equal(asked.length, 1, 'it came with its own answer');
  assert.equal(asked[0].options.signal.aborted, true);
});

test('a refusal names its field and the last good answer stays', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 60);
  asked[0].answer();
  await settle();
  store.set('motions.0.place.height_m', 900);
  asked[1].fail(new ValidationError([{ field: 'motions.0.place.height_m', was: '900', may_be: 'inside', say: 'Height was 900 m.' }]));
  await settle();
  assert.deepEqual([store.notice.kind, store.notice.field, store.notice.say], ['refused', 'motions.0.place.height_m', 'Height was 900 m.']);
  assert.equal(radius(store), 60);
  store.undo();
  await settle();
  assert.equal(store.notice, null, 'back at the document that was answered, nothing is wrong');
});

test('a failure says so, says what is still shown, and can be asked again', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 60);
  asked[0].answer();
  await settle();
  store.set('habitat.radius_m', 70);
  asked[1].fail(new Unanswered('The server cannot be reached.'));
  await settle();
  assert.equal(store.notice.kind, 'failed');
  assert.match(`${store.notice.say} ${store.notice.more}`, /cannot be reached.*60\.0\u00a0m/);
  assert.equal(radius(store), 60);
  store.notice.again();
  assert.equal(asked[2].document.habitat.radius_m, 70);
  asked[2].answer();
  await settle();
  assert.equal(store.notice, null);
  assert.equal(radius(store), 70);
});

test('a refused value that was already moved away from is not complained about', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 1, { live: true });
  store.set('habitat.radius_m', 80, { live: true });
  asked[0].fail(new ValidationError([{ field: 'habitat.radius_m', was: '1', may_be: '', say: 'no' }]));
  await settle();
  assert.equal(store.notice, null);
  assert.equal(asked.length, 2);
});

test('waiting dims at 0.3 s, and after 1 s it is said whose values are seen, with how far it is and Cancel', async () => {
  const { store, asked, timers, status, clock, pass } = bench();
  store.set('habitat.radius_m', 60);
  clock.ms = 400;
  asked[0].answer();
  await settle();
  assert.equal(asked[0].options.told, null, 'what nobody knows to be slow is asked the short way');
  store.set('habitat.radius_m', 70);
  pass(300);
  assert.deepEqual([status.dimmed, status.line], [true, null]);
  pass(1000);
  assert.match(status.line.say, /Working out.*60\.0/);
  asked[1].options.told(30, 120);
  assert.deepEqual([status.line.share, status.line.buttons.map(({ say }) => say)], [0.25, ['Cancel']]);
  asked[1].answer();
  await settle();
  assert.deepEqual([status.line, status.dimmed, timers.size], [null, false, 0]);
});

test('cancelled, the answer shown stands with its own inputs again, and can be tried again', async () => {
  const { store, asked, status, pass } = bench();
  store.set('habitat.radius_m', 60);
  asked[0].answer();
  await settle();
  const answered = store.document;
  store.set('habitat.radius_m', 70);
  store.set('motions.0.speed_m_s', 7);
  pass(1000);
  status.line.buttons[0].run();
  assert.equal(asked[1].options.signal.aborted, true, 'the closed connection stops the work');
  assert.deepEqual([store.document, store.stale, radius(store)], [answered, false, 60]);
  assert.match(store.notice.say, /Cancelled/);
  asked[1].answer();
  await settle();
  assert.equal(radius(store), 60);
  store.redo();
  assert.equal(store.document.habitat.radius_m, 70);
  store.redo();
  assert.equal(store.document.motions[0].speed_m_s, 7);
  assert.equal(asked[2].document.habitat.radius_m, 70);
});

test('a newer dial position takes the place of one that has been under way for a second', async () => {
  const { store, asked, pass } = bench();
  store.set('habitat.radius_m', 60);
  store.set('habitat.radius_m', 70);
  assert.equal(asked.length, 1, 'one that may be there at once is waited for');
  pass(1000);
  await settle();
  assert.deepEqual([asked[0].options.signal.aborted, asked.length, asked[1].document.habitat.radius_m], [true, 2, 70]);
  pass(1000);
  store.set('habitat.radius_m', 80);
  assert.deepEqual([asked[1].options.signal.aborted, asked[2].document.habitat.radius_m], [true, 80]);
  asked[0].answer();
  asked[2].answer();
  await settle();
  assert.deepEqual([radius(store), store.stale, store.notice], [80, false, null]);
});

test('a dial that was to be set by what it gives is set by the question that overtakes', async () => {
  const { store, ask, asked, pass } = bench();
  ask.solve({ hold: 'gravity', held: 9.80665, follower: 'habitat.spin_rpm' });
  pass(1000);
  store.set('motions.0.speed_m_s', 7);
  assert.equal(asked[1].options.hold.held, 9.80665);
  asked[1].answer({ ...SCENE, habitat: { radius_m: 56, spin_rpm: 3.996 } });
  await settle();
  assert.equal(store.document.habitat.spin_rpm, 3.996);
});

test('too much work is told with what is still shown', async () => {
  const { store, asked } = bench();
  store.set('habitat.radius_m', 60);
  asked[0].answer();
  await settle();
  store.set('motions.0.bounces', 1000);
  asked[1].fail(new ValidationError([{ field: 'work', was: '20 s', may_be: '20 s', say: 'Lob took all of 20 s.' }]));
  await settle();
  assert.deepEqual(store.notice.kind, 'refused');
  assert.match(`${store.notice.say} ${store.notice.more}`, /Lob took all of 20 s\. The dimmed picture is for 60\.0/);
});

test('a figure that was refused while an answer was on its way is still refused when that comes', async () => {
  const { store, ask, asked } = bench();
  ask.ask();
  store.tell({ kind: 'refused', field: 'habitat.radius_m', say: 'Radius was 1000000.' });
  asked[0].answer();
  await settle();
  assert.equal(store.notice?.field, 'habitat.radius_m');
  store.set('habitat.radius_m', 60);
  asked[1].answer();
  await settle();
  assert.equal(store.notice, null);
});

test('with gravity held the other dial follows, without asking again', async () => {
  const { store, asked } = bench();
  store.look({ hold: 'gravity', held: 5.5 });
  store.set('habitat.radius_m', 112, { live: true });
  assert.deepEqual(asked[0].options.hold, { hold: 'gravity', held: 5.5, follower: 'habitat.spin_rpm' });
  asked[0].answer({ ...SCENE, habitat: { radius_m: 112, spin_rpm: 2.12 } });
  await settle();
  assert.equal(store.document.habitat.spin_rpm, 2.12);
  assert.equal(store.stale, false);
  assert.equal(asked.length, 1);
  store.set('motions.0.speed_m_s', 7);
  assert.equal(asked[1].options.hold, null, 'another field moves no dial');
});

test('gravity held in a second habitat moves a dial of that one alone, and its decks go with it', async () => {
  const { store, asked } = bench();
  const decks = [{ name: 'Court', radius_m: 112 }];
  store.edit(draft => {
    draft.compare = [{ name: 'Second', habitat: { shape: 'cylinder', radius_m: 112, spin_rpm: 2.12, decks } }];
  });
  store.look({ hold: 'gravity', held: 5.5, follower: 'compare.0.habitat.radius_m' });
  store.set('habitat.radius_m', 60);
  asked[0].answer();
  await settle();
  assert.equal(asked[1].options.hold, null, 'a dial of the scene’s own habitat moves none');
  asked[1].answer();
  await settle();
  store.set('compare.0.habitat.spin_rpm', 1.5, { live: true });
  assert.deepEqual(asked[2].options.hold, { hold: 'gravity', held: 5.5, follower: 'compare.0.habitat.radius_m' });
  const home = { ...store.document.compare[0].habitat, radius_m: 224, decks: [{ name: 'Court', radius_m: 224 }] };
  asked[2].answer({ ...store.document, compare: [{ name: 'Second', habitat: home }] });
  await settle();
  assert.deepEqual(store.document.compare[0].habitat, home);
  assert.equal(store.stale, false);
  store.set('compare', []);
  assert.equal(heldHome(store), null);
});

test('what was to follow a dial is not put into a scene that was set back meanwhile', async () => {
  const { store, ask, asked } = bench();
  ask.ask();
  asked[0].answer();
  await settle();
  store.look({ hold: 'gravity', held: 5.5 });
  const before = store.document;
  store.set('habitat.radius_m', 112, { live: true });
  store.undo();
  asked[1].answer({ ...SCENE, habitat: { radius_m: 112, spin_rpm: 2.12 } });
  await settle();
  assert.equal(store.document, before);
  assert.equal(asked[2].document, before, 'what was answered before is asked for again, since another answer came between');
  assert.equal(asked[2].options.hold, null);
});

test('a dial goes on following when another field is changed while it waits', async () => {
  const { store, asked } = bench();
  store.look({ hold: 'gravity', held: 5.5 });
  store.set('habitat.radius_m', 112, { live: true });
  store.set('motions.0.speed_m_s', 7);
  asked[0].answer({ ...SCENE, habitat: { radius_m: 112, spin_rpm: 2.12 } });
  await settle();
  assert.equal(store.document.habitat.spin_rpm, 2.12);
  asked[1].answer();
  await settle();
  assert.equal(asked[1].options.hold, null);
});

test('a dial that was touched and stands where it stood has nothing follow it later', async () => {
  const { store, ask, asked } = bench();
  ask.ask();
  asked[0].answer();
  await settle();
  store.look({ hold: 'gravity', held: 5.5 });
  store.set('habitat.radius_m', store.read('habitat.radius_m'));
  store.set('motions.0.speed_m_s', 7);
  assert.equal(asked[1].options.hold, null);
});

test('a dial set by what it gives is one undo step', async () => {
  const { store, ask, asked } = bench();
  ask.solve({ hold: 'gravity', held: 9.80665, follower: 'habitat.spin_rpm' });
  asked[0].answer({ ...SCENE, habitat: { radius_m: 56, spin_rpm: 3.996 } });
  await settle();
  assert.equal(store.document.habitat.spin_rpm, 3.996);
  store.undo();
  assert.equal(store.document.habitat.spin_rpm, 3);
});

test('what was told stays when an answer comes', async () => {
  const { store, asked } = bench();
  store.edit(draft => {
    draft.motions.pop();
  });
  store.tell({ kind: 'told', say: 'back is gone.', undo: true });
  asked[0].answer();
  await settle();
  assert.equal(store.notice.say, 'back is gone.');
});

test('words are asked for anew in other units', async () => {
  const { store, ask, asked } = bench();
  ask.ask();
  asked[0].answer();
  await settle();
  store.look({ units: 'us' });
  assert.equal(asked[1].options.units, 'us');
});
