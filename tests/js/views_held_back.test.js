// While the room is asked, the picture does not tell what is held back: it is the same whatever the motion does after the clock's last moment.

import assert from 'node:assert/strict';
import test from 'node:test';

import { framing, seenPoints } from '../../static/views/camera_presets.js';
import { axes } from '../../static/views/framing.js';
import { asFarAsHeld } from '../../static/views/held_back.js';
import { deckAt, readModel } from '../../static/views/model.js';
import { FIELDS, UNTIL_S, answerOf } from './_wheel.mjs';

const HELD = { withheld: { motions: ['Lob'], until_s: UNTIL_S } };
const modelOf = (lands_m, high_m) => readModel(answerOf(lands_m, high_m), FIELDS);

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
