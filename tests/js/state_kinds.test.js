// The kinds of motion on the page: each has a place among the groups, a sentence and a word; its fields are its own where they differ.

import assert from 'node:assert/strict';
import test from 'node:test';
import { SENTENCES } from '../../static/panels/moves/sentences.js';
import { fieldOf, readAt, withoutDefaults } from '../../static/state/fields.js';
import { FINDINGS, showFound } from '../../static/state/findings.js';
import { isAttended, kindGroups, kindWords, movesAPerson } from '../../static/state/kinds.js';
import { mirrored, otherWord } from '../../static/state/mirror.js';
import { createStore } from '../../static/state/store.js';
import { motionsWords } from '../../static/state/words.js';

const KINDS = ['drop', 'throw', 'pour', 'roll', 'stand', 'hang', 'jump', 'walk', 'lift', 'let_go', 'approach'];
const known = Object.fromEntries(KINDS.map(kind => [kind, { label: kind }]));
const speed = { label: 'Speed', default: 0 },
  pace = { label: 'Pace', default: 1.4 };
const fields = { fields: { 'motions.*.speed_m_s': speed, motions: {} }, kinds: { throw: { own: {} }, walk: { own: { speed_m_s: pace } } } };
const document = { rimfall: 1, habitat: {}, motions: [{ kind: 'throw', speed_m_s: 0 }, { kind: 'walk', speed_m_s: 0 }, { kind: 'walk', speed_m_s: 1.4 }] };

test('every kind is in one group, and one nobody placed comes last', () => {
  assert.deepEqual(kindGroups(known).flatMap(([, of]) => of).sort(), [...KINDS].sort());
  assert.deepEqual(kindGroups({ drop: {}, juggle: {} }), [['Things', ['drop']], ['More', ['juggle']]]);
});

test('every kind has a sentence, and every finding a word, a unit and a term', () => {
  assert.deepEqual(Object.keys(SENTENCES).sort(), [...KINDS].sort());
  for (const told of Object.values(FINDINGS).flat()) assert.ok(told.length === 4 && told.every(part => typeof part === 'string'), told[0]);
});

test('what pushes sideways says which way, and has no sign', () => {
  const push = value => showFound('sideways_m_s2', value, 'm/s²', 'si').replace('\u00a0', ' ');
  assert.deepEqual([0.52, -0.52, 0].map(push), ['0.520 m/s² spinward', '0.520 m/s² antispinward', '0 m/s²']);
  assert.equal(showFound('lean_deg', -3, '°', 'si'), '−3.00°');
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
  assert.equal(kindWords('drop', 'Drop').add, 'a drop');
  assert.equal(kindWords('approach', 'Approach').add, 'an approach');
  assert.equal(motionsWords([{ kind: 'stand' }, { kind: 'stand' }], known), 'two things on tables');
  assert.equal(motionsWords([{ kind: 'let_go' }], known), 'one person letting go');
  assert.equal(motionsWords([{ kind: 'approach' }, { kind: 'approach' }], known), 'two approaches');
});

test('who moves is not also who watches', () => {
  for (const kind of KINDS) assert.ok(!(movesAPerson(kind) && isAttended(kind)), kind);
  assert.ok(isAttended('hang') && !isAttended('approach'));
});

test('a sentence follows what the motion has', () => {
  assert.match(SENTENCES.walk({ speed_m_s: 1.4 }), /^Walks at/);
  assert.match(SENTENCES.walk({ speed_m_s: 4 }), /^Runs at/);
  assert.match(SENTENCES.walk({ speed_m_s: 1, climb_deg: 30 }), /^Climbs at .*\{climb_deg\}/);
  assert.match(SENTENCES.jump({ elevation_deg: 90 }), /straight up\.$/);
  assert.match(SENTENCES.jump({ elevation_deg: 60, carried: { speed_m_s: 3 } }), /on the run at/);
  assert.doesNotMatch(SENTENCES.lift({ acceleration_m_s2: null }), /gaining/);
  assert.match(SENTENCES.pour({ target: {}, tilt: [{}] }), /tilting lip.*cup/);
  assert.match(SENTENCES.hang({ first_angle_deg: 0, speed_m_s: 0 }), /at rest/);
});

test('the mirror image of a pour has its cup on the other side, and of a hanging thing there is none', () => {
  const pour = { kind: 'pour', heading_deg: 0, place: { along_m: 2 }, target: { along_m: 3 } };
  assert.equal(mirrored(pour).target.along_m, 1);
  assert.deepEqual(mirrored(mirrored(pour)), pour);
  assert.equal(otherWord({ kind: 'hang', heading_deg: 0 }), null);
  assert.equal(otherWord({ kind: 'walk', heading_deg: 0 }), 'antispinward');
});
