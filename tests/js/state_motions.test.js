// Kinds of motion as the page is told them (groups, sentences, findings, fields of a kind's own), and a motion the other way round:
// headings and spins as a mirror shows them.

import assert from 'node:assert/strict';
import test from 'node:test';
import { fieldOf, readAt, withoutDefaults } from '../../static/state/fields.js';
import {
  OWN,
  axisOf,
  axisWords,
  clearPlace,
  kindGroups,
  mirrored,
  nameOf,
  otherWay,
  otherWord,
  sameAgain,
  sentenceOf,
  showFinding,
} from '../../static/state/motions.js';
import { createStore } from '../../static/state/store.js';
import { motionsWords } from '../../static/state/words.js';

const speed = { label: 'Speed', default: 0 },
  pace = { label: 'Pace', default: 1.4 };
const fields = { fields: { 'motions.*.speed_m_s': speed, motions: {} }, kinds: { throw: { own: {} }, walk: { own: { speed_m_s: pace } } } };
const document = {
  rimfall: 1,
  habitat: {},
  motions: [
    { kind: 'throw', speed_m_s: 0 },
    { kind: 'walk', speed_m_s: 0 },
    { kind: 'walk', speed_m_s: 1.4 },
  ],
};

test('kinds lie in their groups, which come in the order of their first', () => {
  const kinds = { drop: { group: 'Things' }, pour: { group: 'Liquids' }, roll: { group: 'Things' }, juggle: { group: 'More' } };
  assert.deepEqual(kindGroups(kinds), [
    ['Things', ['drop', 'roll']],
    ['Liquids', ['pour']],
    ['More', ['juggle']],
  ]);
});

test('what pushes sideways says which way, and has no sign', () => {
  const push = value => showFinding({ unit: 'm/s²', sided: true }, value, 'si').replace('\u00a0', ' ');
  assert.deepEqual([0.52, -0.52, 0].map(push), ['0.520 m/s² spinward', '0.520 m/s² antispinward', '0 m/s²']);
  assert.equal(showFinding({ unit: '°', sided: false }, -3, 'si'), '−3.00°');
});

test('a field is told as its kind has it', () => {
  const store = createStore({ document, fields });
  assert.equal(fieldOf(store.fields, 'motions.0.speed_m_s').label, 'Speed');
  assert.equal(fieldOf(store.fields, 'motions.1.speed_m_s').label, 'Pace');
  assert.equal(fieldOf(store.fields, 'motions.*.speed_m_s').label, 'Speed');
  assert.equal(readAt(store.fields, { motions: [{ kind: 'throw' }, { kind: 'walk' }] }, 'motions.1.speed_m_s'), 1.4);
});

test('a link leaves out what equals the default of that kind, and nothing else', () => {
  const stripped = withoutDefaults({ ...fields, kinds: { ...fields.kinds } }, document);
  assert.deepEqual(stripped.motions, [{ kind: 'throw' }, { kind: 'walk', speed_m_s: 0 }, { kind: 'walk' }]);
});

test('words for one and for many', () => {
  const known = { stand: { one: 'thing on a table', many: 'things on tables' }, approach: { one: 'approach', many: 'approaches' } };
  assert.equal(motionsWords([{ kind: 'stand' }, { kind: 'stand' }], known), 'two things on tables');
  assert.equal(motionsWords([{ kind: 'approach' }], known), 'one approach');
  assert.equal(motionsWords([{ kind: 'stand' }, { kind: 'approach' }], known), 'two motions');
});

test('a sentence follows what the motion has', () => {
  const runs = { field: 'speed_m_s', above: 2.5, say: 'Runs', otherwise: 'Walks' };
  const does = { field: 'climb_deg', say: 'Climbs', otherwise: runs };
  const sentence = [does, ' at {speed_m_s}', { field: 'carried.speed_m_s', say: ', on the run', otherwise: '' }, '.'];
  assert.equal(sentenceOf(sentence, { speed_m_s: 1.4, climb_deg: 0, carried: null }), 'Walks at {speed_m_s}.');
  assert.equal(sentenceOf(sentence, { speed_m_s: 2.5, climb_deg: 0, carried: {} }), 'Walks at {speed_m_s}.');
  assert.equal(sentenceOf(sentence, { speed_m_s: 4, climb_deg: 0, carried: { speed_m_s: 3 } }), 'Runs at {speed_m_s}, on the run.');
  assert.equal(sentenceOf(sentence, { speed_m_s: 4, climb_deg: -5 }), 'Climbs at {speed_m_s}.');
});

test('a part of a sentence may hang on a value, a least one, or on a list with something in it', () => {
  const slides = { field: 'start', equals: 'sliding', say: 'slides', otherwise: 'rolls' };
  assert.deepEqual(
    ['sliding', 'rolling'].map(start => sentenceOf(slides, { start })),
    ['slides', 'rolls'],
  );
  const up = { field: 'elevation_deg', least: 89.95, say: 'up', otherwise: 'aslant' };
  assert.deepEqual(
    [89.94, 89.95].map(elevation_deg => sentenceOf(up, { elevation_deg })),
    ['aslant', 'up'],
  );
  const tilts = { field: 'tilt', say: 'tilting', otherwise: 'steady' };
  assert.deepEqual(
    [[], [{}], null].map(tilt => sentenceOf(tilts, { tilt })),
    ['steady', 'tilting', 'steady'],
  );
});

