// One line for all that the page is busy with or waits for.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createStatus } from '../../static/state/status.js';

function bench() {
  const timers = new Map();
  let timer = 0;
  const clock = { ms: 0 };
  const status = createStatus({ later: (fn, ms) => (timers.set((timer += 1), { fn, ms }), timer), forget: id => timers.delete(id), now: () => clock.ms });
  const pass = ms => [...timers].filter(([, one]) => one.ms <= ms).forEach(([id, { fn }]) => (timers.delete(id), fn()));
  return { status, pass, timers, clock };
}
const says = ({ line }) => line && [line.kind, line.say, line.share];

test('work is said after a second, at once where a scene opens, and its end wipes it', () => {
  const { status, pass, timers } = bench();
  const job = status.begin({ say: 'Working' });
  pass(300);
  assert.equal(status.line, null);
  pass(1000);
  assert.deepEqual(says(status), ['work', 'Working…', null]);
  job.progress(1, 4);
  assert.deepEqual(says(status), ['work', 'Working…', 0.25]);
  job.end();
  assert.deepEqual([status.line, timers.size], [null, 0]);
  status.begin({ say: 'Opening the scene', atOnce: true });
  assert.deepEqual(says(status), ['work', 'Opening the scene…', null]);
});

test('work of which nobody knows how far it is says from 3 s on how long it has been', () => {
  const { status, pass, clock } = bench();
  status.begin({ say: 'Working' });
  pass(1000);
  clock.ms = 2900;
  assert.equal(status.line.for_s, null);
  clock.ms = 12_300;
  assert.equal(status.line.for_s, 12);
});

test('a server away or busy comes before work, with Retry and the work’s Cancel', () => {
  const { status, pass } = bench();
  const run = [];
  status.begin({ say: 'Working', cancel: () => run.push('cancel'), aside: () => 'What you see is for 56 m.' });
  pass(1000);
  status.setServer('away', () => run.push('retry'));
  assert.deepEqual(says(status), ['away', 'The server does not answer. Rimfall keeps trying. What you see is for 56 m.', null]);
  status.line.buttons.forEach(button => button.run());
  assert.deepEqual(run, ['retry', 'cancel']);
  status.setServer('busy', () => {});
  assert.deepEqual([status.line.kind, status.line.buttons.map(({ say }) => say)], ['busy', ['Cancel']]);
  status.setServer('up', () => {});
  assert.equal(status.line.kind, 'work');
});

test('the drawing is told when nothing else is, and again when that is over', () => {
  const { status } = bench();
  status.setDrawing({ say: 'No 3D.' });
  assert.deepEqual(says(status), ['drawing', 'No 3D.', null]);
  const job = status.begin({ say: 'Opening', atOnce: true });
  assert.equal(status.line.kind, 'work');
  job.end();
  assert.equal(status.line.kind, 'drawing');
  status.setDrawing(null);
  assert.equal(status.line, null);
});
