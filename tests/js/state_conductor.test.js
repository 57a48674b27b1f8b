// The steps of a talk as they are put on store and clock.

import assert from 'node:assert/strict';
import test from 'node:test';

import { createConductor } from '../../static/state/conductor.js';
import { createStore } from '../../static/state/store.js';
import { createTalk } from '../../static/state/talk.js';
import { createClock } from '../../static/time/clock.js';
import { FIELDS, SCENE } from './_scene.mjs';

const END_S = 4;
const wheel = (habitat = {}) => ({ ...SCENE, habitat: { ...SCENE.habitat, ...habitat } });
const OTHER = { ...SCENE, title: 'Another', motions: [SCENE.motions[1]] };
const answerFor = scene => ({ scene, motions: [] });
const turns = (n = 12) => [...Array(n)].reduce(wait => wait.then(() => {}), Promise.resolve());

// answers come when they are let go, where `slow`
function hall(steps, { calm = false, live = true, slow = false, ready } = {}) {
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS });
  store.setAnswer(answerFor(store.document), store.document);
  let now_ms = 0,
    due = null;
  const clock = createClock({ now: () => now_ms });
  store.on('answer', () => clock.setSpan(END_S, 1 / 24));
  clock.setSpan(END_S, 1 / 24);
  const talk = createTalk({ title: '', steps });
  const asked = [],
    looked = [],
    let_go = [];
  const conductor = createConductor({
    talk,
    store,
    clock,
    live,
    calm: () => calm,
    ready,
    look: move => looked.push(move),
    answerOf: step => {
      asked.push(step.scene.title);
      return slow ? new Promise((resolve, reject) => let_go.push({ resolve: () => resolve(answerFor(step.scene)), reject })) : answerFor(step.scene);
    },
    timers: { later: fn => (due = fn), forget: () => (due = null), now: () => now_ms },
  });
  const pass = (by_ms, step_ms = 20) => {
    for (const until_ms = now_ms + by_ms; now_ms < until_ms - 1e-9; ) {
      now_ms += step_ms;
      const fn = due;
      due = null;
      fn?.();
      clock.tick(now_ms);
    }
  };
  return { store, clock, talk, conductor, asked, looked, let_go, pass };
}

test('a step: scene with its answer, view, seats, pace that nobody chose, time; and playing', async () => {
  const step = {
    scene: OTHER,
    place: 5,
    show: 'aboard',
    merged: true,
    seats: { aboard: 'c', outside: 'w' },
    hidden: ['out'],
    companion: false,
    companion_outside: true,
    dimensions: false,
    arrows: ['coriolis'],
    from_s: 1,
    pace: 0.25,
  };
  const { store, clock, conductor } = hall([step]);
  clock.setPace(0.5);
  conductor.begin();
  await turns();
  assert.equal(store.document, OTHER);
  assert.equal(store.stale, false);
  const { place, alone, merged, swapped, presets, hidden, companion, companionOutside, measure, arrows, withheld } = store.view;
  assert.deepEqual(
    { place, alone, merged, swapped, presets, hidden, companion, companionOutside, measure, withheld },
    {
      place: 5,
      alone: 'aboard',
      merged: true,
      swapped: false,
      presets: { aboard: 'c', outside: 'w' },
      hidden: ['out'],
      companion: false,
      companionOutside: true,
      measure: 'off',
      withheld: null,
    },
  );
  assert.deepEqual(arrows, { velocity: false, centrifugal: false, coriolis: true, alone: false });
  assert.deepEqual([clock.time_s, clock.pace, clock.playing, clock.chosenPace], [1, 0.25, true, 0.5]);
  conductor.end();
  assert.deepEqual([clock.pace, store.view.measure, store.view.alone, store.view.place], [0.5, 'dimensions', null, 2]);
  assert.equal(store.document, OTHER);
});

test('what stands on the stages already is not asked for; the next step is, ahead of its time, and once', async () => {
  const { conductor, talk, asked, store } = hall([{ scene: wheel() }, { scene: OTHER }, { scene: wheel() }]);
  conductor.begin();
  await turns();
  assert.deepEqual(asked, ['Another']);
  talk.next();
  await turns();
  assert.deepEqual(asked, ['Another', 'Two throws']);
  assert.equal(store.document.title, 'Another');
});

test('what the place of a step is made of is there before it stands, and fetched ahead of it', async () => {
  const wanted = [];
  let come = null;
  const ready = ({ place }) => (wanted.push(place), new Promise(resolve => (come = resolve)));
  const { conductor, store } = hall(
    [
      { scene: OTHER, place: 4 },
      { scene: OTHER, place: 5 },
    ],
    { ready },
  );
  conductor.begin();
  await turns();
  assert.deepEqual([wanted, conductor.waiting, store.document.title], [[4], true, 'Two throws']);
  come();
  await turns();
  assert.deepEqual([wanted, conductor.waiting, store.view.place], [[4, 5], false, 4]);
});

test('a step left while its answer is on its way is not shown any more', async () => {
  const { conductor, talk, let_go, store } = hall([{ scene: OTHER }, { scene: { ...OTHER, title: 'Third' } }], { slow: true });
  conductor.begin();
  assert.equal(conductor.waiting, true);
  talk.next();
  let_go[0].resolve();
  await turns();
  assert.equal(store.document.title, 'Two throws');
  let_go[1].resolve();
  await turns();
  assert.equal(store.document.title, 'Third');
  assert.equal(conductor.waiting, false);
});

