import assert from 'node:assert/strict';
import test from 'node:test';

import { createClock } from '../../static/time/clock.js';

function playing({ end_s = 3, pace = 1 } = {}) {
  const clock = createClock({ now: () => 0 });
  clock.setSpan(end_s, 1 / 24);
  clock.setPace(pace);
  clock.play();
  return clock;
}

test('playing moves with the time that passed, at the pace', () => {
  const clock = playing({ pace: 0.25 });
  assert.equal(clock.tick(400), true);
  assert.ok(Math.abs(clock.time_s - 0.1) < 1e-12);
});

test('it plays once and rests at the end', () => {
  const clock = playing({ end_s: 1 });
  clock.tick(5000);
  assert.equal(clock.time_s, 1);
  assert.equal(clock.playing, false);
  assert.equal(clock.tick(6000), false);
});

test('played again from the end, it starts at the beginning', () => {
  const clock = playing({ end_s: 1 });
  clock.tick(5000);
  clock.play();
  assert.equal(clock.time_s, 0);
  assert.equal(clock.playing, true);
});

test('a loop comes round and keeps what ran over', () => {
  const clock = playing();
  clock.setLoop({ from_s: 1, to_s: 2 });
  clock.seek(1.9);
  clock.tick(300);
  assert.ok(Math.abs(clock.time_s - 1.2) < 1e-9);
  assert.equal(clock.playing, true);
});

test('a loop comes round at its own beginning, also where that is no whole number of its lengths', () => {
  const clock = playing();
  clock.setLoop({ from_s: 0.5, to_s: 1.25 });
  clock.seek(1.2);
  clock.tick(300); // 0.05 s to the end, 0.25 s from the beginning
  assert.ok(Math.abs(clock.time_s - 0.75) < 1e-9, `${clock.time_s}`);
});

test('a loop of no length stands still and does not hang', () => {
  const clock = playing();
  clock.setLoop({ from_s: 1, to_s: 1 });
  clock.tick(1500);
  assert.equal(clock.time_s, 1);
});

test('frame steps land on frames, from wherever the clock stood, and pause it', () => {
  const clock = playing();
  clock.seek(0.51);
  clock.stepFrame(1);
  assert.ok(Math.abs(clock.time_s - 13 / 24) < 1e-12);
  assert.equal(clock.playing, false);
  clock.stepFrame(-20);
  assert.equal(clock.time_s, 0);
});

test('seeking stays inside the span, and a shorter span pulls the clock back', () => {
  const clock = playing();
  clock.seek(99);
  assert.equal(clock.time_s, 3);
  clock.setSpan(1.5, 1 / 24);
  assert.equal(clock.time_s, 1.5);
});

test('with a stride it moves in whole strides and owes the rest', () => {
  const clock = playing();
  clock.stride_s = 0.25;
  assert.equal(clock.tick(200), false);
  assert.equal(clock.tick(300), true);
  assert.equal(clock.time_s, 0.25);
  clock.tick(550);
  assert.equal(clock.time_s, 0.5);
});

test('nothing plays before there is a span', () => {
  const clock = createClock({ now: () => 0 });
  clock.play();
  assert.equal(clock.playing, false);
});

test('listeners hear each change until they leave', () => {
  const clock = createClock({ now: () => 0 });
  let heard = 0;
  const leave = clock.on(() => {
    heard += 1;
  });
  clock.setSpan(2, 0.1);
  clock.seek(1);
  leave();
  clock.seek(0.5);
  assert.equal(heard, 2);
});

test('what is short plays slowly and what is long does not crawl, until somebody chooses', () => {
  const clock = createClock();
  for (const [end_s, pace] of [
    [3, 0.25],
    [7, 0.5],
    [50, 1],
    [0.5, 0.25],
  ]) {
    // biome-ignore format: rows
    clock.setSpan(end_s, 1 / 24);
    clock.suitPace();
    assert.equal(clock.pace, pace);
    assert.ok(end_s / clock.pace <= 60); // seconds that somebody waits
  }
  clock.setPace(0.1);
  clock.setSpan(50, 1 / 24);
  clock.suitPace();
  assert.equal(clock.pace, 0.1);
});

test('a lent pace is nobody’s choice and leaves what was chosen, or what suits, behind it', () => {
  const clock = createClock({ now: () => 0 });
  clock.setSpan(3, 1 / 24);
  clock.lendPace(0.1);
  clock.suitPace();
  assert.deepEqual([clock.pace, clock.chosenPace], [0.1, null]);
  clock.lendPace(1);
  clock.lendPace(null);
  assert.equal(clock.pace, 0.25); // 3 s at a quarter are watched in 12
  clock.setPace(0.5);
  clock.lendPace(0.1);
  assert.equal(clock.chosenPace, 0.5);
  clock.setPace(1);
  clock.lendPace(null);
  assert.deepEqual([clock.pace, clock.chosenPace], [1, 1]);
});
