// Notes in a PNG: where the standard has them, with their check sum, and the picture unchanged.

import assert from 'node:assert/strict';
import test from 'node:test';
import { withNotes } from '../../static/files/png_notes.js';

// the smallest PNG: one grey pixel (ISO/IEC 15948)
const PNG = Buffer.from(
  '89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b550000000a49444154789c6360000000020001e221bc330000000049454e44ae426082',
  'hex',
);

test('the notes stand behind the header as a text of their own, and all else as it was', () => {
  const notes = { scene: { title: 'Écluse' } };
  const file = Buffer.concat(withNotes(PNG, notes));
  assert.deepEqual(file.subarray(0, 33), PNG.subarray(0, 33));
  const length = file.readUInt32BE(33);
  assert.equal(file.toString('latin1', 37, 53), 'iTXtrimfall\0\0\0\0\0');
  assert.deepEqual(JSON.parse(file.toString('utf8', 53, 41 + length)), notes);
  assert.deepEqual(file.subarray(45 + length), PNG.subarray(33));
});

test('the check sum is that of the standard', () => {
  // of the header above and of the end, as they stand in every PNG of one grey pixel
  const [, chunk] = withNotes(PNG, {});
  const sumOf = bytes => {
    let crc = 0xffffffff;
    for (const byte of bytes) {
      crc ^= byte;
      for (let k = 0; k < 8; k += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
    }
    return (crc ^ 0xffffffff) >>> 0;
  };
  assert.equal(sumOf(PNG.subarray(12, 29)), PNG.readUInt32BE(29));
  assert.equal(sumOf(chunk.subarray(4, -4)), Buffer.from(chunk).readUInt32BE(chunk.length - 4));
});
