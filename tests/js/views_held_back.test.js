// While the room is asked, the picture does not tell what is held back: it is the same whatever the motion does after the clock's last moment.

import assert from 'node:assert/strict';
import test from 'node:test';

import { framing, seenPoints } from '../../static/views/camera_presets.js';
import { axes } from '../../static/views/framing.js';
import { asFarAsHeld } from '../../static/views/held_back.js';
import { deckAt, readModel } from '../../static/views/model.js';

const RADIUS_M = 56,
  UNTIL_S = 1,
  END_S = 3,
  FPS = 24;
const SPIN = 0.1;
const seat = (yaw_deg, tilt_deg, fov_deg = 30) => ({ broad: { yaw_deg, tilt_deg, fov_deg }, square: { yaw_deg, tilt_deg, fov_deg } });
const CAMERAS = {
  margin: 0.06, broad: 1.6, square: 1, level_over_deg: 20, section_over_deg: 10, level_whole_deg: 30,
  seats: { a: seat(20, 15), b: seat(0, 12), c: seat(0, 88), d: seat(0, 2), e: seat(10, 15), w: seat(0, 4) },
}; // biome-ignore format: a table
const FIELDS = { cameras: CAMERAS, shapes: { cylinder: {} }, kinds: { throw: { stage: { attended_m: 0.4, no_arrows: [] } } } };
const DRAWN = { section_m: null, level: false, half_m: 10, hub_m: 4, outline_m: ring() };
const HELD = { withheld: { motions: ['Lob'], until_s: UNTIL_S } };

function ring() {
  return Array.from({ length: 36 }, (_, k) => [RADIUS_M * Math.cos(k / 5.73), RADIUS_M * Math.sin(k / 5.73), 0]).flat();
}

// Up and along from the deck until the clock's last moment, and then down to `lands_m`, so high.
function modelOf(lands_m, high_m) {
  const place = time_s => {
    const rest = Math.max(0, (time_s - UNTIL_S) / (END_S - UNTIL_S));
    return {
      along_m: 0.5 * Math.min(time_s, UNTIL_S) + rest * (lands_m - 0.5 * UNTIL_S),
      height_m: 1.5 + Math.min(time_s, UNTIL_S) + high_m * rest * (1 - rest) - 2.5 * rest,
    };
  };
  const turned = ({ along_m, height_m }, turn) => {
    const angle = along_m / RADIUS_M + turn;
    return [(RADIUS_M - height_m) * Math.cos(angle), (RADIUS_M - height_m) * Math.sin(angle), 0];
  };
  const event = (kind, time_s) => ({
    kind,
    time_s,
    ...place(time_s),
    axial_m: 0,
    rotating_m: turned(place(time_s), 0),
    inertial_m: turned(place(time_s), SPIN * time_s),
  });
  const times = Array.from({ length: END_S * FPS + 1 }, (_, k) => k / FPS);
  const landing = { time_s: END_S, along_m: lands_m, axial_m: 0, way: { of_turn: lands_m / (2 * Math.PI * RADIUS_M) } };
  const motion = {
    name: 'Lob', kind: 'throw', first: 0, landing, events: [event('release', 0), event('deck', END_S)],
    along_m: times.map(t => place(t).along_m), height_m: times.map(t => place(t).height_m), axial_m: times.map(() => 0),
    rotating_m: times.flatMap(t => turned(place(t), 0)), inertial_m: times.flatMap(t => turned(place(t), SPIN * t)),
  }; // biome-ignore format: a table
  const answer = {
    scene: { habitat: { radius_m: RADIUS_M }, motions: [{ body: { diameter_m: 0.2 }, speed_m_s: 5, heading_deg: 0 }] },
    habitat: { omega_rad_s: SPIN }, drawn: [DRAWN], grid: { fps: [FPS, 1], samples_per_frame: 1 },
    angle_rad: times.map(t => SPIN * t), spin_rad_s: times.map(() => SPIN), time_s: times, motions: [motion],
  }; // biome-ignore format: a table
  return readModel(answer, FIELDS);
}

function rigOf(frame, preset, model, view, size = { width: 900, height: 500 }) {
  const stage = { frame, ...size, inset: { top: 0.1, bottom: 0.1 }, view, companion: true };
  const { rig, rigAt } = framing(preset, stage, model, model.motions, model.motions[0]);
  return rig ?? rigAt(0.4);
}

const STAGES = ['aboard', 'outside'].flatMap(frame => ['a', 'b', 'c', 'd', 'e', 'w'].map(preset => [frame, preset]));

test('held back: framed alike whether it lands spinward or antispinward, rises or falls', () => {
  const one = modelOf(9, 2),
    mirrored = modelOf(-9, 30);
  for (const [frame, preset] of STAGES) assert.deepEqual(rigOf(frame, preset, one, HELD), rigOf(frame, preset, mirrored, HELD), `${frame} ${preset}`);
  for (const preset of ['a', 'b', 'c'])
    assert.notDeepEqual(rigOf('aboard', preset, one, { withheld: null }), rigOf('aboard', preset, mirrored, { withheld: null }), preset);
});

test('guesses find room as far on one side as on the other, and within the picture', () => {
  const model = modelOf(9, 2),
    [m] = asFarAsHeld(model, model.motions, HELD),
    { guesses_m } = m.held;
  assert.deepEqual([guesses_m[0], guesses_m.at(-1)], [-20, 20]); // 1.6 times 9 m, and that rounded up
  for (const [frame, preset] of [['aboard', 'b'], ['outside', 'b'], ['outside', 'd'], ['aboard', 'a']]) {
    const rig = rigOf(frame, preset, model, HELD),
      { right, up, back } = axes(rig),
      tall = Math.tan((rig.fov * Math.PI) / 360);
    for (const along_m of guesses_m) {
      const p = deckAt(model, frame, along_m, 0, 0, UNTIL_S, {});
      const off = [p.x, p.y, p.z].map((c, k) => c - rig.target[k]),
        [x, y, z] = [right, up, back].map(axis => axis.reduce((sum, c, k) => sum + c * off[k], 0));
      const deep = rig.distance - z;
      assert.ok(Math.abs(x) <= deep * tall * 1.8 && Math.abs(y) <= deep * tall, `${frame} ${preset} ${along_m}`);
    }
  } // biome-ignore format: pairs
});

test('what is told, or may be played to its end, is framed to its end', () => {
  const model = modelOf(9, 2),
    { motions } = model;
  for (const view of [{ withheld: null }, { withheld: { motions: ['Lob'], until_s: null } }, { withheld: { motions: ['Another'], until_s: 0 } }, undefined])
    assert.equal(asFarAsHeld(model, motions, view)[0], motions[0]);
  const before = asFarAsHeld(model, motions, { withheld: { motions: ['Lob'], until_s: 0 } });
  assert.equal(before[0].lines.aboard.time.at(-1), 0);
  assert.ok(seenPoints({ frame: 'outside' }, model, before).every(Number.isFinite));
});
