import assert from 'node:assert/strict';
import { test } from 'node:test';
import { answerWords } from '../../static/panels/ship/saving.js';
import { askBlock, asSolid, craftRequest, givenOf, leaveBlock, movedPlace, newPart, removePart, rename, withCraft } from '../../static/state/ship.js';

const CATALOGUE = {
  solids: {
    box: { fields: ['axis', 'size_m'], new: { name: 'box', group: 'still', solid: 'box', mass_kg: 5000, size_m: [8, 6, 4] } },
    cylinder: {
      fields: ['axis', 'radius_m', 'length_m'],
      new: { name: 'cylinder', group: 'still', solid: 'cylinder', mass_kg: 5000, radius_m: 5, length_m: 20 },
    },
  },
};
const craft = () => ({
  parts: [
    { name: 'ring', group: 'turning', solid: 'cylinder', mass_kg: 9000, radius_m: 56, length_m: 14, axis: [0, 0, 1] },
    { name: 'box', group: 'still', solid: 'box', mass_kg: 100, size_m: [1, 2, 3], place_m: [1, 0, 2] },
  ],
  deploy: { parts: [{ name: 'box', place_m: [0, 0, 0] }] },
});

test('the question takes the habitat and the craft, and nothing is asked without one', () => {
  const habitat = { radius_m: 56, spin_rpm: 3 };
  assert.equal(craftRequest({ habitat, motions: [] }), null);
  assert.equal(craftRequest({ habitat, motions: [], craft: null }), null);
  assert.deepEqual(craftRequest({ title: 'a', habitat, motions: [{ kind: 'drop' }], craft: craft() }), { rimfall: 1, habitat, motions: [], craft: craft() });
});

test('a craft to start from brings the radius and spin of its habitat', () => {
  const draft = { habitat: { radius_m: 56, spin_rpm: 3, width_m: 14 } };
  withCraft(draft, { craft: craft(), radius_m: 40, spin_rpm: 4 });
  assert.deepEqual(draft, { habitat: { radius_m: 40, spin_rpm: 4, width_m: 14 }, craft: craft() });
});

test('a new part has a name that no other has', () => {
  assert.equal(newPart(CATALOGUE, 'box', craft().parts).name, 'box 2');
  assert.equal(newPart(CATALOGUE, 'cylinder', craft().parts).name, 'cylinder');
});

test('another solid keeps what both have', () => {
  const before = { ...craft().parts[0], place_m: [1, 2, 3] };
  assert.deepEqual(asSolid(CATALOGUE, 'box', before), {
    name: 'ring',
    group: 'turning',
    solid: 'box',
    mass_kg: 9000,
    size_m: [8, 6, 4],
    axis: [0, 0, 1],
    place_m: [1, 2, 3],
  });
});

const block = changes => ({ name: 'deploy', new: { parts: [{ name: '', place_m: [0, 0, 0] }] }, beside: [], at_rim: [], ...changes });

test('a block that names a part has it as it is, and leaves the catalogue alone', () => {
  const one = block();
  const first = { parts: craft().parts },
    second = { parts: craft().parts.toReversed() };
  askBlock(first, one, CATALOGUE, 56);
  assert.deepEqual(first.deploy, { parts: [{ name: 'ring', place_m: [0, 0, 0], axis: [0, 0, 1], radius_m: 56, length_m: 14 }] });
  askBlock(second, one, CATALOGUE, 56);
  assert.deepEqual(second.deploy, { parts: [{ name: 'box', place_m: [1, 0, 2], axis: [0, 0, 1], size_m: [1, 2, 3] }] });
  assert.equal(one.new.parts[0].name, '');
});

test('what is new stands at the rim of this habitat, and comes and goes with what is asked with it', () => {
  const loads = block({
    name: 'loads',
    new: [{ name: 'crew', place_m: [20, 0, 0] }],
    at_rim: ['0.place_m.0', 'arm_m'],
    beside: [{ name: 'ballast', new: { planes_m: [-3, 3] } }],
  });
  const asked = craft();
  askBlock(asked, loads, CATALOGUE, 40);
  assert.deepEqual([asked.loads, asked.ballast], [[{ name: 'crew', place_m: [40, 0, 0] }], { planes_m: [-3, 3] }]);
  leaveBlock(asked, loads);
  assert.deepEqual([asked.loads, asked.ballast], [null, null]);
});

test('of fields of which one is given, that one; the first where none is', () => {
  assert.equal(givenOf({ rate: null, torque: 4 }, ['rate', 'torque']), 'torque');
  assert.equal(givenOf({}, ['rate', 'torque']), 'rate');
});

test('a craft may come into a habitat that keeps its radius and spin', () => {
  const draft = { habitat: { radius_m: 40, spin_rpm: 3.343 } };
  withCraft(draft, { craft: craft(), radius_m: 56, spin_rpm: 3 }, true);
  assert.deepEqual(draft, { habitat: { radius_m: 40, spin_rpm: 3.343 }, craft: craft() });
});

test('the answers to copy are every question with its sentences, and the caution', () => {
  const answer = { rimfall_craft: 1, mass: { question: 'What?', says: ['This.', 'That.'] }, slew: null, caution: 'Mind.' };
  assert.equal(answerWords(answer), 'What?\nThis. That.\n\nMind.');
});

test('a part renamed is so in every block; one taken away is in none', () => {
  const renamed = craft();
  rename(renamed, 1, 'crate');
  assert.deepEqual([renamed.parts[1].name, renamed.deploy.parts[0].name], ['crate', 'crate']);
  const fewer = craft();
  removePart(fewer, 1);
  assert.equal(fewer.parts.length, 1);
  assert.equal(fewer.deploy, null);
});

test('a handle moves a part in the plane of its view', () => {
  assert.deepEqual(movedPlace('side', [1, 2, 3], 10, -0.5), [0.5, 2, 13]);
  assert.deepEqual(movedPlace('end', [1, 2, 3], 10, -0.5), [11, 1.5, 3]);
});