test('an answer that does not come is told and may be asked for again', async () => {
  const { conductor, let_go, store } = hall([{ scene: OTHER }], { slow: true });
  conductor.begin();
  let_go[0].reject(new Error('The server does not answer.'));
  await turns();
  assert.match(store.notice.say, /The server does not answer/);
  store.notice.again();
  let_go[1].resolve();
  await turns();
  assert.equal(store.document.title, 'Another');
});

test('held: withheld, still at its time, and nobody sees beyond; revealed it plays on; back holds again', async () => {
  const { conductor, talk, store, clock, pass } = hall([{ scene: wheel(), ask: { motion: 'back', until_s: 1 }, until_s: 2 }]);
  conductor.begin();
  await turns();
  assert.deepEqual(store.view.withheld, { motions: ['back'], until_s: 1 });
  assert.equal(store.view.chosen, 1);
  pass(3000);
  assert.deepEqual([clock.time_s, clock.playing], [1, false]);
  clock.play();
  clock.seek(3);
  assert.deepEqual([clock.time_s, clock.playing], [1, false]);
  talk.next();
  assert.equal(store.view.withheld, null);
  assert.equal(clock.playing, true);
  pass(5000);
  assert.equal(clock.time_s, 2);
  assert.equal(talk.paused, true);
  talk.next();
  pass(5000);
  assert.equal(clock.time_s, END_S);
  talk.back();
  assert.deepEqual([store.view.withheld?.motions, clock.time_s], [['back'], 0]);
});

test('held before it is let go, it stands at the start', async () => {
  const { conductor, clock, talk, pass } = hall([{ scene: wheel(), from_s: 0.5, ask: { motion: 'out', until_s: 0 } }]);
  conductor.begin();
  await turns();
  pass(500);
  assert.deepEqual([clock.time_s, clock.playing], [0, false]);
  talk.next();
  pass(500);
  assert.ok(clock.time_s > 0.4);
});

test('going on from a pause point by hand leaves it behind', async () => {
  const { conductor, clock, talk, pass } = hall([{ scene: wheel(), until_s: 1 }, { scene: OTHER }]);
  conductor.begin();
  await turns();
  pass(2000);
  assert.deepEqual([clock.time_s, talk.paused], [1, true]);
  clock.play();
  pass(100);
  assert.equal(talk.paused, false);
  talk.next();
  assert.equal(talk.at, 1);
});

test('where the dials alone differ they are moved there, in one undo step; calm, or unanswered, they are cut', async () => {
  const steps = [{ scene: wheel() }, { scene: wheel({ radius_m: 224, spin_rpm: 1.5 }) }];
  const { conductor, talk, store, pass, looked } = hall(steps);
  conductor.begin();
  await turns();
  const { document: before } = store,
    radii = [];
  store.on('document', ({ live }) => live && radii.push(store.document.habitat.radius_m));
  talk.next();
  await turns();
  pass(600);
  // by ratios: half way between 56 and 224 stands 112
  assert.ok(radii.some(radius => Math.abs(radius - 112) < 6) && radii.every((radius, i) => !i || radius >= radii[i - 1]));
  assert.equal(looked.at(-1).eased, true);
  pass(700);
  await turns();
  assert.equal(store.document, steps[1].scene);
  assert.equal(store.stale, false);
  store.undo();
  assert.equal(store.document, before);

  for (const how of [{ calm: true }, { live: false }]) {
    const cut = hall(steps, how);
    cut.conductor.begin();
    await turns();
    let live = 0;
    cut.store.on('document', detail => (live += detail.live ? 1 : 0));
    cut.talk.next();
    await turns();
    assert.equal(live, 0);
    assert.equal(cut.store.document, steps[1].scene);
    assert.equal(cut.looked.at(-1).eased, !how.calm);
  }
});

test('moving dials stop for a further step; another scene is cut to', async () => {
  const { conductor, talk, store, pass, looked } = hall([{ scene: wheel() }, { scene: wheel({ radius_m: 224 }) }, { scene: OTHER }]);
  conductor.begin();
  await turns();
  talk.next();
  await turns();
  pass(300);
  talk.next();
  await turns();
  pass(2000);
  await turns();
  assert.equal(store.document, OTHER);
  assert.equal(looked.at(-1).eased, false);
});

test('cameras take a seat’s stead, whose letter stays', async () => {
  const camera = { position_m: [0, 1, 2], target_m: [0, 0, 0], up: [0, 1, 0], vertical_fov_deg: 30 };
  const { conductor, talk, store, looked } = hall([
    { scene: wheel(), seats: { aboard: camera, outside: 'w' } },
    { scene: wheel(), seats: { aboard: 'c', outside: 'w' } },
  ]);
  conductor.begin();
  await turns();
  assert.deepEqual(store.view.presets, { aboard: 'b', outside: 'w' });
  assert.deepEqual(store.view.cameras, { aboard: camera, outside: null });
  assert.deepEqual(looked, [{ eased: false, ms: 1200 }]);
  talk.next();
  await turns();
  assert.deepEqual([store.view.presets.aboard, store.view.cameras.aboard], ['c', null]);
  assert.deepEqual(looked.at(-1), { eased: true, ms: 1200 });
});

test('ended, nothing of it is done any more', async () => {
  const { conductor, talk, store, let_go } = hall([{ scene: OTHER }], { slow: true });
  conductor.begin();
  conductor.end();
  let_go[0].resolve();
  talk.go(0);
  await turns();
  assert.equal(store.document.title, 'Two throws');
  assert.equal(store.view.lent, false);
});
