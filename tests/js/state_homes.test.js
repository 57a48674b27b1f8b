// The habitats of a scene: what a second one is at first, which of them is served, and what each is called.

import assert from 'node:assert/strict';
import test from 'node:test';
import { furtherHome, homeAnswer, homeBeside, homeWords, servedHome } from '../../static/state/homes.js';
import { FIELDS, SCENE } from './_scene.mjs';

const SHAPES = { cylinder: { label: 'Cylinder' }, torus: { label: 'Torus' } };
const fields = { ...FIELDS, shapes: SHAPES };
const plain = text => text.replaceAll('\u00a0', ' ');
const gravity = ({ radius_m: radius, spin_rpm: spin }) => radius * spin * spin;

test('a second habitat is twice as large, of the same gravity, and its decks are as high over the ground', () => {
  const decks = [
    { name: 'Rim', radius_m: 56 },
    { name: 'Upper', radius_m: 52 },
  ];
  const own = { ...SCENE.habitat, decks, spin_ramp: [{ time_s: 10, spin_rpm: 1 }] };
  const { name, habitat } = furtherHome({ document: { ...SCENE, habitat: own }, fields });
  assert.equal(name, 'Second habitat');
  assert.equal(habitat.radius_m, 112);
  assert.ok(Math.abs(gravity(habitat) / gravity(own) - 1) < 1e-4);
  assert.ok(Math.abs(habitat.spin_ramp[0].spin_rpm / habitat.spin_rpm - 1 / 3) < 1e-4);
  assert.deepEqual(
    habitat.decks.map(deck => habitat.radius_m - deck.radius_m),
    [0, 4],
  );
  assert.equal(own.decks[0].radius_m, 56, 'the scene’s own stays');
});

test('where twice as large is too large it is half as large', () => {
  const { habitat } = furtherHome({ document: { ...SCENE, habitat: { radius_m: 80_000, spin_rpm: 0.1 } }, fields });
  assert.equal(habitat.radius_m, 40_000);
  assert.ok(Math.abs(gravity(habitat) / 800 - 1) < 1e-4);
});

test('each further one has a name of its own', () => {
  const named = (...names) => furtherHome({ document: { ...SCENE, compare: names.map(name => ({ name })) }, fields }).name;
  assert.equal(named('Second habitat'), 'Third habitat');
  assert.equal(named('Big wheel', 'Third habitat'), 'Second habitat');
});

const SECOND = { name: 'Second habitat', habitat: { shape: 'torus', radius_m: 112, spin_rpm: 2.12132 } };
const store = {
  fields,
  document: { ...SCENE, compare: [SECOND] },
  view: { units: 'si', compare: 'beside', beside: null, served: 1 },
  answer: {
    scene: { habitat: SCENE.habitat },
    habitat: { period_s: 20 },
    motions: ['own'],
    compare: [{ name: SECOND.name, habitat_part: SECOND.habitat, habitat: { period_s: 28 }, motions: ['other'] }],
  },
};

test('which is served, and which stands in the place of Outside', () => {
  assert.equal(servedHome(store), 1);
  assert.equal(servedHome({ ...store, document: SCENE }), 0, 'it is gone');
  assert.equal(homeBeside(store), 1);
  assert.equal(homeBeside({ ...store, view: { ...store.view, compare: 'over' } }), null);
  assert.equal(homeBeside({ ...store, document: SCENE }), null);
});

test('the answer of one, and its name with its radius and spin', () => {
  const { scene, habitat, motions } = homeAnswer(store.answer, 1);
  assert.deepEqual([scene.habitat.radius_m, habitat.period_s, motions], [112, 28, ['other']]);
  assert.equal(homeAnswer(store.answer, 2), null);
  assert.equal(plain(homeWords(store, 0)), 'This habitat, 56.0 m, 3.00 rpm');
  assert.equal(plain(homeWords(store, 1)), 'Second habitat, Torus, 112 m, 2.12 rpm');
  assert.equal(plain(homeWords({ ...store, view: { ...store.view, units: 'us' } }, 0)), 'This habitat, 184 ft, 3.00 rpm');
});
