// A talk: forward and back through its steps, what they hold, and where they pause.

import assert from 'node:assert/strict';
import test from 'node:test';

import { createTalk } from '../../static/state/talk.js';

const STEPS = [{ line: 'one' }, { line: 'two', ask: { motion: 'Lob', until_s: 0.5 } }, { line: 'three' }];
const talkOf = (steps = STEPS) => createTalk({ title: 'Lobs', steps: structuredClone(steps) });
const where = ({ at, phase }) => `${at} ${phase}`;

test('forward: a step that asks is held before it is shown; backward the same way round', () => {
  const talk = talkOf(),
    seen = [where(talk)];
  while (talk.next()) seen.push(where(talk));
  assert.deepEqual(seen, ['0 plain', '1 held', '1 revealed', '2 plain']);
  const back = [where(talk)];
  while (talk.back()) back.push(where(talk));
  assert.deepEqual(back, [...seen].reverse());
});

test('each move is told once, under what it was', () => {
  const talk = talkOf(),
    told = [];
  for (const topic of ['step', 'phase', 'pause', 'resume', 'steps']) talk.on(topic, () => told.push(topic));
  talk.next();
  talk.next();
  talk.pause();
  talk.pause();
  talk.next();
  talk.next();
  talk.set({ title: 'Two lobs' });
  assert.deepEqual(told, ['step', 'phase', 'pause', 'resume', 'step', 'steps']);
  assert.equal(talk.title, 'Two lobs');
});

test('at a pause point the next press goes on from there, the one after to the next step', () => {
  const talk = talkOf();
  talk.pause();
  assert.equal(talk.next(), true);
  assert.equal(where(talk), '0 plain');
  talk.next();
  assert.equal(where(talk), '1 held');
});

test('a step is gone to from its start, and to none beyond the first and the last', () => {
  const talk = talkOf();
  talk.go(9);
  assert.equal(talk.step.line, 'three');
  assert.equal(talk.next(), false);
  talk.go(-3);
  assert.equal(talk.back(), false);
  talk.go(1);
  assert.equal(talk.reveal(), true);
  assert.equal(talk.reveal(), false);
  talk.go(1);
  assert.equal(talk.phase, 'held');
});

test('changed, it stays at its step wherever that went; where it is gone, at what stands in its place', () => {
  const talk = talkOf();
  talk.go(2);
  const [one, two, three] = talk.steps;
  talk.set({ steps: [three, one, two] });
  assert.equal(talk.step, three);
  talk.set({ steps: [one, two] });
  assert.equal(where(talk), '0 plain');
  talk.set({ steps: [one, two], at: 1 });
  assert.equal(where(talk), '1 held');
  talk.set({ steps: [] });
  assert.equal(talk.step, null);
  assert.equal(where(talk), '0 plain');
  assert.equal(talk.next(), false);
  assert.equal(talk.go(0), false);
});

test('it begins empty', () => {
  const talk = createTalk();
  assert.deepEqual([talk.title, talk.steps, talk.step], ['', [], null]);
});
