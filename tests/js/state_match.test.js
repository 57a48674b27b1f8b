// A path that was seen: marks, rows, scale and what is known, as they are asked about.

import assert from 'node:assert/strict';
import test from 'node:test';
import { FIRST_MATCH, frameCount, inOrder, lineIn, markPlace, rowOfFrame, wanting, withMark, withoutMark } from '../../static/state/match.js';
import { fliesHere, residualsOf, runsOf } from '../../static/state/match_answer.js';
import { gridRequest, knownOfFile, matchRequest, rowOfField } from '../../static/state/match_request.js';
import { COLUMNS, figureOf, pastedRows, rowsOfTrack } from '../../static/state/match_rows.js';
import { createPast } from '../../static/state/past.js';

const SCENE = { 'habitat.shape': 'cylinder', 'habitat.radius_m': 56, 'habitat.spin_rpm': 3, air: { pressure_kpa: 101.325, temperature_c: 20 } };
const read = path => SCENE[path];
const source = { name: 'f', kind: 'stills', width: 640, height: 480, count: 12 };
const plane = { ...FIRST_MATCH.plane, from_px: [60, 420], to_px: [66, 300] };
const marked = (frames, rest = {}) =>
  frames.reduce((match, frame) => withMark(match, frame, [100 + 10 * frame, 200 - frame]), { ...FIRST_MATCH, source, plane, ...rest });

test('a mark takes the place of that of its frame, and frames stay in order', () => {
  const match = withMark(marked([4, 0, 2]), 2, [7, 8]);
  assert.deepEqual(
    match.marks.map(({ frame, x_px }) => [frame, x_px]),
    [
      [0, 100],
      [2, 7],
      [4, 140],
    ],
  );
  assert.equal(rowOfFrame(match, 4), 2);
  assert.deepEqual(
    withoutMark(match, 2).marks.map(({ frame }) => frame),
    [0, 4],
  );
});

test('it says what is wanting, and asks nothing before', () => {
  const read = () => assert.fail('nothing is asked');
  for (const [match, lack] of [
    [marked([0, 1, 2], { plane: FIRST_MATCH.plane }), 'scale'],
    [marked([0, 1]), 'marks'],
    [{ ...FIRST_MATCH, rows: { columns: COLUMNS.track, items: [{ time_s: 0 }, {}, {}] } }, 'rows'],
  ]) {
    assert.equal(wanting(match), lack);
    assert.equal(matchRequest(match, read), null);
  }
  assert.equal(wanting(marked([0, 1, 2])), null);
});

test('pixels on a plane: the line, its foot on the deck, up straight or along it', () => {
  const body = matchRequest(marked([0, 3, 5]), read);
  assert.deepEqual(body.known, { radius_m: 56, spin_rpm: 3, air: SCENE.air });
  assert.equal(body.accuracy_px, 1.5);
  assert.ok(!('accuracy_m' in body) && !('playback_fps' in body));
  assert.deepEqual(body.picture.points[1], { frame: 3, x_px: 130, y_px: 197 });
  assert.deepEqual(body.picture.plane, { from_px: [60, 420], to_px: [66, 300], distance_m: 1.75, deck_px: null, up: [0, -1], right_is: 'spinward' });
  const leaning = matchRequest(marked([0, 3, 5], { plane: { ...plane, upright: false } }), read);
  assert.deepEqual(leaning.picture.plane.up, [6, -120]);
});

test('pixels through a camera: one for all, or the rows of a file with their times', () => {
  const one = matchRequest(marked([0, 1, 2], { by: 'camera' }), read).picture.camera;
  assert.deepEqual([one.width_px, one.height_px, one.field_of_view_deg], [640, 480, 60]);
  const own_camera = [0, 0.5, 2].map(time_s => ({ ...FIRST_MATCH.camera, time_s }));
  const rows = matchRequest(marked([0, 1, 7], { by: 'camera', own_camera }), read).picture.camera;
  assert.deepEqual(
    rows,
    own_camera.map(row => ({ ...row, width_px: 640, height_px: 480 })),
  );
});

test('what is known: of this scene, given, or left out', () => {
  const known = (part, given = FIRST_MATCH.given) => matchRequest(marked([0, 1, 2], { known: { ...FIRST_MATCH.known, ...part }, given }), read).known;
  assert.deepEqual(known({ radius_m: 'given', spin_rpm: 'none', air: 'none' }, { radius_m: 30, spin_rpm: 4 }), { radius_m: 30 });
  assert.equal(known({ air: 'vacuum' }).air, null);
  assert.deepEqual(known({ body: 'handball', start: 'dropped' }), { radius_m: 56, spin_rpm: 3, air: SCENE.air, body: 'handball', speed: 0 });
  assert.equal(matchRequest(marked([0, 1, 2], { slowed: true }), read).playback_fps, 24);
});

test('rows of a table: an empty axis is left out, keys go with their axes', () => {
  const items = [0, 1, 2].map(k => ({ time_s: k, along_m: k, height_m: 1, axial_m: null }));
  const track = matchRequest({ ...FIRST_MATCH, rows: { columns: COLUMNS.track, items: [...items, { time_s: null }] } }, read);
  assert.deepEqual(track.track[2], { time_s: 2, along_m: 2, height_m: 1 });
  assert.equal(track.track.length, 3);
  assert.equal(track.accuracy_m, 0.02);
  const keys = { origin: 'axis', view: 'inertial', rows: [0, 1, 2].map(k => ({ time_s: k, x_m: k, y_m: 1, z_m: 0 })) };
  const asked = matchRequest({ ...FIRST_MATCH, rows: rowsOfTrack({ keys }), note: { origin: 'axis', view: 'inertial' } }, read);
  assert.deepEqual(asked.keys, keys);
});

