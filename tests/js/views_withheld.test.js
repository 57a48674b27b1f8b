// What a talk holds back is not drawn, and how two stages share their room while presenting.

import assert from 'node:assert/strict';
import test from 'node:test';
import { halvesOf } from '../../static/views/overlay.js';
import { Paths } from '../../static/views/paths.js';
import { stageWords } from '../../static/views/spoken.js';

test('what is held back: of its path only what is flown, no beads, no landing, no plain gravity', () => {
  const lob = (name, i) => ({ name, i, lines: { aboard: { points: [] }, companion: { points: [], time: [] } }, style: {}, motion: { events: [] } });
  const shared = { uNow: { value: 0.4 } };
  const given = {};
  const entries = new Map();
  const paths = Object.assign(Object.create(Paths.prototype), {
    shared,
    frame: 'aboard',
    pool: new Map(),
    sized: {},
    entry: m => entries.get(m.name) ?? entries.set(m.name, entryOf()).get(m.name),
    readBeads: (_, motions) => Object.assign(given, { beads: motions.map(m => m.name) }),
    readMarks: (_, motions) => Object.assign(given, { marks: motions.map(m => m.name) }),
  });
  const [out, back] = [lob('Lob out', 0), lob('Lob back', 1)];
  paths.read({}, [out, back], { companion: true, beads_s: 0.25, withheld: { motions: ['Lob out'] } });
  assert.equal(entries.get('Lob out').line.uniforms.uTo, shared.uNow); // to now, and no farther
  assert.ok(entries.get('Lob back').line.uniforms.uTo.value > 1e6);
  assert.deepEqual(given, { beads: ['Lob back'], marks: ['Lob back'] });
  assert.equal(paths.companionLine(out), null);
  assert.ok(paths.companionLine(back));
  paths.read({}, [out, back], { companion: true, beads_s: 0.25, withheld: null });
  assert.ok(entries.get('Lob out').line.uniforms.uTo.value > 1e6);
  assert.deepEqual(given.marks, ['Lob out', 'Lob back']);
});

function entryOf() {
  const ribbon = () => ({ mesh: {}, material: {}, uniforms: { uAlpha: {}, uCasing: {} }, set() {} });
  return { line: ribbon(), plain: ribbon() };
}

test('a stage says where it is, not that it has landed', () => {
  const path = { count: 2, time_s: [0, 1], height_m: [1, 0], along_m: [0, 5], axial_m: [0, 0], starts_s: 0, ends_s: 1 };
  const model = { name: null, facts: { ground: { level: false } }, ground: { spinward: (_, to) => to.along_m } };
  const lob = { name: 'Lob out', starts_s: 0, ends_s: 1, path, release: {}, motion: { end: 'landed' } };
  const says = isHeld => stageWords(model, [lob], 'aboard', 'b', 1, 'si', '', isHeld);
  assert.match(
    says(() => false),
    /landed/,
  );
  assert.doesNotMatch(
    says(name => name === 'Lob out'),
    /landed/,
  );
});

test('swapped, each stage has the other’s room; merged, one fills and the other is small in it', () => {
  const room = { split: 'beside', alone: null };
  const [plain, swapped] = [halvesOf(1920, 700, room), halvesOf(1920, 700, { ...room, swapped: true })];
  assert.deepEqual([swapped.aboard, swapped.outside], [plain.outside, plain.aboard]);
  for (const [more, fills, over] of [
    [{}, 'aboard', 'outside'],
    [{ swapped: true }, 'outside', 'aboard'],
    [{ alone: 'outside' }, 'outside', 'aboard'],
  ]) {
    // biome-ignore format: a row each
    const merged = halvesOf(1920, 700, { ...room, merged: true, ...more });
    assert.equal(merged.over, over);
    assert.deepEqual([merged[fills].width, merged[fills].height], [1920, 700]);
    const { x, y, width, height } = merged[over];
    assert.ok(x > 0 && y > 0 && x + width < 1920 && y + height < 700 && width < 700);
  }
  assert.equal(halvesOf(390, 500, { ...room, merged: true }).over, 'outside');
});
