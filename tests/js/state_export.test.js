import assert from 'node:assert/strict';
import test from 'node:test';

import {
  choiceOf,
  exportPart,
  factsOf,
  framesOf,
  rateWords,
  retimeWords,
  sizeWords,
  typedFrame,
  typedRate,
  typedRetime,
  withChoice,
} from '../../static/state/export.js';

const FIELDS = { view: { default: 'rotating' }, origin: { default: 'axis' }, to_s: { default: null } };
const FILE = {
  fps: [24000, 1001],
  shown_fps: [24, 1],
  first_frame: 1001,
  start_frame: 1001,
  end_frame: 1049,
  frame_count: 49,
  star_drift_deg_per_frame: 0.75,
  star_drift_deg_per_frame_last: 0.75,
};

test('a request holds what differs from the defaults, and nothing else', () => {
  let chosen = withChoice(FIELDS, {}, 'view', 'inertial');
  chosen = withChoice(FIELDS, chosen, 'to_s', 2);
  assert.deepEqual(chosen, { view: 'inertial', to_s: 2 });
  assert.deepEqual(withChoice(FIELDS, chosen, 'view', 'rotating'), { to_s: 2 });
  assert.deepEqual(withChoice(FIELDS, chosen, 'to_s', null), { view: 'inertial' });
  assert.equal(choiceOf(FIELDS, chosen, 'origin'), 'axis');
});

test('motions are named only when some are left out; names of another scene do not matter', () => {
  assert.deepEqual(exportPart({ view: 'inertial' }, ['a', 'b']), { view: 'inertial' });
  assert.deepEqual(exportPart({ leftOut: ['b', 'z'] }, ['a', 'b']), { motions: ['a'] });
  assert.deepEqual(exportPart({ leftOut: ['z'] }, ['a', 'b']), {});
});

test('a rate is a number or a fraction as typed; the server judges it', () => {
  assert.equal(typedRate(' 23,976 '), 23.976);
  assert.equal(typedRate('30000 / 1001'), '30000/1001');
  assert.equal(typedRate(''), null);
  assert.equal(typedRate('many'), 'many');
  assert.equal(rateWords([24000, 1001]), '23.976');
  assert.equal(rateWords([25, 2]), '12.5');
});

// SMPTE's 23.976 is 24000/1001: 24 frames last 1.001 s
test('frame k is at k·d/n, counted from the first frame even where the file begins later', () => {
  const frames = framesOf(FILE);
  assert.deepEqual(frames[0], { frame: 1001, time_s: 0 });
  assert.equal(frames[24].time_s, 1.001);
  assert.equal(frames.length, 49);
  assert.equal(framesOf({ ...FILE, start_frame: 1025 })[0].time_s, 1.001);
});

test('the facts are sentences', () => {
  const counts = { bodies: 1, drops: 1200, csv_rows: 58849 };
  const said = factsOf({ file: FILE, counts, says: ['Said by the server.'] });
  assert.deepEqual(said, [
    'Frames 1001 to 1049, 49 in all; one body and 1,200 drops; 58,849 rows as a table.',
    'The stars drift 0.75° per frame.',
    'Said by the server.',
  ]);
  const changing = { ...FILE, star_drift_deg_per_frame_last: -0.5 };
  assert.match(factsOf({ file: changing, counts, says: [] })[1], /0\.75° per frame at first, −0\.5° at the end/);
});

test('sizes are said in decimal units', () => {
  assert.deepEqual([999, 1500, 2_340_000].map(sizeWords), ['999 B', '2 kB', '2.3 MB']);
});

test('a retime curve as typed is keys and back; its frames are where it has them', () => {
  const keys = [
    { frame: 1001, time_s: 0 },
    { frame: 1049, time_s: 0.5 },
  ];
  assert.deepEqual(typedRetime('1001 = 0, 1049=0.5 s'), keys);
  assert.equal(retimeWords({ keys }), '1001 = 0, 1049 = 0.5');
  assert.equal(typedRetime(' '), null);
  for (const wrong of ['1001', '1001 = 0', '1001 = 0, 1049', 'a = b, 2 = 3']) assert.equal(typedRetime(wrong), undefined, wrong);
  assert.deepEqual(framesOf({ ...FILE, start_frame: 1001, end_frame: 1002, retimed_s: [0, 0.25] }), [
    { frame: 1001, time_s: 0 },
    { frame: 1002, time_s: 0.25 },
  ]);
});

test('an end of the span may be typed as a frame', () => {
  assert.equal(typedFrame('frame 1060', { first_frame: 1001, fps: [24, 1] }), 2.458333);
  assert.equal(typedFrame('f1001', { first_frame: 1001, fps: 24 }), 0);
  assert.equal(typedFrame('Frame 989', { first_frame: 1001, fps: '24000/1001' }), -0.5005);
  for (const typed of ['1060', '2.5 s', 'frame', '']) assert.equal(typedFrame(typed, { first_frame: 1001, fps: 24 }), undefined);
});