test('a file says what is known of its habitat', () => {
  const { known, given } = knownOfFile(FIRST_MATCH, { radius_m: 40, air: null });
  assert.deepEqual([known.radius_m, known.spin_rpm, known.air, given.radius_m], ['given', 'scene', 'vacuum', 40]);
});

test('rows are pasted by tabs, semicolons with decimal commas, commas or spaces, with or without a head', () => {
  const columns = ['time_s', 'along_m', 'height_m'];
  const wanted = [
    { time_s: 0, along_m: 1.5, height_m: -2 },
    { time_s: 0.5, along_m: 2, height_m: null },
  ];
  for (const text of ['t\talong\tup\n0\t1.5\t-2\n0.5\t2\t\n', '0;1,5;-2\r\n0,5;2;', 't, a, h\n0, 1.5, −2\n0.5, 2', '0 1.5 -2\n0.5 2'])
    assert.deepEqual(pastedRows(text, columns), wanted, text);
  for (const text of ['words alone', 'one\ntwo\n1\t2', '7']) assert.equal(pastedRows(text, columns), null, text);
  assert.deepEqual(['1e-3', ' −2 ', '', 'x', 'Infinity'].map(figureOf), [0.001, -2, null, null, null]);
});

test('a refusal names a row', () => {
  for (const [field, row] of [
    ['picture.points.3.frame', 3],
    ['track.12.time_s', 12],
    ['keys.rows.0.x_m', 0],
    ['known.gravity_g', null],
    [undefined, null],
  ])
    assert.equal(rowOfField(field), row);
});

test('one picture holds one exposure more than are marked; files go by number', () => {
  const still = { ...FIRST_MATCH, source: { ...source, count: null } };
  assert.deepEqual([frameCount(FIRST_MATCH), frameCount(still), frameCount(withMark(still, 4, [0, 0])), frameCount(marked([0]))], [0, 1, 6, 12]);
  assert.deepEqual(
    inOrder(['f10.png', 'f9.png', 'f1.png'].map(name => ({ name }))).map(({ name }) => name),
    ['f1.png', 'f9.png', 'f10.png'],
  );
});

test('steps are taken back one by one', () => {
  const past = createPast();
  past.push('a');
  past.push('b');
  assert.deepEqual([past.any, past.back('c'), past.back('b'), past.any, past.back('a')], [true, 'b', 'a', false, 'a']);
});

test('a matched throw flies here as it does in its own habitat, or not', () => {
  const motion = { habitat: { radius_m: 56, spin_rpm: 3 }, air: SCENE.air };
  assert.ok(fliesHere(motion, read));
  for (const other of [
    { ...motion, air: null },
    { ...motion, habitat: { radius_m: 56, spin_rpm: 3.01 } },
    { ...motion, habitat: { radius_m: 40, spin_rpm: 3 } },
  ])
    assert.ok(!fliesHere(other, read));
});

test('a path is cut where it is behind the camera; the strip holds the band and the worst', () => {
  const runs = runsOf({ x_px: [0, 1, null, 3, null, 5, 6], y_px: [0, 1, null, 3, null, 5, 6] });
  assert.deepEqual(
    runs.map(run => run.length),
    [2, 2],
  );
  const accuracy = { value: 1, unit: 'px' };
  assert.equal(residualsOf({ residual: { x_px: [0.1, null], y_px: [0, -0.2] }, accuracy }).most, 3.2);
  assert.ok(residualsOf({ residual: { x_px: [0, -50] }, accuracy }).most > 50);
});

test('the grid is asked of the camera of the frame in hand, and of none where a line gives the scale', () => {
  assert.equal(gridRequest(marked([0]), read), null);
  const match = marked([0, 4], { by: 'camera' });
  const { camera, radius_m } = gridRequest(match, read);
  assert.equal(radius_m, 56);
  assert.deepEqual(camera, { ...FIRST_MATCH.camera, width_px: 640, height_px: 480 });
  const own_camera = [0, 1].map(time_s => ({ time_s, ...FIRST_MATCH.camera }));
  const rows = { ...match, own_camera, known: { ...match.known, radius_m: 'given' }, given: { radius_m: 30 } };
  assert.equal(gridRequest({ ...rows, frame: 12 }, read).time_s, 0.5);
  assert.deepEqual(
    gridRequest(rows, read).camera,
    own_camera.map(row => ({ ...row, width_px: 640, height_px: 480 })),
  );
  assert.equal(gridRequest(rows, read).radius_m, 30);
  assert.equal(
    gridRequest(match, () => undefined),
    null,
  );
});

test('a mark not set yet stands where the one before was, the line in a corner of the picture', () => {
  assert.deepEqual(markPlace({ ...marked([0, 4]), frame: 3 }), [100, 200]);
  assert.deepEqual(markPlace({ ...marked([4]), frame: 3 }), [140, 196]);
  assert.deepEqual(markPlace(marked([])), [320, 240]);
  assert.deepEqual(lineIn(marked([])), { from_px: [60, 420], to_px: [66, 300] });
  assert.deepEqual(lineIn({ plane: FIRST_MATCH.plane, source }), { from_px: [77, 408], to_px: [77, 288] });
});
