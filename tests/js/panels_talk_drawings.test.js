// Small drawings of a talk's steps: without what a step hides, one answer a scene, asked for again where it did not come.

import assert from 'node:assert/strict';
import test from 'node:test';

import { createDrawings } from '../../static/panels/talk/drawings.js';
import { vignetteOf } from '../../static/views/vignette.js';
import { FIELDS, answerOf } from './_wheel.mjs';

const settled = () => new Promise(setImmediate);

test('steps of one scene that hide other motions have a drawing each, of one answer', async () => {
  const asked = [];
  let refused = true,
    told = 0;
  const scene = { title: 'Wheel' };
  const drawings = createDrawings({
    store: { document: {}, stale: false },
    trace: async one => {
      asked.push(one.title);
      if (refused) throw new Error('away');
      return answerOf(9, 2);
    },
    draw: (answer, hidden) => vignetteOf(answer, FIELDS, hidden),
    changed: () => (told += 1),
  });
  const steps = [{ scene }, { scene, hidden: ['Lob'] }];
  const seen = () => steps.map(step => drawings.of(step)?.paths.length ?? null);
  assert.deepEqual(seen(), [null, null]);
  await settled();
  refused = false;
  assert.deepEqual([seen(), told], [[null, null], 0]);
  await settled();
  assert.deepEqual([seen(), asked, told], [[1, 0], ['Wheel', 'Wheel'], 1]);
});
