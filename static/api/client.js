// The server, spoken to: documents out, answers in, their arrays made into typed ones.

import { asBlob, asJson, asLines, request } from './request.js';

const WAIT_MS = 60_000, // longer than a server works on one request, unless it is told to
  LONG_WAIT_MS = 600_000, // a file of thousands of drops
  PROBE_MS = 5000;

/** Whether somebody is there. */
export async function isThere(base = 'api') {
  await request(`${base}/health`, { wait_ms: PROBE_MS, read: asJson });
  return true;
}

/** `connection.run(ask, signal)`: what asks again while the server is away or busy. */
export function createClient({ base = 'api', connection = { run: ask => ask() } } = {}) {
  const call = (path, { signal = null, wait_ms = WAIT_MS, read = asJson, ...rest } = {}) =>
    connection.run(() => request(`${base}/${path}`, { ...rest, signal, wait_ms, read }), signal);
  let drawn = { key: null, habitats: [], craft: null }; // what the last habitats are drawn from

  // The spin does not show in how they are drawn.
  function stillOf({ habitat, compare, craft }) {
    const still = part => ({ ...part, spin_rpm: 0, spin_ramp: [] });
    const others = (compare ?? []).map(other => ({ ...other, habitat: still(other.habitat) }));
    return craft ? { habitat, compare: others, craft } : { habitat: still(habitat), compare: others };
  }
  // the same as before where nothing shows otherwise, so that nothing is built anew
  function drawnOf({ scene, drawn: mesh }) {
    const key = JSON.stringify(stillOf(scene));
    if (key !== drawn.key) drawn = { key, ...mesh };
    return { drawn: drawn.habitats, craft: drawn.craft ?? null };
  }

  return {
    /** That something is asked for in a moment: whoever answers makes ready. */
    soon: () => request(`${base}/health?soon=1`, { wait_ms: PROBE_MS, read: asJson }).catch(() => {}),
    /** Comes once the server is there. */
    health: signal => call('health', { signal }),
    fields: () => call('fields'),
    /** The language that the page is spoken in from its next loading on. */
    speak: language => request(`language/${language}`, { body: {}, wait_ms: PROBE_MS, read: asJson }),
    /** Whether others may follow, and where: {shared, address}. */
    shared: () => call('share'),
    /** The scenes to start from; `units`: those in which one will be opened. */
    examples: async (units = 'si') => (await call(`examples?units=${units}`)).examples,
    /** One of them with its answer: {document, answer}. */
    async opened(id, { units = 'si', signal = null } = {}) {
      const { document, trace, mesh } = await call(`examples/${encodeURIComponent(id)}/opened?units=${units}`, { signal });
      drawn = { key: JSON.stringify(stillOf(trace.scene)), ...mesh };
      return { document, answer: { ...decodeAnswer(trace), drawn: mesh.habitats, craft: mesh.craft ?? null } };
    },
    /** The talks that come with the program: [{id, title, about, steps: how many}]. */
    talks: async () => (await call('talks')).talks,
    /** One of them, every step with its whole scene. */
    readyTalk: id => call(`talks/${encodeURIComponent(id)}`),
    /** The same of a talk's document. */
    talk: body => call('talk', { body }),
    /** `hold` {hold, held, follower}: the server finds the follower that keeps what is held. `told(done, of)`: how far it is, where it takes long. `parts`: what of the
     *  answer is asked for (state/parts.js). */
    async trace(document, { units = 'si', hold = null, signal = null, told = null, parts = 'all' } = {}) {
      const query = new URLSearchParams({ arrays: 'f4', units, drawn: '1', ...(hold ?? {}), ...(told && { stream: '1' }), ...(parts !== 'all' && { parts }) });
      const answer = decodeAnswer(await call(`trace?${query}`, { body: document, signal, read: told ? asLines(told) : asJson }));
      return { ...answer, ...drawnOf(answer) };
    },
    /** What people would feel in a habitat: `body` {habitat, air, person, own_limits}. */
    feel: (body, { units = 'si', signal = null } = {}) => call(`feel?units=${units}`, { body, signal }),
    /** The smallest habitat that meets some wishes: `body` {wishes, person}. */
    size: (body, { units = 'si', signal = null } = {}) => call(`size?units=${units}`, { body, signal }),
    /** The map of limits as a drawing: `body` as of feel; `draw`: quantities, of whose limits it shows the lines, none for all. */
    map(body, { width, draw, units, signal = null }) {
      const query = new URLSearchParams([['width', width], ['units', units], ...draw.map(name => ['draw', name])]);
      return call(`map?${query}`, { body, signal });
    },
    /** Height by place along the ground as a drawing: `body` {scene, export}; `plain`: with the companions under plain gravity. */
    plot: (body, { width, plain, units, signal = null }) => call(`plot?width=${width}&plain=${Number(plain)}&units=${units}`, { body, signal }),
    /** The craft to start from: [{id, title, say, craft, radius_m, spin_rpm}]; with a radius, made to fit it. */
    crafts: async (radius_m = null) => (await call(radius_m === null ? 'crafts' : `crafts?radius_m=${radius_m}`)).crafts,
    /** Whether a craft would cope, with drawings `width` px wide, that of the craft itself `drawing`: `body` a scene document with a craft. */
    craft: (body, { units = 'si', width, drawing = width, signal = null }) =>
      call(`craft?units=${units}&width=${width}&drawing_width=${drawing}`, { body, signal }),
    /** The same as a file, as a Blob: svg, pdf, csv or tumble. */
    craftFile: (format, body, units) => call(`craft/${format}?units=${units}`, { body, wait_ms: LONG_WAIT_MS, read: asBlob }),
    /** Every throw that arrives: `body` {scene, motion, to, within_m, fixed}. */
    aim: async (body, { units = 'si', signal = null } = {}) => revive(await call(`aim?arrays=f4&units=${units}`, { body, signal })),
    /** Where a throw can come down, drawn `width` px wide: `body` {scene, motion, over}; `told(done, of)`: how far it is. */
    async landings(body, { units = 'si', width, signal = null, told }) {
      const query = new URLSearchParams({ arrays: 'f4', units, width, stream: '1' });
      return revive(await call(`landings?${query}`, { body, signal, read: asLines(told) }));
    },
    /** The same as a file, as a Blob: csv, svg or pdf. */
    landingsFile: (format, body, units) => call(`landings/${format}?units=${units}`, { body, wait_ms: LONG_WAIT_MS, read: asBlob }),
    /** Whether a path that was seen could be: `body` as of POST /api/match. */
    match: (body, { units = 'si', signal = null } = {}) => call(`match?units=${units}`, { body, signal }),
    /** The deck's grid through a camera, in pixels: `body` {radius_m, camera}. */
    matchGrid: (body, signal = null) => call('match/grid', { body, signal }),
    /** The tracks in a file: `file` → {tracks, known}; `asked` {view, origin, up, fps}, as far as they are known. */
    tracks: (file, asked = {}, signal = null) => call(`match/tracks?${new URLSearchParams(asked)}`, { body: file, signal }),
    /** A camera of one's own, by hand: `body` {scene, camera} → {cameras, match, words}. */
    camera: (body, signal) => call('camera', { body, signal }),
    /** The same out of a file; `asked`: view, radius_m and the like, as far as they are known. */
    cameraFile: (file, asked = {}, signal = null) => call(`camera/file?${new URLSearchParams(asked)}`, { body: file, signal }),
    /** A file of the scene, as a Blob: `body` {scene, export}. */
    exported: (format, body, signal) => call(`export/${format}`, { body, signal, wait_ms: LONG_WAIT_MS, read: asBlob }),
    /** A talk as one HTML file that plays by itself, as a Blob: `body` a talk's document. */
    talkFile: (body, signal) => call('talk/file', { body, signal, wait_ms: LONG_WAIT_MS, read: asBlob }),
    /** What a file of Rimfall's carries: `file` → {scene, export, from}. `told(done, of)`: bytes sent. */
    recover: (file, { signal = null, told = null } = {}) => call('recover', { body: file, signal, told }),
  };
}

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
