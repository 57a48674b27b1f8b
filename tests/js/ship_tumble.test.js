import assert from 'node:assert/strict';
import { test } from 'node:test';
import { changeWords } from '../../static/panels/ship/told.js';
import { asMotion, isAsAsked, mayBeAdded, tumbler } from '../../static/state/ship.js';
import { attitudeAt, leanAt } from '../../static/time/track.js';
import { craftPoints, sweptPoints } from '../../static/views/craft_reach.js';

const scene = (tumble, motions = []) => ({
  habitat: { radius_m: 5, spin_rpm: 3, spin_ramp: [[0, 0]], axial_thrust_m_s2: 1 },
  craft: { parts: [], tumble },
  motions,
  sampling: { fps: 24 },
});

test('a tumble becomes the first motion of its scene, and what cannot fly in it is named', () => {
  const draft = scene({ rates_rpm: [0.1, 0.2, 4], duration_s: 7200 }, [
    { kind: 'throw', name: 'Lob', speed_m_s: 3, bounces: 4, ball_spin_rpm: 60, ball_spin_axis: [0, 1, 0] },
    { kind: 'walk', name: 'Round' },
  ]);
  assert.equal(tumbler(draft), -1);
  const { gone, times } = asMotion(draft, { time_to_flat_s: 900, flip_period_s: 30 }, 300);
  assert.deepEqual(gone, ['Round']);
  assert.equal(times, 10);
  assert.deepEqual(draft.motions, [
    { kind: 'tumble', name: 'Tumble', about_x_rpm: 0.1, about_y_rpm: 0.2, losses_s: 30 },
    { kind: 'throw', name: 'Lob', speed_m_s: 3, bounces: 0 },
  ]);
  assert.deepEqual(draft.habitat, { radius_m: 5, spin_rpm: 4, spin_ramp: [], axial_thrust_m_s2: 0 });
  assert.deepEqual(draft.sampling, { fps: 24, duration_s: 120 });
  assert.equal(tumbler(draft), 0);
  // asked again, with other figures: the same motion, not a second one
  draft.craft.tumble = { rates_rpm: [0, 1, 4], duration_s: 50 };
  assert.equal(asMotion(draft, { time_to_flat_s: null, flip_period_s: 24.4 }, null).times, 1);
  assert.deepEqual(
    draft.motions.map(({ kind, losses_s }) => [kind, losses_s]),
    [
      ['tumble', null],
      ['throw', undefined],
    ],
  );
  assert.equal(draft.sampling.duration_s, 49);
});

test('a tumble in the scene that has other figures than are asked of the craft is told apart', () => {
  const draft = scene({ rates_rpm: [0.1, 0.2, 4], duration_s: 7200 }, []);
  const answer = { time_to_flat_s: 900, flip_period_s: 30 };
  asMotion(draft, answer, 300);
  assert.ok(isAsAsked(draft, answer, 300));
  draft.motions[0].about_y_rpm = 0.5;
  assert.ok(!isAsAsked(draft, answer, 300));
});

test('what is offered in a craft that tumbles is what can be worked out in it', () => {
  const kinds = ['drop', 'throw', 'roll', 'walk', 'tumble'];
  const offered = motions => kinds.filter(kind => mayBeAdded(motions, kind));
  assert.deepEqual(offered([{ kind: 'throw' }]), kinds);
  assert.deepEqual(offered([{ kind: 'throw' }, { kind: 'tumble' }]), ['drop', 'throw']);
});

const half = Math.SQRT1_2;
const answer = {
  grid: { fps: [1, 1], samples_per_frame: 1 },
  tumbling: { quaternion_wxyz: [1, 0, 0, 0, half, half, 0, 0, 0, -1, 0, 0], centre_m: [0, 0, 2] },
};

test('between two attitudes it is turned evenly, the short way; before and after as at the ends', () => {
  const eighth = Math.PI / 8;
  const close = (got, wanted) => got.forEach((part, k) => assert.ok(Math.abs(part - wanted[k]) < 1e-12, `${got} ${wanted}`));
  close(attitudeAt(answer, 0.5), [Math.cos(eighth), Math.sin(eighth), 0, 0]);
  close(attitudeAt(answer, 1.5), [Math.cos(3 * eighth), Math.sin(3 * eighth), 0, 0]);
  close(attitudeAt(answer, 9), [0, -1, 0, 0]);
  close([leanAt(answer, 0.5), leanAt(answer, 1), leanAt(answer, 2)], [Math.PI / 4, Math.PI / 2, Math.PI]);
  assert.equal(attitudeAt({ grid: answer.grid, tumbling: null }, 1), null);
});

test('a picture of a craft that goes over holds it however it lies', () => {
  const model = {
    answer,
    radius_m: 5,
    ground: { outline: () => [0, 0, 4, 0, 0, -4] },
    craft: { parts: [{ solid: 'rod', place_m: [0, 0, 10], axis: [0, 0, 2], length_m: 30 }] },
  };
  const reach = (points, axis) => [Math.min, Math.max].map(most => most(...points.filter((_, i) => i % 3 === axis)));
  assert.deepEqual(reach(sweptPoints(model), 0), [-23, 23]); // its far end is 23 m from its centre of mass
  assert.deepEqual(reach(sweptPoints(model), 2), [-21, 25]);
  assert.deepEqual(reach(craftPoints(model), 2), [-5, 25]);
  assert.deepEqual(reach(craftPoints(model), 0), [0, 0]);
});

test('of a change one sentence is read out, and how many answers more changed', () => {
  const before = { mass: ['It weighs 60 t.', 'It holds.'], joint: ['Slow.'], slew: ['Far.'] };
  assert.equal(changeWords(null, before, 'Wick'), 'Wick. It weighs 60 t.');
  assert.equal(changeWords(before, before, 'Wick'), '');
  assert.equal(changeWords(before, { ...before, joint: ['Fast.'] }, 'Wick'), 'Wick now: Fast.');
  assert.equal(
    changeWords(before, { ...before, mass: ['It weighs 70 t.', 'It holds.'], slew: ['Near.'] }, 'Wick'),
    'Wick now: It weighs 70 t. And 1 more answer changed.',
  );
  assert.equal(changeWords(before, { ...before, rock: ['Apart.'] }, 'Wick'), 'Wick now: Apart.');
});
