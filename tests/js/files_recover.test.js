// Which files the page opens again. The bytes are made here, as the formats' own standards say.

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { sceneIn } from '../../static/files/recover.js';

const SCENE = { rimfall: 1, title: 'Läuft "zwei" & <drei> \\ 🚀', motions: [] };
const bytes = text => new TextEncoder().encode(text).buffer;

test('notes, arrays and answers carry it under scene', () => {
  assert.deepEqual(sceneIn(bytes(JSON.stringify({ program: 'x', scene: SCENE }))), SCENE);
});

test('glTF carries it in the extras of its asset', () => {
  const json = new TextEncoder().encode(JSON.stringify({ asset: { version: '2.0', extras: { scene: SCENE } } }));
  const file = new Uint8Array(20 + json.length);
  const view = new DataView(file.buffer);
  ['glTF', 'JSON'].forEach((sign, k) => [...sign].forEach((c, i) => view.setUint8(16 * k + i, c.charCodeAt(0))));
  view.setUint32(4, 2, true);
  view.setUint32(8, file.length, true);
  view.setUint32(12, json.length, true);
  file.set(json, 20);
  assert.deepEqual(sceneIn(file.buffer), SCENE);
});

test('OpenUSD carries it in the data of its layer', () => {
  const said = JSON.stringify(JSON.stringify({ scene: SCENE }));
  assert.deepEqual(sceneIn(bytes(`#usda 1.0\n(\n    customLayerData = {\n        string rimfall = ${said}\n    }\n)\n`)), SCENE);
});

test('a plot carries it in its metadata', () => {
  const said = JSON.stringify(SCENE).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  assert.deepEqual(sceneIn(bytes(`<svg xmlns="http://www.w3.org/2000/svg"><metadata>${said}</metadata></svg>`)), SCENE);
});

test('anything else holds none', () => {
  for (const text of ['', '{', '[1]', '{"scene": 3}', 'glTF', '#usda 1.0', '<svg></svg>', 'frame,time_s']) {
    assert.equal(sceneIn(bytes(text)), null);
  }
});
