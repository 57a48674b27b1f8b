// Those who follow are told what has changed, once, and where the clock is when it is not where it would be by itself.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createDigests } from '../../static/state/digests.js';
import { createTeller } from '../../static/state/teller.js';

function hall() {
  const now = { line: 'a', clock: { time_s: 0, pace: 0.5, playing: true } };
  const sent = [],
    waiting = [];
  let time_ms = 0,
    due = [];
  const timers = {
    now: () => time_ms,
    later(fn, ms) {
      const timer = { fn, at_ms: time_ms + ms };
      due.push(timer);
      return timer;
    },
    forget: timer => {
      due = due.filter(one => one !== timer);
    },
  };
  const send = told => {
    sent.push(structuredClone(told));
    return new Promise((done, failed) => waiting.push({ done, failed }));
  };
  const problems = [];
  const teller = createTeller({ read: () => now, send, changed: problem => problems.push(problem), timers });
  return {
    now,
    sent,
    problems,
    teller,
    async answered(problem = null) {
      const { done, failed } = waiting.shift();
      if (problem) failed(problem);
      else done();
      await new Promise(setImmediate);
    },
    pass(ms) {
      time_ms += ms;
      const now_due = due.filter(({ at_ms }) => at_ms <= time_ms);
      due = due.filter(timer => !now_due.includes(timer));
      for (const { fn } of now_due) fn();
    },
  };
}

test('a clock that goes by itself is told once; a seek, another pace or a change of what is seen again', async () => {
  const { now, sent, teller, answered, pass } = hall();
  teller.look();
  await answered();
  for (let k = 0; k < 20; k += 1) {
    pass(100);
    now.clock = { ...now.clock, time_s: now.clock.time_s + 0.05 };
    teller.look();
  }
  assert.equal(sent.length, 1);
  for (const change of [{ time_s: 9 }, { pace: 1 }, { playing: false }]) {
    now.clock = { ...now.clock, ...change };
    teller.look();
    await answered();
    pass(100);
  }
  now.line = 'b';
  teller.look();
  assert.deepEqual([sent.length, sent.at(-1).line], [5, 'b']);
});

test('one is on its way at a time, and what came meanwhile goes as the newest, not too soon', async () => {
  const { now, sent, teller, answered, pass } = hall();
  teller.look();
  for (const line of ['b', 'c', 'd']) {
    now.line = line;
    teller.look();
  }
  assert.equal(sent.length, 1);
  await answered();
  pass(10);
  assert.equal(sent.length, 1);
  pass(80);
  assert.deepEqual(
    sent.map(({ line }) => line),
    ['a', 'd'],
  );
});

test('what did not come through is sent again, and told', async () => {
  const { sent, problems, teller, answered, pass } = hall();
  teller.look();
  await answered(new Error('away'));
  pass(1000);
  assert.equal(sent.length, 2);
  await answered();
  assert.deepEqual(
    problems.map(problem => problem?.message ?? null),
    ['away', null],
  );
  teller.end();
  teller.look();
  pass(9000);
  assert.equal(sent.length, 2);
});

test('a scene is handed over once, and the one before is shown until it is known', async () => {
  const posts = [];
  let changed = 0;
  const digests = createDigests({
    post: document => new Promise((done, failed) => posts.push({ document, done, failed })),
    changed: () => {
      changed += 1;
    },
  });
  assert.equal(digests.shown({ a: 1 }, 'si'), null);
  assert.equal(digests.shown({ a: 1 }, 'si'), null);
  posts[0].done('one');
  await new Promise(setImmediate);
  assert.deepEqual([digests.shown({ a: 1 }, 'si'), digests.shown({ a: 2 }, 'si'), digests.last, changed], ['one', 'one', 'one', 1]);
  posts[1].failed(new Error());
  await new Promise(setImmediate);
  digests.of({ a: 2 }, 'si');
  assert.equal(posts.length, 3);
});

test('a bright dot that moves is told five times a second at most, where it stands last, and holds nothing else up', async () => {
  const { now, sent, teller, answered, pass } = hall();
  now.clock.playing = false;
  teller.look();
  await answered();
  for (let k = 1; k <= 10; k += 1) {
    now.dot = { stage: 'aboard', x: k / 10, y: 0 };
    teller.look();
    pass(100);
    if (sent.length > 1 + Math.floor((k - 1) / 2)) await answered();
  }
  assert.deepEqual([sent.length, sent.at(-1).dot.x], [6, 1]);
  now.dot = null;
  now.line = 'b';
  pass(80);
  teller.look();
  assert.deepEqual([sent.length, sent.at(-1).line, sent.at(-1).dot], [7, 'b', null]);
});

test('the end goes as the last, after what is on its way', async () => {
  const { now, sent, teller, answered, pass } = hall();
  teller.look();
  teller.end({ over: true });
  now.line = 'b';
  teller.look();
  assert.equal(sent.length, 1);
  await answered();
  pass(1000);
  assert.deepEqual(
    sent.map(({ line, over = false }) => [line, over]),
    [
      ['a', false],
      ['a', true],
    ],
  );
});
