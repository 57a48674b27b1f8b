// An answer with arrays as base64 of float32 (`arrays=f4`) made into typed arrays. Each keeps its `shape`.

export function decodeAnswer(answer) {
  const out = revive(answer);
  for (const part of [out, ...(out.compare ?? [])]) complete(part);
  return out;
}

// times and places of one habitat: the scene's own, or one beside it
function complete(out) {
  const [num, den] = out.grid.fps;
  const rate = (num / den) * out.grid.samples_per_frame;
  out.time_s = withShape(
    Float64Array.from({ length: out.grid.count }, (_, k) => k / rate),
    [out.grid.count],
  );
  for (const motion of out.motions) {
    anchor(motion, motion.anchor_m);
    if (motion.companion) anchor(motion.companion, motion.companion.anchor_m ?? motion.anchor_m);
  }
}

function revive(value) {
  if (Array.isArray(value)) return value.map(revive);
  if (value === null || typeof value !== 'object') return value;
  if (typeof value.f4 === 'string') return floats(value);
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, revive(item)]));
}

function floats({ shape, f4 }) {
  const bytes = Uint8Array.fromBase64 ? Uint8Array.fromBase64(f4) : Uint8Array.from(atob(f4), c => c.charCodeAt(0));
  return withShape(littleEndian(bytes), shape);
}

// the wire is little-endian; typed arrays have the order of the machine
const NATIVE = new Uint8Array(new Uint16Array([1]).buffer)[0] === 1;

function littleEndian(bytes) {
  if (NATIVE) return new Float32Array(bytes.buffer, 0, bytes.length / 4);
  const view = new DataView(bytes.buffer);
  return Float32Array.from({ length: bytes.length / 4 }, (_, i) => view.getFloat32(4 * i, true));
}

// offsets from the release, in double precision: a path of metres on a deck of kilometres stays smooth
function anchor(track, from) {
  const offsets = track.rotating_m;
  if (!offsets || !from) return;
  track.rotating_m = withShape(
    Float64Array.from(offsets, (v, i) => v + from[i % 3]),
    offsets.shape,
  );
}

function withShape(array, shape) {
  array.shape = shape;
  return array;
}
