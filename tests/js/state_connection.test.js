// The server gone, back, and busy: asked again by itself, told apart from what it refuses.

import assert from 'node:assert/strict';
import test from 'node:test';
import { Unanswered, ValidationError } from '../../static/api/errors.js';
import { createConnection } from '../../static/state/connection.js';

const settle = () => new Promise(resolve => setTimeout(resolve));
const GONE = () => new Unanswered('The server cannot be reached.');
const REFUSED = () => new ValidationError([{ field: 'habitat.radius_m', say: 'no' }]);

// a server that is there or not, and a clock that the test moves
function bench() {
  const server = { there: true, probes: 0 };
  const states = [],
    timers = new Map();
  let timer = 0;
  const connection = createConnection({
    probe: async () => {
      server.probes += 1;
      if (!server.there) throw GONE();
      return true;
    },
    changed: state => states.push(state),
    later: (fn, ms) => (timers.set((timer += 1), { fn, ms }), timer),
    forget: id => timers.delete(id),
    random: () => 0,
  });
  const due = () => [...timers.values()].map(({ ms }) => ms);
  async function pass() {
    for (const [id, { fn }] of [...timers]) {
      timers.delete(id);
      fn();
    }
    await settle();
  }
  const ask = async () => {
    if (!server.there) throw GONE();
    return 'answer';
  };
  return { server, states, connection, due, pass, ask };
}

test('what was asked while the server was away is answered once it is back, wherever it was asked from', async () => {
  const { server, states, connection, pass, ask } = bench();
  server.there = false;
  const answers = Promise.all(['mesh', 'map', 'plot', 'fields'].map(() => connection.run(ask)));
  await settle();
  assert.deepEqual([connection.state, states], ['away', ['away']]);
  await pass();
  assert.equal(server.probes, 1, 'one looks for all of them');
  server.there = true;
  await pass();
  assert.deepEqual(await answers, ['answer', 'answer', 'answer', 'answer']);
  assert.deepEqual([connection.state, states], ['up', ['away', 'up']]);
});

test('it is looked for less and less often, at once on Retry, and often again after it was there', async () => {
  const { server, connection, due, pass, ask } = bench();
  server.there = false;
  const answer = connection.run(ask);
  await settle();
  const waits = [];
  for (let i = 0; i < 7; i += 1) {
    waits.push(...due());
    await pass();
  }
  assert.deepEqual(waits, [1000, 2000, 4000, 8000, 15000, 15000, 15000]);
  server.there = true;
  connection.retry();
  assert.equal(await answer, 'answer');
  assert.deepEqual(due(), []);
  server.there = false;
  connection.run(ask);
  await settle();
  assert.deepEqual(due(), [1000]);
});

test('a busy server is asked again after the time it names, and is not called away', async () => {
  const { states, connection, due, pass } = bench();
  const answers = [new Unanswered('busy', { reason: 'busy', wait_ms: 3000 }), 'answer'];
  const answer = connection.run(async () => {
    const next = answers.shift();
    if (next instanceof Error) throw next;
    return next;
  });
  await settle();
  assert.deepEqual([connection.state, due()], ['busy', [3000]]);
  await pass();
  assert.equal(await answer, 'answer');
  assert.deepEqual(states, ['busy', 'up']);
});

test('refusals, faults and answers that never come go through, and are not asked again', async () => {
  const { states, connection } = bench();
  for (const problem of [REFUSED(), new Unanswered('', { reason: 'fault' }), new Unanswered('', { reason: 'late' })]) {
    let asked = 0;
    const ask = async () => {
      asked += 1;
      throw problem;
    };
    await assert.rejects(connection.run(ask), problem);
    assert.equal(asked, 1);
  }
  assert.deepEqual(states, []);
});

test('a request that never gets through to a server that is there is given up after a few tries', async () => {
  const { connection, pass } = bench();
  let asked = 0;
  const problem = GONE();
  const answer = connection.run(async () => {
    asked += 1;
    throw problem;
  });
  answer.catch(() => {});
  for (let i = 0; i < 8; i += 1) await pass();
  await assert.rejects(answer, problem);
  assert.equal(asked, 5);
});

test('what ends whatever works on it is given up after a few tries', async () => {
  const { connection, pass } = bench();
  let asked = 0;
  const problem = new Unanswered('The process has ended.', { reason: 'lost', wait_ms: 1000 });
  const answer = connection.run(async () => {
    asked += 1;
    throw problem;
  });
  answer.catch(() => {});
  await settle();
  assert.equal(connection.state, 'busy');
  for (let i = 0; i < 8; i += 1) await pass();
  await assert.rejects(answer, problem);
  assert.deepEqual([asked, connection.state], [5, 'up']);
});

test('who no longer waits is let go, and the server is still looked for', async () => {
  const { server, connection, pass, ask } = bench();
  server.there = false;
  const stop = new AbortController();
  const answer = connection.run(ask, stop.signal);
  await settle();
  stop.abort(new Error('cancelled'));
  await assert.rejects(answer, /cancelled/);
  assert.equal(connection.state, 'away');
  server.there = true;
  await pass();
  assert.equal(connection.state, 'up');
});
