// The newest question wins: one under way, the last one waits, and what was dropped is aborted and told to nobody.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createNewest } from '../../static/state/newest.js';

const flush = () => new Promise(resolve => setImmediate(resolve));

// a server that answers when the test says so; it pays no heed to an abort, as one does whose answer is already on its way
function bench() {
  const asked = [],
    answers = [],
    failed = [];
  let wish = null;
  const newest = createNewest({
    request: () => wish,
    ask: (request, signal) => new Promise((give, refuse) => asked.push({ request, signal, give, refuse })),
    answered: (answer, request) => answers.push([answer, request]),
    failed: (problem, request) => failed.push([problem.message, request]),
  });
  const want = next => {
    wish = next;
    return newest.want();
  };
  return { asked, answers, failed, want, drop: newest.drop, requests: () => asked.map(({ request }) => request) };
}

test('while one is under way only the last of the others waits, and is asked as it stands then', async () => {
  const { asked, answers, want, requests } = bench();
  for (const wish of ['one', 'two', 'three']) want(wish);
  assert.deepEqual(requests(), ['one']);
  asked[0].give('first answer');
  await flush();
  assert.deepEqual(requests(), ['one', 'three']);
  assert.equal(asked[0].signal.aborted, false);
  asked[1].give('second answer');
  await flush();
  assert.deepEqual(answers, [
    ['first answer', 'one'],
    ['second answer', 'three'],
  ]);
  assert.equal(asked.length, 2);
});

test('one that was dropped is aborted, and its answer comes too late', async () => {
  const { asked, answers, failed, want, drop, requests } = bench();
  want('one');
  want('two');
  drop();
  assert.equal(asked[0].signal.aborted, true);
  want('three');
  assert.deepEqual(requests(), ['one', 'three']);
  asked[1].give('newest');
  await flush();
  asked[0].give('late');
  await flush();
  assert.deepEqual([answers, failed, asked.length], [[['newest', 'three']], [], 2]);
});

test('a late answer leaves what is under way by then alone', async () => {
  const { asked, answers, want, drop, requests } = bench();
  want('one');
  drop();
  want('two');
  want('three');
  asked[0].give('late');
  await flush();
  assert.deepEqual(requests(), ['one', 'two']);
  asked[1].give('two');
  await flush();
  assert.deepEqual([answers, requests()], [[['two', 'two']], ['one', 'two', 'three']]);
});

test('a failure is told, and the next question is asked all the same', async () => {
  const { asked, failed, want } = bench();
  want('one');
  asked[0].refuse(new Error('gone'));
  await flush();
  assert.deepEqual(failed, [['gone', 'one']]);
  want('two');
  assert.equal(asked.length, 2);
});

test('a failure of one that was dropped, or that something newer waits behind, is silent', async () => {
  const { asked, answers, failed, want, drop } = bench();
  want('one');
  drop();
  asked[0].refuse(new DOMException('aborted', 'AbortError'));
  await flush();
  want('two');
  want('three');
  asked[1].refuse(new Error('gone'));
  await flush();
  assert.equal(asked.length, 3);
  asked[2].give('answer');
  await flush();
  assert.deepEqual([answers, failed], [[['answer', 'three']], []]);
});
