import assert from 'node:assert/strict';
import test from 'node:test';

import { fileOf } from '../../static/files/webm.js';

// A reader of EBML (RFC 8794) for this test: elements by their numbers, those that hold others (RFC 9559) opened.
const HOLD = new Set([0x1a45dfa3, 0x18538067, 0x1549a966, 0x1654ae6b, 0xae, 0xe0, 0x55b0, 0x1f43b675, 0x1c53bb6b, 0xbb, 0xb7, 0x1254c367, 0x7373, 0x67c8]);
const CLUSTER = 0x1f43b675,
  SIMPLE_BLOCK = 0xa3;

function read(data, from = 0, to = data.length) {
  const found = [];
  for (let at = from; at < to; ) {
    const start = at;
    const wide = Math.clz32(data[at]) - 23;
    const id = data.subarray(at, at + wide).reduce((sum, byte) => sum * 256 + byte, 0);
    at += wide;
    const long = Math.clz32(data[at]) - 23;
    const size = data.subarray(at, at + long).reduce((sum, byte, i) => (i ? sum * 256 + byte : byte & (0xff >> long)), 0);
    at += long;
    assert.ok(at + size <= to, `element ${id.toString(16)} ends inside its parent`);
    found.push({ id, start, data: data.subarray(at, at + size), from: at, inside: HOLD.has(id) ? read(data, at, at + size) : null });
    at += size;
  }
  return found;
}

const all = elements => elements.flatMap(one => [one, ...(one.inside ? all(one.inside) : [])]);
const whole = ({ data }) => data.reduce((sum, byte) => sum * 256 + byte, 0);
const text = ({ data }) => new TextDecoder().decode(data);

function made(count, fps, rest = {}) {
  const frames = Array.from({ length: count }, (_, k) => ({ bytes: new Uint8Array(20 + (k % 7)).fill(k & 0xff), key: k % 48 === 0 }));
  const parts = fileOf({ frames, fps, width: 640, height: 360, codec: 'vp9', title: 'Lantern Wheel', ...rest });
  const data = new Uint8Array(Buffer.concat(parts));
  const top = read(data);
  const by = id => all(top).filter(one => one.id === id);
  return { data, frames, top, by };
}

// every block's number of ticks, and its bytes
function blocks({ by }) {
  return by(CLUSTER).flatMap(({ inside }) => {
    const from = whole(inside.find(one => one.id === 0xe7));
    return inside
      .filter(one => one.id === SIMPLE_BLOCK)
      .map(({ data }) => ({ tick: from + new DataView(data.buffer, data.byteOffset).getInt16(1), key: (data[3] & 0x80) > 0, bytes: data.subarray(4) }));
  });
}

test('the file is one header and one segment that ends where the file ends', () => {
  const { top, by } = made(3, [24, 1]);
  assert.deepEqual(
    top.map(one => one.id),
    [0x1a45dfa3, 0x18538067],
  );
  assert.equal(text(by(0x4282)[0]), 'webm');
  assert.equal(text(by(0x86)[0]), 'V_VP9');
  assert.equal(whole(by(0xb0)[0]), 640);
  assert.equal(whole(by(0xba)[0]), 360);
  assert.equal(text(by(0x7ba9)[0]), 'Lantern Wheel');
});

for (const fps of [
  [24, 1],
  [24000, 1001],
  [25, 2],
  [60000, 1001],
]) {
  test(`at ${fps.join('/')} frame k is within k/2 ns of k·d/n`, () => {
    const file = made(2000, fps);
    const scale = whole(file.by(0x2ad7b1)[0]);
    const got = blocks(file);
    assert.equal(got.length, 2000);
    got.forEach(({ tick, bytes, key }, k) => {
      assert.equal(tick, k);
      assert.ok(Math.abs(tick * scale - (1e9 * k * fps[1]) / fps[0]) <= k / 2 + 1e-6, `frame ${k}`);
      assert.deepEqual(bytes, file.frames[k].bytes);
      assert.equal(key, file.frames[k].key);
    });
    const { data } = file.by(0x4489)[0];
    assert.equal(new DataView(data.buffer, data.byteOffset).getFloat64(0), 2000);
  });
}

test('each cluster begins with a key frame, and the cues say where', () => {
  const file = made(100, [24, 1]);
  const segment = file.top[1];
  const clusters = segment.inside.filter(one => one.id === CLUSTER);
  assert.equal(clusters.length, 3);
  const cues = file.by(0xbb).map(({ inside }) => ({ tick: whole(inside[0]), at: whole(inside[1].inside[1]) }));
  assert.deepEqual(
    cues,
    clusters.map((one, i) => ({ tick: 48 * i, at: one.start - segment.from })),
  );
});

test('a long run between key frames keeps within 16 bits', () => {
  const frames = Array.from({ length: 70_000 }, (_, k) => ({ bytes: new Uint8Array(1), key: k === 0 }));
  const data = new Uint8Array(Buffer.concat(fileOf({ frames, fps: [24, 1], width: 2, height: 2, codec: 'vp8', title: '' })));
  const got = blocks({ by: id => all(read(data)).filter(one => one.id === id) });
  assert.ok(got.every(({ tick }, k) => tick === k));
});

// ITU-T H.273: matrix 6 and primaries 6 are those of SMPTE 170M, transfer 1 that of BT.709; Matroska's range 1 is the broadcast one
test('the colour is said by the numbers of H.273', () => {
  const colour = { matrix: 'smpte170m', transfer: 'bt709', primaries: 'smpte170m', fullRange: false };
  const { by } = made(1, [24, 1], { decoder: { colorSpace: colour } });
  assert.deepEqual(
    [0x55b1, 0x55ba, 0x55bb, 0x55b9].map(id => whole(by(id)[0])),
    [6, 1, 6, 1],
  );
});

// RFC 8794, 6.2: a size with all its data bits set is reserved for "unknown", so 127 takes two bytes
test('a size of 127 bytes is not written as the one reserved for unknown', () => {
  const { data, by } = made(1, [24, 1], { title: 'x'.repeat(127) });
  const [title] = by(0x7ba9);
  assert.deepEqual([...data.subarray(title.from - 2, title.from)], [0x40, 127]);
  assert.equal(text(title).length, 127);
});

test('the notes are a tag of the whole file, and the clusters are where the cues say beside it', () => {
  const notes = { scene: { title: 'Écluse' } };
  const { data, by } = made(60, [24, 1], { notes });
  assert.equal(text(by(0x45a3)[0]), 'RIMFALL');
  assert.deepEqual(JSON.parse(text(by(0x4487)[0])), notes);
  assert.equal(by(0x63c0)[0].data.length, 0);
  const segment = by(0x18538067)[0];
  for (const cue of by(0xf1)) assert.equal(new DataView(data.buffer).getUint32(segment.from + whole(cue)), CLUSTER);
  assert.equal(made(60, [24, 1]).by(0x1254c367).length, 0);
});
