// A zip of files that are stored, not deflated: pictures are packed already. The same files give the same bytes. Written
// after the zip format's own note (APPNOTE 6.3: local headers, central directory, end record).

const LOCAL = 0x04034b50,
  CENTRAL = 0x02014b50,
  END = 0x06054b50;
const VERSION = 20;
const NAMES_IN_UTF8 = 0x0800;
const MADE_ON = ((1980 - 1980) << 9) | (1 << 5) | 1; // 1980-01-01, the first day the format knows
const MOST_FILES = 0xffff,
  MOST_BYTES = 0xffffffff;

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit += 1) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** The check sum of zip and PNG (CRC-32 of ISO 3309) of a Uint8Array. */
export function crc32(bytes) {
  let c = 0xffffffff;
  for (const byte of bytes) c = TABLE[(c ^ byte) & 0xff] ^ (c >>> 8);
  return ~c >>> 0;
}

/** add(name, Uint8Array) for each file, then finish() → the parts of the zip, in order. Throws past the format's limits. */
export function createZip() {
  const parts = [],
    entries = [];
  let at = 0;

  function put(part) {
    parts.push(part);
    at += part.length;
  }
  function add(name, bytes) {
    if (entries.length === MOST_FILES || at + bytes.length + 1024 > MOST_BYTES)
      throw new RangeError('A zip holds at most 65,535 files and 4 GB: take fewer frames, or smaller ones.');
    const title = new TextEncoder().encode(name);
    const about = [VERSION, NAMES_IN_UTF8, 0, 0, MADE_ON];
    const sizes = { crc: crc32(bytes), size: bytes.length };
    entries.push({ title, about, sizes, at });
    put(record(30, title, [[LOCAL, 4], ...header(about, sizes, title)]));
    put(bytes);
  }
  function finish() {
    const from = at;
    for (const { title, about, sizes, at: where } of entries) {
      const rest = [[0, 2], [0, 2], [0, 2], [0, 4], [where, 4]]; // comment, disk, inner and outer attributes, place
      put(record(46, title, [[CENTRAL, 4], [VERSION, 2], ...header(about, sizes, title), ...rest]));
    }
    const { length } = entries;
    put(record(22, [], [[END, 4], [0, 2], [0, 2], [length, 2], [length, 2], [at - from, 4], [from, 4], [0, 2]]));
    return parts;
  }
  return { add, finish };
}

// what a local and a central header share; the last pair are the lengths of the name and of extra fields
function header(about, { crc, size }, title) {
  return [...about.map(value => [value, 2]), [crc, 4], [size, 4], [size, 4], [title.length, 2], [0, 2]];
}

// numbers of 2 or 4 bytes, low byte first, then a name
function record(length, title, numbers) {
  const bytes = new Uint8Array(length + title.length);
  const view = new DataView(bytes.buffer);
  let at = 0;
  for (const [value, size] of numbers) {
    if (size === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += size;
  }
  bytes.set(title, length);
  return bytes;
}
