// Marks of a lane: what they say, and that two hundred bounces stay usable.

import assert from 'node:assert/strict';
import test from 'node:test';
import { eventMarks, thinned } from '../../static/panels/timeline/lane_marks.js';
import { endWords, lastSeen } from '../../static/panels/shared/path_key.js';

const bounce = (time_s, up = 1) => ({ kind: 'deck', time_s, along_m: time_s, velocity_after_m_s: [0, up, 0] });
const lane = motion => ({ motion: { kind: 'throw', ...motion }, index: 0, y: 38, gap: 15 });
const KINDS = { throw: { events: {} }, let_go: { events: {} }, pour: { events: {} }, stand: { events: { grip: 'grips' } } };
const release = { kind: 'release', time_s: 0, along_m: 1 };

test('a landing, a rebound, a grip and a rest have their words; a release has none', () => {
  const events = [release, bounce(1), bounce(2), { kind: 'grip', time_s: 3 }, { kind: 'rest', time_s: 4 }];
  const marks = eventMarks([lane({ events })], () => 'Ball', KINDS);
  assert.deepEqual(
    marks.map(mark => mark.what),
    ['lands', 'bounces off the deck', 'begins to roll', 'rests'],
  );
  assert.deepEqual(
    marks.map(mark => mark.big),
    [true, false, false, false],
  );
});

test('the highest point before the landing is marked, those of the rebounds are not', () => {
  const apex = time_s => ({ kind: 'apex', time_s });
  const marks = eventMarks([lane({ events: [release, apex(0.5), bounce(1), apex(1.4), bounce(1.8)] })], () => 'Ball', KINDS);
  assert.deepEqual(
    marks.map(mark => [mark.what, mark.time]),
    [
      ['highest', 0.5],
      ['lands', 1],
      ['bounces off the deck', 1.8],
    ],
  );
});

test('a cup on a table grips, it does not roll', () => {
  const [slip, grip] = eventMarks(
    [
      lane({
        kind: 'stand',
        events: [
          { kind: 'slip', time_s: 1 },
          { kind: 'grip', time_s: 2 },
        ],
      }),
    ],
    () => 'Cup',
    KINDS,
  );
  assert.deepEqual([slip.what, grip.what], ['begins to slide', 'grips']);
});

test('of two hundred bounces in a few pixels few are drawn, and never the landing or the rest left out', () => {
  const events = [release, ...Array.from({ length: 200 }, (_, i) => bounce(1 + i / 100)), { kind: 'rest', time_s: 3.2 }];
  const marks = eventMarks([lane({ events })], () => 'Ball', KINDS);
  const drawn = thinned(marks, time => time * 50);
  assert.equal(marks.length, 201);
  assert.ok(drawn.length < 25, `${drawn.length}`);
  assert.equal(drawn[0].what, 'lands');
  assert.equal(drawn.at(-1).what, 'rests');
  const apart = drawn.slice(0, -1).map((mark, i) => (i ? 50 * (mark.time - drawn[i - 1].time) : 8));
  assert.ok(Math.min(...apart) >= 8 - 1e-9);
});

test('marks of two lanes do not hide each other', () => {
  const both = [lane({ events: [bounce(0.5), bounce(1)] }), { ...lane({ events: [bounce(0.5), bounce(1.001)] }), y: 53, index: 1 }];
  assert.equal(
    thinned(
      eventMarks(both, () => 'Ball', KINDS),
      time => time * 50,
    ).length,
    4,
  );
});

test('how it ends, in words', () => {
  const landing = { time_s: 1.07, along_m: 6, drift_m: 5 };
  assert.equal(endWords({ landing, end: 'landed', events: [release, bounce(1.07)] }), 'lands 1.07');
  assert.equal(endWords({ landing, end: 'rest', events: [release, bounce(1.07), { kind: 'rest', time_s: 4.2 }] }), 'lands 1.07, rests 4.20');
  const last = { time_s: 3, way: { turns: 0, spinward_m: 3, axial_m: 0, of_turn: null } };
  const rolled = { landing: null, no_landing: 'starts_there', last, events: [release, { kind: 'edge', time_s: 3 }], end: 'edge' };
  assert.equal(endWords(rolled, null), 'leaves the edge 3.00');
  assert.deepEqual(lastSeen(rolled), { say: 'leaves the edge', ...last });
  assert.equal(endWords({ landing: null, no_landing: 'starts_there', end: 'duration', events: [release] }, 'stands'), 'stands');
});

test('what people, craft and hanging things do has its marks, a pass of the rim among them', () => {
  const events = [release, { kind: 'arrives', time_s: 2 }, { kind: 'dock', time_s: 3 }, { kind: 'slack', time_s: 4 }];
  const marks = eventMarks([lane({ kind: 'let_go', events, findings: { sweeps_by: [{ time_s: 5, distance_m: 9 }] } })], () => 'Hand', KINDS);
  assert.deepEqual(
    marks.map(mark => mark.what),
    ['arrives', 'reaches the dock', 'its line goes slack', 'the place it left sweeps by'],
  );
  assert.ok(marks.every(mark => mark.sign && !mark.big));
  const [cup] = eventMarks([lane({ kind: 'pour', events: [{ kind: 'target', time_s: 1 }] })], () => 'Tea', KINDS);
  assert.equal(cup.what, 'reaches the cup');
});

test('how people and hanging things end', () => {
  const walk = { kind: 'walk', landing: null, no_landing: 'starts_there', end: 'arrived', events: [release, { kind: 'arrives', time_s: 5 }] };
  assert.equal(endWords(walk), 'arrives 5.00');
  assert.equal(endWords({ landing: null, no_landing: 'never_meets', end: 'time limit', events: [release] }, 'hangs'), 'hangs');
  const slack = { landing: null, no_landing: 'never_meets', end: 'slack', events: [release, { kind: 'slack', time_s: 2 }] };
  assert.equal(endWords(slack, 'hangs'), 'its line goes slack 2.00');
});
