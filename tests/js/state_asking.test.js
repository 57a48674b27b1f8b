// A step that asks the room: from the question to how near the guesses were, with conductor and clock as they are.

import assert from 'node:assert/strict';
import test from 'node:test';
import { askAlong } from '../../static/state/asking.js';
import { createConductor } from '../../static/state/conductor.js';
import { createStore } from '../../static/state/store.js';
import { createTalk } from '../../static/state/talk.js';
import { createClock } from '../../static/time/clock.js';
import { guessWords } from '../../static/panels/present/guess_bar.js';
import { FIELDS, SCENE } from './_scene.mjs';

const answerFor = scene => ({
  scene,
  motions: [{ name: 'back', events: [{ kind: 'release', along_m: 0 }], landing: { time_s: 2.5, along_m: -10, way: { of_turn: -0.03 } } }],
});
const turns = () => [...Array(12)].reduce(wait => wait.then(() => {}), Promise.resolve());

test('guesses are taken while it is held; the landing shows itself as it comes down, and tells how near they were', async () => {
  const store = createStore({ document: structuredClone(SCENE), fields: FIELDS });
  store.setAnswer(answerFor(store.document), store.document);
  let now_ms = 0;
  const clock = createClock({ now: () => now_ms });
  clock.setSpan(4, 1 / 24);
  const pass = by_ms => {
    for (const until = now_ms + by_ms; now_ms < until; now_ms += 20) clock.tick(now_ms);
  };
  const talk = createTalk({ title: '', steps: [{ scene: SCENE, ask: { motion: 'back', until_s: 1 } }, { scene: SCENE }] });
  const conductor = createConductor({ talk, store, clock, answerOf: step => answerFor(step.scene) });
  const { guesses } = store;
  conductor.begin();
  const stop = askAlong({ store, clock, talk });
  await turns();
  pass(3000);
  assert.equal(clock.time_s, 1);
  assert.ok(guesses.open);
  assert.match(guessWords(guesses, 'si'), /^back: where does it come down\? Click/);
  for (const along_m of [-8, -12.5]) guesses.place(along_m);
  for (const along_m of [-6, -7, -30]) assert.ok(guesses.add(along_m));
  talk.next();
  pass(1000);
  assert.deepEqual([store.view.withheld?.motions, guesses.revealed], [['back'], false]); // it is in the air
  assert.match(guessWords(guesses, 'si'), /^5 guesses are in\.$/);
  assert.equal(guesses.add(1), false);
  pass(600);
  assert.deepEqual([store.view.withheld, guesses.revealed, guesses.nearest_m], [null, true, 2]);
  const words = guessWords(guesses, 'si').replaceAll('\u00a0', ' ');
  assert.match(
    words,
    /^back: it comes down 10\.00 m antispinward\. Nearest of 5 guesses: 2\.0 m off\. The middle one: 8\.0 m antispinward; half of them from 7\.0 m to 12\.5 m antispinward\.$/,
  );
  talk.back(); // and once more
  await turns();
  assert.deepEqual([guesses.open, guesses.marks.length], [true, 5]);
  talk.next();
  talk.next();
  assert.equal(guesses.motion, null);
  stop();
});
