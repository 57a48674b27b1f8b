// JSON in a file, however it is encoded; what is broken in it by line and column.

import assert from 'node:assert/strict';
import test from 'node:test';
import { jsonIn } from '../../static/files/json_file.js';

const SCENE = { title: 'Écluse 3 → 4 🚀' };
const buffer = data => Uint8Array.from(data).buffer;

test('UTF-8 and UTF-16 are read, with a byte-order mark or without', () => {
  const text = JSON.stringify(SCENE);
  const little = Buffer.from(text, 'utf16le');
  const big = Buffer.from(little).swap16();
  const files = [Buffer.from(text), [0xef, 0xbb, 0xbf, ...Buffer.from(text)], little, [0xff, 0xfe, ...little], big, [0xfe, 0xff, ...big]];
  for (const file of files) assert.deepEqual(jsonIn(buffer(file)), { value: SCENE });
});

test('what is broken is told by its line and column', () => {
  assert.match(jsonIn(buffer(Buffer.from('{"radius": 12,\n "spin": 4x}'))).wrong, /Line 2, column 11 is not JSON\.|It is not whole JSON\./);
});

test('what does not begin as JSON is something else', () => {
  for (const text of ['', ' ', 'glTF', '#usda 1.0', '<svg></svg>', 'frame,time_s', 'PK\u0003\u0004', '%PDF-1.7']) {
    assert.equal(jsonIn(buffer(Buffer.from(text))), null, text);
  }
});
