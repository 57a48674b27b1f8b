// What who follows is told, and takes: the presenter's view as a phone has room for it, the clock, and how far off a mark was.

import assert from 'node:assert/strict';
import test from 'node:test';
import { filling, nowOf, steppedBack, verdictOf, viewOfNow } from '../../static/state/now.js';
import { createServerClock, timeOf } from '../../static/state/server_clock.js';

const camera = { position_m: [0, -50, 20], target_m: [0, -56, 0], up: [0, 1, 0], vertical_fov_deg: 30 };
const view = {
  place: 2,
  alone: null,
  swapped: false,
  hidden: ['b'],
  presets: { aboard: 'b', outside: 'd' },
  cameras: { aboard: camera, outside: null },
  theme: 'down',
};
const talk = { title: 'Talk', steps: [1, 2, 3], at: 1, step: { line: 'x'.repeat(300) } };
const DOT = { stage: 'aboard', x: 0.5, y: 0.25 };
const clock = { time_s: 0.5, pace: 0.25, playing: true };

test('what is told has the step, the clock and what is seen, and nothing of the presenter’s own page', () => {
  const now = nowOf({
    store: { view: { ...view, withheld: { motions: ['a'] } } },
    clock,
    talk,
    turned: { aboard: { yaw: 1, tilt: 0, zoom: 1 } },
    scene: 'd',
    dot: DOT,
  });
  assert.deepEqual([now.step, now.of, now.title, now.line.length, now.scene, now.dark], [2, 3, 'Talk', 200, 'd', false]);
  assert.deepEqual(now.clock, clock);
  assert.deepEqual([now.withheld, now.dot], [{ motions: ['a'] }, DOT]);
  assert.equal('theme' in now.view, false);
  assert.equal(now.view.turned.aboard.yaw, 1);
  const alone = nowOf({ store: { view }, clock, talk: { title: 'Scene', steps: [{}], at: 0, step: { line: '' } } });
  assert.deepEqual([alone.step, alone.of, alone.line, alone.dot], [0, 0, 'Scene', null]);
});

test('a phone shows the stage that fills most, a wide window both, and either what the presenter has alone', () => {
  const shown = (part, wide) => viewOfNow({ view: { ...view, ...part }, withheld: null }, { wide, aspect: 1.6 }).alone;
  assert.deepEqual([shown({}, true), shown({}, false), shown({ swapped: true }, false)], [null, 'aboard', 'outside']);
  assert.deepEqual([shown({ alone: 'outside' }, true), shown({ alone: 'outside' }, false)], ['outside', 'outside']);
  assert.equal(filling({}), 'aboard');
});

test('a camera steps back where the picture is narrower, so that it holds as much across', () => {
  const narrow = steppedBack(camera, 0.8);
  assert.deepEqual(narrow.target_m, camera.target_m);
  assert.deepEqual(narrow.position_m, [0, -44, 40]);
  assert.deepEqual(steppedBack(camera, 2), camera);
  assert.deepEqual(viewOfNow({ view, withheld: null }, { wide: false, aspect: 0.8 }).cameras, { aboard: narrow, outside: null });
});

test('a mark is so far off, the nearest way round, and nearer than so many others', () => {
  const ask = { landing_m: 5.5, marks: [7, 5, 12, -20, 7] };
  assert.deepEqual(verdictOf(7, ask), { off_m: 1.5, nearer: 2, of: 4 });
  assert.deepEqual(verdictOf(-170, { landing_m: 170, marks: [-170] }, 350), { off_m: 10, nearer: 0, of: 0 });
});

test('the server’s clock is known from the quickest answer', () => {
  let own_ms = 1000;
  const server = createServerClock({ now: () => own_ms });
  assert.equal(server.now_ms(), 1000);
  server.heard(5400); // sent at 5400, on its way for an unknown time
  assert.equal(server.now_ms(), 5400);
  server.answered({ sent_ms: 1000, at_ms: 5900, got_ms: 1900 });
  server.answered({ sent_ms: 2000, at_ms: 6510, got_ms: 2020 });
  server.answered({ sent_ms: 3000, at_ms: 7900, got_ms: 3600 });
  own_ms = 4000;
  assert.equal(server.now_ms(), 8500);
  server.heard(1);
  assert.equal(server.now_ms(), 8500);
});

test('a clock that plays is where the time since brought it, at most at its end', () => {
  const told = { time_s: 0.5, pace: 0.25, playing: true, at_ms: 1000 };
  assert.equal(timeOf(told, 3000, 9), 1);
  assert.equal(timeOf(told, 900, 9), 0.5);
  assert.equal(timeOf(told, 1e6, 9), 9);
  assert.equal(timeOf({ ...told, playing: false }, 3000, 9), 0.5);
});
