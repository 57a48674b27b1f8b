import assert from 'node:assert/strict';
import test from 'node:test';
import zlib from 'node:zlib';

import { createZip } from '../../static/files/picture_files.js';

const bytes = text => new TextEncoder().encode(text);
const zipOf = files => {
  const zip = createZip();
  for (const [name, content] of files) zip.add(name, content);
  return Buffer.concat(zip.finish());
};

test('each member is where the directory says, stored as it is, of the first day the format knows', () => {
  const files = [
    ['a.1001.png', bytes('first')],
    ['é.txt', bytes('second, longer')],
    ['noise.bin', Uint8Array.from({ length: 5000 }, (_, i) => (i * i * 31 + 7 * i) & 0xff)],
  ];
  const zip = zipOf(files);
  const end = zip.length - 22; // APPNOTE 4.3.16: the end record is 22 bytes where there is no comment
  assert.equal(zip.readUInt32LE(end), 0x06054b50);
  assert.equal(zip.readUInt16LE(end + 10), files.length);
  let at = zip.readUInt32LE(end + 16);
  for (const [name, content] of files) {
    assert.equal(zip.readUInt32LE(at), 0x02014b50);
    assert.equal(zip.readUInt16LE(at + 10), 0, 'stored');
    assert.equal(zip.readUInt16LE(at + 14), 33, '1980-01-01');
    const length = zip.readUInt16LE(at + 28);
    assert.equal(zip.toString('utf8', at + 46, at + 46 + length), name);
    const local = zip.readUInt32LE(at + 42);
    assert.equal(zip.readUInt32LE(local), 0x04034b50);
    assert.equal(zip.readUInt32LE(local + 14), zlib.crc32(content));
    const from = local + 30 + zip.readUInt16LE(local + 26) + zip.readUInt16LE(local + 28);
    assert.deepEqual(new Uint8Array(zip.subarray(from, from + content.length)), content);
    at += 46 + length;
  }
  assert.equal(at, end, 'the directory ends where its end begins');
});

test('the same files give the same bytes', () => {
  const files = [['a', bytes('x')]];
  assert.deepEqual(zipOf(files), zipOf(files));
});

test('more files than the format numbers are refused in words', () => {
  const zip = createZip();
  for (let i = 0; i < 0xffff; i += 1) zip.add(String(i), new Uint8Array(0));
  assert.throws(() => zip.add('one too many', new Uint8Array(0)), /65,535 files/);
});
