// One request: answers, refusals, a busy server, silence and a broken network, told apart.

import assert from 'node:assert/strict';
import test from 'node:test';
import { ValidationError } from '../../static/api/errors.js';
import { asJson, asLines, request } from '../../static/api/request.js';

const REFUSAL = field => ({ refused: [{ field, was: '1', may_be: '2', say: 'No.' }] });

async function over(answer, options, run) {
  const before = globalThis.fetch;
  globalThis.fetch = answer;
  try {
    return await run(() => request('api/trace', { wait_ms: 1000, read: asJson, ...options }));
  } finally {
    globalThis.fetch = before;
  }
}
const json =
  (body, status = 200, headers = {}) =>
  async () =>
    new Response(JSON.stringify(body), { status, headers });
const problem = (answer, options = {}) =>
  over(answer, options, ask =>
    ask().then(
      () => null,
      error => error,
    ),
  );
const lines =
  (...parts) =>
  async () =>
    new Response(new Blob(parts).stream());

test('a refusal is one, and too much work is known by its field', async () => {
  const refused = await problem(json(REFUSAL('habitat.radius_m'), 422));
  assert.ok(refused instanceof ValidationError);
  assert.deepEqual([refused.message, refused.tooHeavy], ['No.', false]);
  for (const field of ['work', 'motions.3']) assert.equal((await problem(json(REFUSAL(field), 422))).tooHeavy, true);
  assert.equal((await problem(json(REFUSAL('motions.3.kind'), 422))).tooHeavy, false);
});

test('what else stands in the way is told by its reason', async () => {
  const server = was => ({ refused: [{ field: 'server', was, may_be: 'later', say: 'Sorry.' }] });
  const cases = [
    [json(server('busy'), 503, { 'retry-after': '3' }), 'busy', 3000],
    [json(server('ended'), 503, { 'retry-after': '1' }), 'lost', 1000],
    [json(server('a fault'), 500), 'fault', 0],
    [json({}, 503), 'busy', 2000],
    [json(REFUSAL('server'), 503, { 'retry-after': 'Fri, 31 Dec 1999 23:59:59 GMT' }), 'busy', 2000],
    [async () => new Response('<html>', { status: 502 }), 'unreachable', 0],
    [async () => new Response('oh', { status: 500 }), 'fault', 0],
    [async () => Promise.reject(new TypeError('Failed to fetch')), 'unreachable', 0],
    [async () => new Response('{"motions": ['), 'unreachable', 0],
  ];
  for (const [answer, reason, wait_ms] of cases) {
    const error = await problem(answer);
    assert.deepEqual([error.reason, error.wait_ms], [reason, wait_ms]);
  }
});

test('silence is given up after its time, and is not a broken network', async () => {
  const never = (_, { signal }) => new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason)));
  const error = await problem(never, { wait_ms: 1 });
  assert.deepEqual([error.reason, error.message], ['late', 'The server has not answered for 0\u00a0s.']);
});

test('a request taken back throws what it was taken back with', async () => {
  const stop = new AbortController();
  stop.abort(new Error('cancelled'));
  assert.equal((await problem(async () => Promise.reject(new TypeError('x')), { signal: stop.signal })).message, 'cancelled');
});

test('long work tells how far it is, however its lines are cut, and ends with the answer', async () => {
  const told = [];
  const read = asLines((done, of) => told.push([done, of]));
  const answer = await over(lines('{"done": 1, "of"', ': 4}\n{"done": 3, "of": 4}\n{"scene": "é', 'ü"}\n'), { read }, ask => ask());
  assert.deepEqual(
    [told, answer],
    [
      [
        [1, 4],
        [3, 4],
      ],
      { scene: 'éü' },
    ],
  );
});

test('long work that is refused, has no room or breaks off is told as that', async () => {
  const read = asLines(() => {});
  assert.equal((await problem(lines(`{"done": 1, "of": 4}\n${JSON.stringify(REFUSAL('work'))}\n`), { read })).tooHeavy, true);
  for (const [was, reason] of Object.entries({ busy: 'busy', stopping: 'busy', ended: 'lost', 'a fault': 'fault' })) {
    const line = JSON.stringify({ refused: [{ field: 'server', was, say: 'Sorry.' }] });
    assert.equal((await problem(lines(`${line}\n`), { read })).reason, reason);
  }
  assert.equal((await problem(lines('{"done": 1, "of": 4}\n'), { read })).reason, 'unreachable');
});

test('a file goes as it is, a document as JSON', async () => {
  const seen = [];
  const answer = async (_, options) => (seen.push(options), new Response('{}'));
  await over(answer, { body: new Blob(['abc']) }, ask => ask());
  await over(answer, { body: { a: 1 } }, ask => ask());
  assert.deepEqual(
    seen.map(({ headers }) => headers['content-type']),
    ['application/octet-stream', 'application/json'],
  );
});
