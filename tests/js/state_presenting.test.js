// Presenting: keys, sizes, swipes, and what the presenter has turned on.

import assert from 'node:assert/strict';
import test from 'node:test';
import { PRESSES, createPresenting, labelPx, presentingType, pressOf, swipeOf } from '../../static/state/presenting.js';
import { createClock } from '../../static/time/clock.js';

const key = (name, more = {}) => ({ key: name, ...more });

test('a clicker has every step of the talk, whatever has the focus', () => {
  for (const at of ['', 'slider', 'text']) {
    assert.equal(pressOf(key('PageDown'), at), 'next');
    assert.equal(pressOf(key('PageUp'), at), 'back');
    assert.equal(pressOf(key('F5'), at), 'nothing'); // it would load the page anew
    assert.equal(pressOf(key('F5', { shiftKey: true }), at), 'nothing');
  }
  for (const [
    name,
    what,
  ] of [['b', 'dark'], ['B', 'dark'], ['.', 'dark'], ['ArrowRight', 'next'], ['ArrowUp', 'back'], [' ', 'play'], ['Escape', 'leave'], ['End', 'last'], ['?', 'help']]) // biome-ignore format: a row a key
    assert.equal(pressOf(key(name)), what, name);
});

test('a slider that was tabbed to keeps its arrows, a field what is typed, and the browser its own', () => {
  assert.equal(pressOf(key('ArrowRight'), 'slider'), null);
  assert.equal(pressOf(key('End'), 'slider'), null);
  assert.equal(pressOf(key('b'), 'slider'), 'dark');
  assert.equal(pressOf(key('.'), 'text'), null);
  assert.equal(pressOf(key('r', { ctrlKey: true })), null);
  assert.equal(pressOf(key('ArrowRight', { shiftKey: true })), null); // looks round on a stage
  assert.equal(pressOf(key('Tab')), null);
});

test('no key does two things, and each is told', () => {
  const keys = PRESSES.flatMap(({ keys }) => keys);
  assert.equal(new Set(keys).size, keys.length);
  assert.ok(PRESSES.every(({ listed, say }) => listed && say));
});

test('words grow with the window as the sheet of the look has it', () => {
  assert.equal(labelPx(1280, 720), 24);
  assert.equal(labelPx(1920, 1080), 28);
  assert.equal(labelPx(3840, 2160), 40);
  assert.equal(presentingType(1920, 1080), 2);
  assert.ok(labelPx(390, 844) >= 15 && labelPx(390, 844) < 18);
  assert.equal(labelPx(320, 180), 15);
});

test('a finger to the left goes on, to the right back, and up or slowly nothing', () => {
  assert.equal(swipeOf(-120, 20, 200), 'next');
  assert.equal(swipeOf(120, -20, 200), 'back');
  assert.equal(swipeOf(-120, 100, 200), null);
  assert.equal(swipeOf(-40, 0, 200), null);
  assert.equal(swipeOf(-400, 0, 2000), null);
});

function given(talk = null) {
  const views = [];
  const store = {
    document: { title: 'Lobs' },
    view: { swapped: false, merged: false },
    look(patch) {
      views.push(patch);
      Object.assign(store.view, patch);
    },
    on: () => () => {},
  };
  const clock = createClock();
  clock.setSpan(10, 1 / 24);
  const state = createPresenting({ store, clock, talk });
  return { state, store, clock };
}

test('dark stands still, and light goes on as it was', () => {
  const { state, clock } = given();
  clock.play();
  state.press('dark');
  assert.ok(state.dark && !clock.playing);
  state.press('dark');
  assert.ok(!state.dark && clock.playing);
  state.press('freeze');
  assert.ok(state.frozen && !clock.playing);
  state.press('dark');
  state.press('dark');
  assert.ok(state.frozen && !clock.playing); // it was frozen before
  state.press('freeze');
  assert.ok(!state.frozen && clock.playing);
  clock.pause();
  state.press('dark');
  state.press('dark');
  assert.ok(!clock.playing);
});

test('slow is a quarter of the step’s speed, is nobody’s choice, and ends with the step', () => {
  const went = [];
  const talk = { steps: [{}, {}, {}], at: 0, next: () => went.push('next'), back: () => went.push('back'), go: at => went.push(at) };
  const { state, clock } = given(talk);
  clock.lendPace(0.5);
  state.press('slow');
  assert.equal(clock.pace, 0.125);
  assert.equal(clock.chosenPace, null);
  state.press('slow');
  assert.equal(clock.pace, 0.5);
  state.press('slow');
  state.press('dark');
  for (const what of ['next', 'back', 'last', 'first']) state.press(what);
  assert.deepEqual(went, ['next', 'back', 2, 0]);
  assert.ok(!state.slow && !state.dark);
  assert.equal(clock.pace, 0.5);
  state.rest();
  assert.equal(clock.pace, 1); // the page's own again
});

test('swap and merge are of the view; the dot is where the pointer is while it is on', () => {
  const { state, store } = given();
  const told = [];
  state.on(what => told.push(what));
  state.press('swap');
  state.press('merge');
  assert.deepEqual(store.view, { swapped: true, merged: true });
  state.point({ stage: 'aboard', x: 0.5, y: 0.25 });
  assert.equal(state.dot, null);
  state.press('laser');
  state.point({ stage: 'aboard', x: 0.5, y: 0.25 });
  assert.deepEqual(state.dot, { stage: 'aboard', x: 0.5, y: 0.25 });
  state.press('laser');
  assert.equal(state.dot, null);
  assert.deepEqual(told, ['swap', 'merge', 'laser', 'dot', 'laser']);
});

test('without a talk the scene is one step: on plays, back starts anew', () => {
  const { state, clock } = given();
  assert.equal(state.talk.step.line, 'Lobs');
  assert.equal(state.talk.steps.length, 1);
  state.press('next');
  assert.ok(clock.playing);
  clock.seek(3);
  state.press('back');
  assert.equal(clock.time_s, 0);
});
