// Events as they come, in whatever pieces; coming back by itself, from where it was; and a refusal that is final.

import assert from 'node:assert/strict';
import test from 'node:test';
import { listen } from '../../static/api/events.js';
import { createFollowClient } from '../../static/api/follow.js';

// A server that answers with each of `answers` in turn; the last one stays open.
function served(answers) {
  const asked = [],
    heard = [],
    states = [],
    waits = [];
  let told = () => {};
  const next = what =>
    new Promise(done => {
      told = () => what() && done();
      told();
    });
  globalThis.fetch = async (path, { headers, signal }) => {
    asked.push({ path, ...headers });
    const answer = answers[Math.min(asked.length, answers.length) - 1];
    if (answer instanceof Error) throw answer;
    const { status = 200, parts = [], stays = false, body = null, after = null } = answer;
    const stream = new ReadableStream({
      start(out) {
        for (const part of parts) out.enqueue(new TextEncoder().encode(part));
        if (!stays) out.close();
        signal.addEventListener('abort', () => stays && out.error(new Error('stopped')));
      },
    });
    return new Response(body ? JSON.stringify(body) : stream, { status, headers: after ? { 'retry-after': after } : {} });
  };
  const timers = {
    later(fn, ms) {
      const timer = { fn, ms };
      if (ms < 30_000) {
        waits.push(ms);
        queueMicrotask(() => timer.off || fn());
      }
      return timer;
    },
    forget: timer => timer && (timer.off = true),
  };
  const hears = {
    heard: (name, data) => (heard.push([name, data]), told()),
    changed: state => (states.push(state), told()),
    timers,
  };
  return { asked, heard, states, waits, hears, next };
}

const EVENTS = ['event: now\nid: a-1\nda', 'ta: {"step":1}\n', '\nevent: room\ndata: {"count":2}\n\n: still here\n\n'];

test('events come whole, and again from where they were seen last', async () => {
  const server = served([{ parts: EVENTS }, new TypeError('no network'), { status: 503, after: '2' }, { parts: ['retry: 1000\n\n'], stays: true }]);
  const stream = listen('api/follow/now', { headers: { authorization: 'Bearer k' }, ...server.hears });
  await server.next(() => server.states.filter(state => state === 'on').length === 2);
  stream.stop();
  assert.deepEqual(server.heard, [
    ['now', { step: 1 }],
    ['room', { count: 2 }],
  ]);
  assert.deepEqual(server.states.slice(0, 5), ['on', 'lost', 'lost', 'lost', 'on']);
  assert.deepEqual(server.asked[0], { path: 'api/follow/now', authorization: 'Bearer k' });
  for (const one of server.asked.slice(1)) assert.equal(one['last-event-id'], 'a-1');
  const [first, second, third] = server.waits;
  assert.ok(first <= 750 && second <= 1500 && third >= 2000);
});

test('a key that is refused is told, and not tried again', async () => {
  const server = served([{ status: 403, body: { refused: [{ say: 'Another key.' }] } }]);
  createFollowClient({ key: 'k' }).listen(server.hears);
  await server.next(() => server.states.length);
  assert.deepEqual(server.states, [{ refused: 'Another key.' }]);
  assert.deepEqual([server.asked.length, server.waits.length], [1, 0]);
  assert.equal(server.asked[0].authorization, 'Bearer k');
});
