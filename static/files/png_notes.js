// Notes in a PNG, so that a picture can be opened again: an international text chunk (ISO/IEC 15948, 11.3.3.4), behind the header.

const KEYWORD = 'rimfall';
const HEADER_BYTES = 33; // the signature, and the chunk that each PNG begins with
const NOT_PACKED = [0, 0, 0, 0]; // after the keyword's own end: no packing, no language, no keyword in it

/** png: its bytes. notes: what JSON can hold, its scene under `scene`. Gives the parts of the file, in order. */
export function withNotes(png, notes) {
  const text = new TextEncoder().encode(JSON.stringify(notes));
  const kind = new TextEncoder().encode(`iTXt${KEYWORD}`);
  const chunk = new Uint8Array(4 + kind.length + 1 + NOT_PACKED.length + text.length + 4);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, chunk.length - 12);
  chunk.set(kind, 4);
  chunk.set(text, 4 + kind.length + 1 + NOT_PACKED.length);
  view.setUint32(chunk.length - 4, checkSum(chunk.subarray(4, -4)));
  return [png.subarray(0, HEADER_BYTES), chunk, png.subarray(HEADER_BYTES)];
}

// CRC-32 as in ISO/IEC 15948, annex D
const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let rest = n;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

function checkSum(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = TABLE[(rest ^ byte) & 0xff] ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
