// A talk as it is made: steps kept, changed, moved, taken away and brought back.

import assert from 'node:assert/strict';
import test from 'node:test';

import { createStore } from '../../static/state/store.js';
import { createTalk } from '../../static/state/talk.js';
import { createEdits, stepNow, talkDocument } from '../../static/state/talk_edits.js';
import { stepFacts } from '../../static/state/talk_words.js';
import { PLAIN_STEP } from '../../static/state/step_view.js';
import { FIELDS, SCENE } from './_scene.mjs';

const step = (line, rest = {}) => ({ ...PLAIN_STEP, scene: SCENE, line, ...rest });
function made(...lines) {
  const talk = createTalk();
  const edits = createEdits(talk);
  for (const line of lines) edits.keep(step(line));
  return { talk, edits, lines: () => talk.steps.map(({ line }) => line).join(' ') };
}

test('a step is kept after the one the talk is at, and is then the one', () => {
  const { talk, edits, lines } = made('a', 'c');
  talk.go(0);
  edits.keep(step('b'));
  assert.equal(lines(), 'a b c');
  assert.equal(talk.step.line, 'b');
});

test('what a talk is about is written, one step to undo, and stands in its document', () => {
  const { talk, edits } = made('a');
  for (const about of ['W', 'Wh', 'Why']) edits.describe(about);
  assert.equal(talkDocument(talk).about, 'Why');
  edits.undo();
  assert.deepEqual([talk.about, talk.steps.length], ['', 1]);
});

test('steps move, are doubled and taken away; all of it is undone and done again', () => {
  const { talk, edits, lines } = made('a', 'b', 'c');
  const seen = [lines()];
  const then = act => {
    act();
    seen.push(lines());
  };
  then(() => edits.move(2, 0));
  assert.equal(talk.step.line, 'c');
  then(() => edits.duplicate(1));
  then(() => edits.remove(3));
  assert.deepEqual(seen, ['a b c', 'c a b', 'c a a b', 'c a a']);
  for (const before of seen.slice(0, -1).reverse()) {
    edits.undo();
    assert.equal(lines(), before);
  }
  for (const after of seen.slice(1)) {
    edits.redo();
    assert.equal(lines(), after);
  }
  assert.equal(edits.redo(), false);
  assert.equal(edits.move(0, -1), false);
  assert.equal(edits.move(2, 3), false);
});

test('what is typed in one go is one step to undo', () => {
  const { talk, edits } = made('a', 'b');
  for (const line of ['T', 'Tw', 'Two']) edits.change(1, { line }, { typing: true });
  for (const notes of ['S', 'Say']) edits.change(1, { notes }, { typing: true });
  edits.undo();
  assert.deepEqual([talk.steps[1].line, talk.steps[1].notes], ['Two', '']);
  edits.undo();
  assert.equal(talk.steps[1].line, 'b');
});

test('begin, question and pause point stay in order: what was set last holds', () => {
  const { talk, edits } = made('a');
  const times = () => [talk.step.from_s, talk.step.ask?.until_s ?? null, talk.step.until_s];
  edits.change(0, { until_s: 2 });
  edits.change(0, { ask: { motion: 'out', until_s: 1 } });
  assert.deepEqual(times(), [0, 1, 2]);
  edits.change(0, { from_s: 1.5 });
  assert.deepEqual(times(), [1.5, 1.5, 2]);
  edits.change(0, { ask: { motion: 'out', until_s: 0 } });
  assert.deepEqual(times(), [0, 0, 2]);
  edits.change(0, { ask: { motion: 'out', until_s: 2.5 } });
  assert.deepEqual(times(), [0, 2.5, null]);
  edits.change(0, { until_s: 0.5 });
  assert.deepEqual(times(), [0, 0.5, 0.5]);
  edits.change(0, { from_s: 3 });
  assert.deepEqual(times(), [3, 3, null]);
});

test('what is on the stages is kept as it stands, every motion by its name', () => {
  const store = createStore({ document: { ...SCENE, motions: [SCENE.motions[0], { ...SCENE.motions[1], name: undefined }] }, fields: FIELDS });
  store.look({ hidden: ['throw 2', 'gone'], alone: 'aboard', companion: false });
  const camera = { position_m: [0, 1, 2], target_m: [0, 0, 0], up: [0, 1, 0], vertical_fov_deg: 30 };
  const kept = stepNow({ store, clock: { time_s: 0.8049, pace: 0.25, playing: true, end_s: 3 }, moved: { aboard: camera } });
  assert.deepEqual(
    kept.scene.motions.map(({ name }) => name),
    ['out', 'throw 2'],
  );
  assert.deepEqual([kept.hidden, kept.from_s, kept.pace, kept.show, kept.companion], [['throw 2'], 0.8, 0.25, 'aboard', false]);
  assert.deepEqual(kept.seats, { aboard: camera, outside: 'd' });
});

test('a file holds a scene once where it stays the same', () => {
  const other = { ...SCENE, title: 'Other' };
  const { talk } = made('a', 'b');
  talk.set({ title: 'Lobs', about: '', steps: [...talk.steps, step('c', { scene: other }), step('d', { scene: SCENE })] });
  const document = talkDocument(talk);
  assert.deepEqual([document.rimfall_talk, document.title], [1, 'Lobs']);
  assert.deepEqual(
    document.steps.map(({ scene }) => scene?.title),
    ['Two throws', undefined, 'Other', 'Two throws'],
  );
});

test('a step in words', () => {
  assert.deepEqual(stepFacts(step('a', { pace: 0.25, show: 'aboard', from_s: 0.5, until_s: 1.2, ask: { motion: 'Lob', until_s: 1 } })), [
    'Aboard alone',
    '¼ speed',
    'from 0.50\u00a0s',
    'pauses at 1.20\u00a0s',
    'asks where Lob comes down',
  ]);
});

test('a step says which dial has turned since the one before', () => {
  const at = (radius_m, spin_rpm) => ({ ...step('a'), scene: { habitat: { radius_m, spin_rpm } } });
  const words = (before, units) => stepFacts(at(10, 7.1), before, units).slice(0, 2);
  assert.deepEqual(words(at(56, 3)), ['radius 10.0\u00a0m', 'spin 7.10\u00a0rpm']);
  assert.deepEqual(words(at(56, 7.1), 'us')[0], 'radius 32.8\u00a0ft');
  assert.equal(words(at(10, 3))[0], 'spin 7.10\u00a0rpm');
  for (const before of [at(10, 7.1), null]) assert.ok(!words(before).some(word => /radius|spin/.test(word)));
});
