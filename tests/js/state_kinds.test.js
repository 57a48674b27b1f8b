// The kinds of motion as the page is told them: groups, sentences, findings, and fields that are a kind's own.

import assert from 'node:assert/strict';
import test from 'node:test';
import { fieldOf, readAt, withoutDefaults } from '../../static/state/fields.js';
import { kindGroups, sentenceOf, showFinding, mirrored, otherWord } from '../../static/state/motions.js';
import { createStore } from '../../static/state/store.js';
import { motionsWords } from '../../static/state/words.js';

const speed = { label: 'Speed', default: 0 },
  pace = { label: 'Pace', default: 1.4 };
const fields = { fields: { 'motions.*.speed_m_s': speed, motions: {} }, kinds: { throw: { own: {} }, walk: { own: { speed_m_s: pace } } } };
const document = { rimfall: 1, habitat: {}, motions: [{ kind: 'throw', speed_m_s: 0 }, { kind: 'walk', speed_m_s: 0 }, { kind: 'walk', speed_m_s: 1.4 }] };

test('kinds lie in their groups, which come in the order of their first', () => {
  const kinds = { drop: { group: 'Things' }, pour: { group: 'Liquids' }, roll: { group: 'Things' }, juggle: { group: 'More' } };
  assert.deepEqual(kindGroups(kinds), [['Things', ['drop', 'roll']], ['Liquids', ['pour']], ['More', ['juggle']]]);
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
  assert.deepEqual(['sliding', 'rolling'].map(start => sentenceOf(slides, { start })), ['slides', 'rolls']);
  const up = { field: 'elevation_deg', least: 89.95, say: 'up', otherwise: 'aslant' };
  assert.deepEqual([89.94, 89.95].map(elevation_deg => sentenceOf(up, { elevation_deg })), ['aslant', 'up']);
  const tilts = { field: 'tilt', say: 'tilting', otherwise: 'steady' };
  assert.deepEqual([[], [{}], null].map(tilt => sentenceOf(tilts, { tilt })), ['steady', 'tilting', 'steady']);
});

test('the mirror image of a pour has its cup on the other side, and of kinds without one there is none', () => {
  const pour = { kind: 'pour', heading_deg: 0, place: { along_m: 2 }, target: { along_m: 3 } };
  const known = { kinds: { walk: { mirrored: true }, hang: { mirrored: false } } };
  assert.equal(mirrored(pour).target.along_m, 1);
  assert.deepEqual(mirrored(mirrored(pour)), pour);
  assert.equal(otherWord(known, { kind: 'hang', heading_deg: 0 }), null);
  assert.equal(otherWord(known, { kind: 'walk', heading_deg: 0 }), 'antispinward');
});