test('the mirror image of a pour has its cup on the other side, and of kinds without one there is none', () => {
  const pour = { kind: 'pour', heading_deg: 0, place: { along_m: 2 }, target: { along_m: 3 } };
  const known = { kinds: { walk: { mirrored: true }, hang: { mirrored: false } } };
  assert.equal(mirrored(pour).target.along_m, 1);
  assert.deepEqual(mirrored(mirrored(pour)), pour);
  assert.equal(otherWord(known, { kind: 'hang', heading_deg: 0 }), null);
  assert.equal(otherWord(known, { kind: 'walk', heading_deg: 0 }), 'antispinward');
});

const cross = ([a, b, c], [d, e, f]) => [b * f - c * e, c * d - a * f, a * e - b * d];
const near = (a, b) => a.every((part, i) => Math.abs(part - b[i]) < 1e-6);
const FIELDS = { kinds: { throw: { mirrored: true }, roll: { mirrored: true }, drop: { mirrored: false } } };
const ball = { kind: 'throw', name: 'serve', heading_deg: 30, speed_m_s: 6, place: { along_m: 2, height_m: 1 }, body: 'handball' };

test('a heading and its mirror image', () => {
  for (const [from, to] of [
    [0, 180],
    [180, 0],
    [90, 90],
    [30, 150],
    [-30, -150],
    [270, -90],
    [-180, 0],
    [360, 180],
  ]) {
    assert.equal(otherWay(from), to, `${from}`);
  }
});

test('twice mirrored is the motion again', () => {
  const motion = { ...ball, carried: { speed_m_s: 2, heading_deg: 40 }, ball_spin_rpm: 300, ball_spin_axis: [1, 2, 3] };
  assert.deepEqual(mirrored(mirrored(motion)), motion);
});

test('a thrower or a ramp that says no heading faces spinward, so its image faces antispinward', () => {
  const out = mirrored({ kind: 'roll', ramp: { slope_deg: 5 }, carried: { speed_m_s: 1 } });
  assert.deepEqual([out.heading_deg, out.ramp.heading_deg, out.carried.heading_deg], [180, 180, 180]);
});

test('the sideways push of a spinning ball, spin × velocity, is mirrored too', () => {
  const axis = [1, 2, 3],
    out = mirrored({ ...ball, ball_spin_axis: axis });
  const velocity = heading => [Math.cos((heading * Math.PI) / 180), 0, Math.sin((heading * Math.PI) / 180)];
  const [spinward, up, axial] = cross(axis, velocity(30));
  assert.ok(near(cross(out.ball_spin_axis, velocity(out.heading_deg)), [-spinward, up, axial]));
});

test('a forward roll stays a forward roll; a ball spun about the upright turns the other way', () => {
  const motion = { ...ball, ball_spin_rpm: 60, ball_spin_axis: axisOf('forward', 30) };
  const out = mirrored(motion);
  assert.equal(out.ball_spin_rpm, 60);
  assert.equal(nameOf(out.ball_spin_axis, out.heading_deg), 'forward');
  assert.equal(mirrored({ kind: 'roll', heading_deg: 0, ball_spin_rpm: 60 }).ball_spin_rpm, -60);
});

test('where the image goes, and what has none', () => {
  assert.equal(otherWord(FIELDS, ball), 'antispinward');
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 200 }), 'spinward');
  assert.equal(otherWord(FIELDS, { kind: 'throw' }), 'antispinward');
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 90 }), null);
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: -270 }), null);
  assert.equal(otherWord(FIELDS, { ...ball, heading_deg: 90, ball_spin_rpm: 9, ball_spin_axis: [0, 1, 0] }), 'antispinward');
  assert.equal(otherWord(FIELDS, { kind: 'drop' }), null);
  assert.equal(otherWord(FIELDS, { kind: 'stand' }), null);
});

test('the copy has a name of its own and stands where the first does', () => {
  const copy = sameAgain(FIELDS, ball, 'serve', ['serve', 'serve antispinward']);
  assert.equal(copy.name, 'serve antispinward 2');
  assert.deepEqual(copy.place, ball.place);
  assert.equal(copy.heading_deg, 150);
});

test('a forward roll has no slip where the ball touches the ground under it', () => {
  for (const heading of [0, 90, 135, -60]) {
    const t = (heading * Math.PI) / 180;
    // a ball of radius 1: velocity + spin × (0, −1, 0) = 0 at the rate of rolling
    const slip = cross(axisOf('forward', heading), [0, -1, 0]);
    assert.ok(near(slip, [-Math.cos(t), 0, -Math.sin(t)]), `${heading}`);
  }
});

test('axes have names whatever their length, and else are one’s own', () => {
  assert.equal(nameOf([0, 0, 5], 90), 'axial');
  assert.equal(nameOf([0, 3, 0], 10), 'upright');
  assert.equal(nameOf([1, 1, 0], 10), OWN);
  assert.equal(axisWords([0, 0, -2], 0), 'in a forward roll');
  assert.equal(axisWords([1, 1, 1], 0), 'about an axis of its own');
});

test('a new motion begins aside of one that begins there already', () => {
  const hand = { along_m: 0, height_m: 1.5, axial_m: 0 },
    at = along_m => ({ place: { ...hand, along_m } });
  assert.deepEqual(clearPlace(hand, []), hand);
  assert.equal(clearPlace(hand, [at(0)]).along_m, 1.2);
  assert.equal(clearPlace(hand, [at(0), at(1.2)]).along_m, -1.2);
  assert.equal(clearPlace(hand, [at(0.3), at(1.2), at(-1.2)]).along_m, 2.4);
  assert.equal(clearPlace(hand, [{ place: { height_m: 1.5 } }]).along_m, 1.2); // what is left out is 0
  for (const clear of [{ place: { ...hand, height_m: 0 } }, { place: { ...hand, axial_m: 3 } }, { place: { ...hand, floor: 1 } }])
    assert.equal(clearPlace(hand, [clear]).along_m, 0);
});
