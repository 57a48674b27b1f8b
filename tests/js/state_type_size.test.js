// The size of words on stages, lanes and map.

import assert from 'node:assert/strict';
import test from 'node:test';
import { typeFactor } from '../../static/state/type_size.js';

test('desk, room and hall are the three sizes in every usual window', () => {
  for (const window of [[1440, 900], [1280, 720], [1920, 1080]]) // biome-ignore format: a row a size
    assert.deepEqual([typeFactor('desk', ...window), typeFactor('room', ...window), typeFactor('hall', ...window)], [1, 1.35, 1.8]);
});

test('a large screen makes them larger at every choice', () => {
  assert.equal(typeFactor('desk', 3840, 2160), 2);
  assert.equal(typeFactor('hall', 3840, 2160), 3.6);
  assert.equal(typeFactor('desk', 3840, 1080), 1); // wide, but no higher
});

test('a small window takes no larger ones than fit, and never smaller ones than at a desk', () => {
  assert.equal(typeFactor('hall', 320, 180), 1);
  assert.equal(typeFactor('hall', 390, 844), 1);
  const beside = typeFactor('hall', 1024, 768);
  assert.ok(beside > 1.35 && beside < 1.8, String(beside));
});
