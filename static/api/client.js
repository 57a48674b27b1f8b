// The server, spoken to: documents out, answers in (their arrays made into typed ones), validation errors as they were said.

/** The server said no: `errors` is its list of {field, was, may_be, say}. */
export class ValidationError extends Error {
  constructor(errors) {
    super(errors[0]?.say ?? 'The server refused it.');
    this.errors = errors;
  }
}

/** No answer, or none that can be read. */
export class Unanswered extends Error {}

const WAIT_MS = 30_000,
  LONG_WAIT_MS = 600_000; // a file of thousands of drops

async function call(path, { body, wait = WAIT_MS, signal = null } = {}) {
  let response;
  try {
    response = await fetch(path, {
      method: body === undefined ? 'GET' : 'POST',
      headers: body === undefined ? {} : { 'content-type': 'application/json' },
      body: body === undefined ? undefined : JSON.stringify(body),
      signal: AbortSignal.any([AbortSignal.timeout(wait), ...(signal ? [signal] : [])]),
    });
  } catch (cause) {
    signal?.throwIfAborted();
    throw new Unanswered('The server cannot be reached.', { cause });
  }
  if (response.ok) return response;
  const said = await response.json().catch(() => null);
  if (Array.isArray(said?.refused) && said.refused.length) throw new ValidationError(said.refused);
  throw new Unanswered(`The server could not do it (${response.status}).`);
}

async function json(path, options) {
  const response = await call(path, options);
  try {
    return await response.json();
  } catch (cause) {
    throw new Unanswered('The answer of the server was cut short.', { cause });
  }
}

export function createClient(base = 'api') {
  let drawn = { key: null, habitats: [] }; // what the last habitats are drawn from: asked for again when they change

  // The spin does not show in how they are drawn.
  async function drawnOf({ scene: { habitat, compare } }, signal) {
    const still = part => ({ ...part, spin_rpm: 0, spin_ramp: [] });
    const body = { habitat: still(habitat), compare: (compare ?? []).map(other => ({ ...other, habitat: still(other.habitat) })) };
    const key = JSON.stringify(body);
    if (key !== drawn.key) drawn = { key, ...(await json(`${base}/mesh`, { body, signal })) };
    return drawn.habitats;
  }

  return {
    fields: () => json(`${base}/fields`),
    examples: async () => (await json(`${base}/examples`)).examples,
    example: id => json(`${base}/examples/${encodeURIComponent(id)}`),
    /** `hold` {hold, held, follower}: the server finds the follower that keeps what is held. */
    async trace(document, { units = 'si', hold = null, signal = null } = {}) {
      const query = new URLSearchParams({ arrays: 'f4', units, ...(hold ?? {}) });
      const answer = decodeAnswer(await json(`${base}/trace?${query}`, { body: document, signal }));
      return { ...answer, drawn: await drawnOf(answer, signal) };
    },
    /** What people would feel in a habitat: `request` {habitat, air, person, own_limits}. */
    feel: (request, { units = 'si', signal = null } = {}) => json(`${base}/feel?units=${units}`, { body: request, signal }),
    /** The smallest habitat that meets some wishes: `request` {wishes, person}. */
    size: (request, { units = 'si', signal = null } = {}) => json(`${base}/size?units=${units}`, { body: request, signal }),
    /** The map of limits as a drawing: `request` as of feel; `draw`: quantities, of whose limits it shows the lines, none for all. */
    map(request, { width, draw, units, signal = null }) {
      const query = new URLSearchParams([['width', width], ['units', units], ...draw.map(name => ['draw', name])]);
      return json(`${base}/map?${query}`, { body: request, signal });
    },
    /** Height by distance as a drawing: `request` {scene, export}; `plain`: with the companions under plain gravity. */
    plot: (request, { width, plain, units, signal = null }) =>
      json(`${base}/plot?width=${width}&plain=${Number(plain)}&units=${units}`, { body: request, signal }),
    /** A file of the scene, as a Blob: `request` {scene, export}. */
    exported: async (format, request, signal) => (await call(`${base}/export/${format}`, { body: request, signal, wait: LONG_WAIT_MS })).blob(),
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
