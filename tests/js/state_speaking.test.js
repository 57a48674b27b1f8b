// The presented page and the speaker's window over one channel.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createPresenting } from '../../static/state/presenting.js';
import { CHANNEL, createSpeaking, goneWords } from '../../static/state/speaking.js';
import { createClock } from '../../static/time/clock.js';

function given() {
  const sent = [],
    pressed = [];
  let now_ms = 5000,
    due = null,
    hear = null;
  class Channel {
    constructor(name) {
      assert.equal(name, CHANNEL);
      this.open = true;
    }
    set onmessage(fn) {
      hear = data => fn({ data });
    }
    postMessage(message) {
      sent.push(structuredClone(message)); // as the browser does
    }
    close() {
      this.open = false;
    }
  }
  const store = { document: { title: 'Lobs' }, view: { swapped: true }, look: () => {}, on: () => () => {} };
  const clock = createClock();
  const talk = { title: 'Balls', steps: [{ line: 'One', notes: 'Breathe.' }, { line: 'Two' }], at: 0, phase: 'held', next: () => {}, on: () => () => {} };
  Object.defineProperty(talk, 'step', { get: () => talk.steps[talk.at] });
  const presenting = createPresenting({ store, clock, talk });
  const timers = { later: fn => (due = fn), forget: () => (due = null), now: () => now_ms };
  const speaking = createSpeaking({ presenting, store, clock, press: what => pressed.push(what), Channel, timers });
  return { speaking, sent, pressed, talk, tell: data => hear(data), at: ms => (now_ms = ms), rest: () => due?.() };
}

test('it is told what stands there, its notes and what comes next; in the end that nothing is presented', () => {
  const { speaking, sent, talk, rest } = given();
  speaking.begin();
  const { line, notes, next, step, of, held, swapped, began_ms } = sent[0];
  assert.deepEqual({ line, notes, next, step, of, held, swapped, began_ms }, { line: 'One', notes: 'Breathe.', next: 'Two', step: 1, of: 2, held: true, swapped: true, began_ms: 5000 }); // biome-ignore format: one row
  Object.assign(talk, { at: 1, phase: 'plain' });
  for (let k = 0; k < 10; k += 1) speaking.changed(); // once for all of a moment
  rest();
  assert.equal(sent.length, 2);
  assert.deepEqual([sent[1].line, sent[1].notes, sent[1].next], ['Two', '', null]);
  speaking.end();
  assert.deepEqual(sent[2], { kind: 'now', off: true });
});

test('it may press what changes nothing of the page, and set the time back', () => {
  const { speaking, sent, pressed, tell, at, rest } = given();
  speaking.begin();
  for (const what of ['next', 'dark', 'leave', 'help', 'constructor', 'back']) tell({ kind: 'press', what });
  assert.deepEqual(pressed, ['next', 'dark', 'back']);
  at(65_000);
  tell({ kind: 'press', what: 'again' });
  rest();
  assert.equal(sent.at(-1).began_ms, 65_000);
  tell('nonsense');
});

test('a window that is loaded anew is answered, and one that was there before the page knows since when', () => {
  const { speaking, sent, tell } = given();
  speaking.begin();
  tell({ kind: 'hello', began_ms: null });
  assert.deepEqual([sent.length, sent[1].began_ms], [2, 5000]);
  tell({ kind: 'hello', began_ms: 1000 });
  assert.equal(sent[2].began_ms, 1000);
});

test('time gone is written as on a clock', () => {
  assert.deepEqual([-5, 7400, 725_000, 3_725_000].map(goneWords), ['0:00', '0:07', '12:05', '1:02:05']);
});
