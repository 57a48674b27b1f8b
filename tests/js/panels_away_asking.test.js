// Files asked for while boxes are ticked quickly: each once for a choice, anew after another choice or a failure.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAsking } from '../../static/panels/away/asking.js';

const CSV = { format: 'csv' },
  GLB = { format: 'glb' };
const flush = () => new Promise(resolve => setImmediate(resolve));

/** An asking whose server answers when told to; `ticks()` lets the wait after a choice pass. */
function bench(t) {
  t.mock.timers.enable({ apis: ['setTimeout'] });
  const asked = [],
    waiting = [],
    failed = [],
    chosen = { fps: 24 };
  const exported = format => new Promise((give, refuse) => (asked.push(format), waiting.push({ format, give, refuse })));
  const asking = createAsking({ exported, request: () => ({ ...chosen }), changed() {}, failed: problem => failed.push(problem.message) });
  async function ticks() {
    t.mock.timers.tick(1000);
    await flush();
  }
  async function answer(problem = null) {
    const { format, give, refuse } = waiting.shift();
    if (problem) refuse(problem);
    else give(new Blob([format === 'notes' ? JSON.stringify({ counts: { csv_rows: 10 } }) : 'made']));
    await flush();
  }
  return { asking, asked, failed, chosen, ticks, answer };
}

test('what is under way is not asked for again when another box is ticked', async t => {
  const { asking, asked, ticks, answer } = bench(t);
  asking.want([CSV]);
  await ticks();
  asking.want([CSV, GLB]);
  await ticks();
  assert.deepEqual(asked, ['notes']);
  await answer();
  asking.want([CSV, GLB]);
  await ticks();
  assert.deepEqual(asked, ['notes', 'csv']);
  await answer();
  await answer();
  assert.deepEqual(asked, ['notes', 'csv', 'glb']);
  assert.deepEqual([asking.size('csv'), asking.size('glb')], [4, 4]);
});

test('another choice forgets the notes at once and asks anew', async t => {
  const { asking, asked, chosen, ticks, answer } = bench(t);
  asking.want([]);
  await ticks();
  await answer();
  assert.ok(asking.notes());
  chosen.fps = 25;
  asking.want([]);
  assert.equal(asking.notes(), null);
  await ticks();
  assert.deepEqual(asked, ['notes', 'notes']);
});

test('what failed is asked for again', async t => {
  const { asking, asked, failed, ticks, answer } = bench(t);
  asking.want([CSV]);
  await ticks();
  await answer(new Error('The server is gone.'));
  assert.deepEqual(failed, ['The server is gone.']);
  asking.want([CSV]);
  await ticks();
  assert.deepEqual(asked, ['notes', 'notes']);
});

test('a Save that is called off does not wait for what was under way before it', async t => {
  const { asking, asked, ticks } = bench(t);
  asking.want([CSV]);
  await ticks();
  const job = new AbortController();
  const save = asking.settled(job.signal);
  job.abort();
  await assert.rejects(save, { name: 'AbortError' });
  assert.deepEqual(asked, ['notes']);
});
