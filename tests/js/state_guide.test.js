// The look round comes by itself once, goes step by step, and is over for good; a word of warning is said once, and only while it turns fast.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { FAST_DEG_S, comesByItself, isWarningDue, turnOnScreen } from '../../static/state/first_time.js';
import { STEPS, createGuide } from '../../static/state/guide.js';
import { createViewStorage } from '../../static/state/persistence.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

test('the look round goes on, back and to its end, and stays over', () => {
  const seen = [];
  const guide = createGuide({ turned: ({ at }) => seen.push(at) });
  assert.equal(guide.step, STEPS[0]);
  guide.back();
  for (let k = 0; k < STEPS.length - 1; k += 1) guide.next();
  assert.ok(guide.isLast);
  guide.back();
  guide.next();
  guide.next();
  guide.next(); // it is over
  guide.back();
  assert.deepEqual(seen, [0, 1, 2, 3, 2, 3, null]);
  assert.equal(guide.step, null);
});

test('it comes by itself to the first page alone, whatever became of it there', () => {
  const kept = new Map();
  const views = createViewStorage({ getItem: key => kept.get(key) ?? null, setItem: (key, value) => kept.set(key, value) });
  const opened = () => {
    const store = createStore({ document: structuredClone(SCENE), fields: FIELDS });
    store.look(views.view(store.view));
    return store;
  };
  const first = opened();
  assert.ok(comesByItself(first.view, true));
  assert.ok(!comesByItself(first.view, false), 'not over a scene that somebody sent');
  first.look({ guided: true, steady: true });
  views.saveView(first.view);
  const second = opened();
  assert.ok(!comesByItself(second.view, true));
  assert.ok(second.view.steady, 'who has the turning stopped keeps it so');
});

test('a warning is due once, while it plays, where it turns fast on the screen', () => {
  assert.equal(turnOnScreen(-5, 1), 30); // 5 turns of 360° in 60 s
  const view = { warned: false, steady: false },
    plays = { playing: true, pace: 1 };
  const fast_rpm = FAST_DEG_S / 6;
  assert.ok(isWarningDue(view, plays, fast_rpm));
  assert.ok(!isWarningDue(view, plays, 0.99 * fast_rpm));
  assert.ok(!isWarningDue(view, { ...plays, pace: 0.25 }, fast_rpm));
  assert.ok(!isWarningDue(view, { ...plays, playing: false }, fast_rpm));
  assert.ok(!isWarningDue({ ...view, warned: true }, plays, fast_rpm));
  assert.ok(!isWarningDue({ ...view, steady: true }, plays, fast_rpm));
});
