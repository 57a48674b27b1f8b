// A habitat becomes another shape; floors that motions stand on; names.

import assert from 'node:assert/strict';
import test from 'node:test';
import { fieldOf, withoutDefaults } from '../../static/state/fields.js';
import { floorName, groundOf, keepFloors, reshape, shapeOf } from '../../static/state/shapes.js';
import { FIELDS, SCENE } from './_scene.mjs';

const floor = { length_m: 10, width_m: 6, ceiling_m: 3 };
const SHAPES = {
  cylinder: {
    label: 'Cylinder',
    ground: { name: 'deck' },
    fields: ['radius_m', 'spin_rpm', 'spin_ramp', 'axial_thrust_m_s2', 'decks', 'width_m', 'hub_radius_m'],
    new: { shape: 'cylinder' },
  },
  torus: {
    label: 'Torus',
    fields: ['radius_m', 'spin_rpm', 'spin_ramp', 'axial_thrust_m_s2', 'decks', 'tube_radius_m'],
    new: { shape: 'torus', tube_radius_m: 8 },
  },
  pods: { label: 'Pods on arms', fields: ['radius_m', 'spin_rpm', 'floors'], new: { shape: 'pods', floors: [floor, floor, floor] } },
  tether: { label: 'Tether pair', ground: { name: 'floor' }, fields: ['radius_m', 'spin_rpm', 'floors'], new: { shape: 'tether', floors: [floor, floor] } },
};
const fields = { ...FIELDS, shapes: SHAPES };
const scene = (habitat, floors = [0, 0]) => ({
  ...structuredClone(SCENE),
  habitat,
  motions: SCENE.motions.map((motion, i) => ({ ...motion, place: { ...motion.place, floor: floors[i] } })),
});

test('what both shapes have is kept, the rest is the new shape’s', () => {
  const draft = scene({ radius_m: 56, spin_rpm: 3, width_m: 14, decks: [{ name: 'Galley', radius_m: 52 }], axial_thrust_m_s2: 0.2 });
  reshape(draft, 'habitat', 'torus', fields);
  assert.deepEqual(draft.habitat, {
    shape: 'torus',
    radius_m: 56,
    spin_rpm: 3,
    decks: [{ name: 'Galley', radius_m: 52 }],
    axial_thrust_m_s2: 0.2,
    tube_radius_m: 8,
  });
  reshape(draft, 'habitat', 'cylinder', fields);
  assert.equal(draft.habitat.tube_radius_m, undefined);
  assert.equal(draft.habitat.axial_thrust_m_s2, 0.2);
});

test('the catalogue’s own ready parts are never shared with a scene', () => {
  const draft = scene({ radius_m: 24, spin_rpm: 4 });
  reshape(draft, 'habitat', 'pods', fields);
  draft.habitat.floors[0].length_m = 99;
  assert.equal(SHAPES.pods.new.floors[0].length_m, 10);
});

test('a small ring gets a tube it has room for', () => {
  const draft = scene({ radius_m: 10, spin_rpm: 3 });
  reshape(draft, 'habitat', 'torus', fields);
  assert.equal(draft.habitat.tube_radius_m, 2.5);
});

test('a motion on a floor that is gone comes to the first one', () => {
  const draft = scene({ shape: 'pods', radius_m: 24, spin_rpm: 4, floors: [floor, floor, floor] }, [1, 2]);
  reshape(draft, 'habitat', 'tether', fields);
  assert.deepEqual(
    draft.motions.map(motion => motion.place.floor),
    [1, 0],
  );
});

test('with a floor taken away those behind it move up', () => {
  const draft = scene({ shape: 'pods', radius_m: 24, spin_rpm: 4, floors: [floor, floor] }, [1, 2]);
  keepFloors(draft, index => (index === 1 ? 0 : index - 1));
  assert.deepEqual(
    draft.motions.map(motion => motion.place.floor),
    [0, 1],
  );
});

test('a habitat beside the scene’s own is reshaped alone', () => {
  const draft = scene({ radius_m: 56, spin_rpm: 3 });
  draft.compare = [{ name: 'ring', habitat: { radius_m: 100, spin_rpm: 2, width_m: 5 } }];
  reshape(draft, 'compare.0.habitat', 'torus', fields);
  assert.deepEqual(draft.compare[0].habitat, { shape: 'torus', radius_m: 100, spin_rpm: 2, tube_radius_m: 8 });
  assert.equal(shapeOf(draft.habitat), 'cylinder');
});

test('words of a shape', () => {
  assert.equal(groundOf(fields, { shape: 'tether' }).name, 'floor');
  assert.equal(groundOf(fields, {}).name, 'deck');
  assert.equal(floorName({ name: '' }, 1), 'Floor 2');
});

test('a habitat beside has the same fields as the scene’s own, and loses the same defaults in a link', () => {
  assert.equal(fieldOf(FIELDS, 'compare.2.habitat.radius_m').label, 'Radius');
  const compare = [{ name: 'wide', habitat: { shape: 'cylinder', radius_m: 224, spin_rpm: 1.5, width_m: null } }];
  assert.deepEqual(withoutDefaults(FIELDS, { ...SCENE, compare }).compare, [{ name: 'wide', habitat: { radius_m: 224, spin_rpm: 1.5 } }]);
  assert.equal('compare' in withoutDefaults(FIELDS, { ...SCENE, compare: [] }), false);
});

test('a link keeps floors in their places, and what a motion’s nested parts say beside their defaults', () => {
  const floors = [
    { name: '', radius_m: null, azimuth_deg: null, length_m: 10 },
    { name: 'Far', radius_m: 20, azimuth_deg: null, length_m: 12 },
  ];
  const motions = [
    { kind: 'throw', place: { height_m: 1, floor: 1 }, body: 'handball', bounces: 3, ball_spin_rpm: 60, ball_spin_axis: [0, 0, -1] },
    {
      kind: 'roll',
      place: { along_m: 0, height_m: 0, axial_m: 0, floor: 0 },
      start: 'rolling',
      ramp: { slope_deg: 10, heading_deg: 0, length_m: 4 },
      body: 'handball',
    },
    { kind: 'roll', ramp: null, bounces: 0, ball_spin_axis: null, body: 'handball' },
  ];
  const kept = withoutDefaults(FIELDS, { ...SCENE, habitat: { shape: 'pods', radius_m: 24, spin_rpm: 4, floors }, motions });
  assert.deepEqual(kept.habitat, { shape: 'pods', radius_m: 24, spin_rpm: 4, floors: [{}, { name: 'Far', radius_m: 20, length_m: 12 }] });
  assert.deepEqual(kept.motions, [
    { kind: 'throw', place: { height_m: 1, floor: 1 }, body: 'handball', bounces: 3, ball_spin_rpm: 60, ball_spin_axis: [0, 0, -1] },
    { kind: 'roll', ramp: { slope_deg: 10 }, body: 'handball' },
    { kind: 'roll', body: 'handball' },
  ]);
});
