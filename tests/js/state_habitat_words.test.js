// What the page says of a habitat's gravity: felt is felt, thrust and the room's gravity in it, and the spin's alone is outward.

import { test } from 'node:test';
import assert from 'node:assert/strict';
import { sizeWords, stageDirection } from '../../static/state/habitat_words.js';

const across = ['along the axis', 'back along the axis'];
const shape = (name, rest = {}) => ({
  thing: 'A thing of {radius} radius',
  weighed: 'deck',
  fades: 'It fades.',
  ground: { name, across, level: false },
  ...rest,
});
const fields = {
  shapes: {
    cylinder: shape('deck'),
    pods: shape('floor'),
    turntable: shape('turntable', { ground: { name: 'turntable', across: ['outward', 'inward'], level: true } }),
  },
};
const STILL = { deck_gravity_g: 0, felt_g: 0, felt_lean_deg: null, rim_speed_m_s: 0, period_s: null };
const TURNING = { deck_gravity_g: 0.564, felt_g: 0.599, felt_lean_deg: 19.8, rim_speed_m_s: 17.6, period_s: 20 };

function said(habitat, part) {
  const store = { fields, view: { units: 'si' }, answer: { habitat, scene: { habitat: { radius_m: 56, spin_rpm: 3, spin_ramp: [], ...part } } } };
  return [stageDirection(store), sizeWords(store)].map(text => text.replaceAll('\u00a0', ' '));
}

test('without spin only a habitat without thrust has no gravity', () => {
  const [direction, size] = said(STILL, { axial_thrust_m_s2: 0 });
  assert.match(direction, /stands still: no gravity anywhere in it\.$/);
  assert.match(size, /without spin there is no gravity/);
  const thrust = said({ ...STILL, felt_g: 0.204, felt_lean_deg: 90 }, { axial_thrust_m_s2: 2 });
  assert.match(thrust[0], /stands still: only its thrust is felt, 0\.204 g, back along the axis\.$/);
  assert.match(thrust[1], /only the thrust is felt, 0\.204 g, back along the axis/);
});

test('under thrust what is felt is told as felt, and what the spin gives as outward', () => {
  for (const name of ['cylinder', 'pods']) {
    const [direction, size] = said(TURNING, { shape: name, axial_thrust_m_s2: -2 });
    assert.match(direction, /0\.599 g on the (deck|floor), thrust included/);
    assert.match(size, /gives 0\.564 g outward.*With the thrust it is 0\.599 g, and “down” leans 19\.8° along the axis\./);
  }
  const [direction, size] = said({ ...TURNING, felt_g: 0.564, felt_lean_deg: 0 }, { axial_thrust_m_s2: 0 });
  assert.match(direction, /: 0\.564 g on the deck, the rim at/);
  assert.match(size, /gives 0\.564 g; .*It fades\.$/);
});

test('on a turntable the gravity of the room is felt, and the spin pulls outward', () => {
  const bench = { ...TURNING, deck_gravity_g: 0.268, felt_g: 1.04 };
  for (const words of said(bench, { shape: 'turntable', outside_gravity_m_s2: 9.80665 })) assert.match(words, /1\.04 g is felt, 0\.268 g of it outward/);
  const floating = { ...TURNING, deck_gravity_g: 0.268, felt_g: 0.268 };
  for (const words of said(floating, { shape: 'turntable', outside_gravity_m_s2: 0 })) assert.match(words, /0\.268 g is felt, all of it outward/);
  const [direction, size] = said({ ...STILL, felt_g: 1 }, { shape: 'turntable', outside_gravity_m_s2: 9.80665 });
  assert.match(direction, /stands still\.$/);
  assert.match(size, /a table under the gravity of the room, 1\.00 g\.$/);
});
