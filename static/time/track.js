// The arrays of a motion as a path in time. Nothing is computed here: the server's samples and events are put in order of
// time, and a value at time t lies on the straight line between its two neighbours, never across a contact.

/** @typedef {{fps: [number, number], samples_per_frame: number}} Grid
 *  @typedef {{kind: string, time_s: number, rotating_m?: number[], [key: string]: any}} MotionEvent
 *  @typedef {{time_s: ArrayLike<number>, sampled_s: ArrayLike<number>, count: number, starts_s: number, ends_s: number, breaks_s?: number[], [key: string]: any}} Path */

// Keys that events carry too; the others (velocity, accelerations, stream diameter) are known at samples only.
const EVENT_KEYS = { rotating_m: 3, inertial_m: 3, along_m: 1, height_m: 1, axial_m: 1 };
const SAMPLE_KEYS = { rotating_velocity_m_s: 3, centrifugal_m_s2: 3, coriolis_m_s2: 3, diameter_m: 1, attitude_wxyz: 4, felt_g: 3 };
const BROKEN = ['rotating_velocity_m_s', 'coriolis_m_s2']; // what a contact changes at once
const CONTACTS = new Set(['deck', 'floor', 'ceiling', 'hub', 'wall']);
const SAME_TIME_S = 1e-9;
const SMALL_RAD = 1e-6; // between neighbouring attitudes: the straight line serves

/** @param {MotionEvent} event */
export function isContact(event) {
  return CONTACTS.has(event.kind);
}

/** What a landing is told at: the ground, or a table over it.
 *  @param {MotionEvent} event */
export function isLanding({ kind }) {
  return kind === 'deck' || kind === 'floor' || kind === 'table';
}

/** @param {Grid} grid @param {number} k */
export function sampleTime(grid, k) {
  return (k * grid.fps[1]) / (grid.fps[0] * grid.samples_per_frame);
}

/** A path to draw: samples and events in order of time, from `starts_s` to `ends_s`. A pour's is its first parcel's.
 *  @param {Grid} grid */
export function pathPoints(motion, grid) {
  const sampled_s = sampleTimes(motion, grid);
  const events = (motion.events ?? []).filter(e => e.rotating_m);
  const order = merged(sampled_s, events);
  const path = { time_s: Float64Array.from(order, o => o.time_s), sampled_s, count: order.length };
  path.corners = order.flatMap(({ event }, i) => (event ? [i] : [])); // points that no drawing may leave out
  path.breaks_s = events
    .filter(isContact)
    .map(e => e.time_s)
    .sort((a, b) => a - b);
  for (const [key, width] of Object.entries(EVENT_KEYS)) path[key] = column(motion, order, key, width);
  for (const key of Object.keys(SAMPLE_KEYS)) path[key] = motion[key] ?? motion.stream?.[key] ?? motion.findings?.[key] ?? null;
  path.starts_s = path.count ? path.time_s[0] : 0;
  path.ends_s = path.count ? path.time_s[path.count - 1] : 0;
  return path;
}

/** The companion has no events but its landing, which closes the path on the deck.
 *  @param {Grid} grid @param {number} starts_s */
export function companionPoints(companion, grid, starts_s) {
  const count = companion.height_m.length;
  const time_s = Float64Array.from({ length: count }, (_, k) => Math.max(starts_s, sampleTime(grid, companion.first + k)));
  return { time_s, sampled_s: time_s, count, rotating_m: companion.rotating_m, starts_s, ends_s: count ? time_s[count - 1] : starts_s };
}

/** @param {Grid} grid */
function sampleTimes(motion, grid) {
  return Float64Array.from({ length: motion.height_m.length }, (_, k) => sampleTime(grid, motion.first + k));
}

/** An event at a sample takes the sample's place; events of one instant keep their order.
 *  @param {Float64Array} sampled_s @param {MotionEvent[]} events */
function merged(sampled_s, events) {
  /** @type {({time_s: number, sample: number, event: object | null} | null)[]} */
  const order = Array.from(sampled_s, (time_s, sample) => ({ time_s, sample, event: null }));
  for (const event of events) {
    const near = upper(sampled_s, event.time_s + SAME_TIME_S) - 1;
    if (near >= 0 && Math.abs(sampled_s[near] - event.time_s) < SAME_TIME_S) order[near] = null;
  }
  const kept = order.filter(o => o !== null);
  return [...kept, ...events.map(event => ({ time_s: event.time_s, sample: -1, event }))].sort((a, b) => a.time_s - b.time_s);
}

/** @param {any[]} order @param {string} key @param {number} width */
function column(motion, order, key, width) {
  const from = motion[key];
  const out = new Float64Array(order.length * width);
  order.forEach(({ sample, event }, i) => {
    for (let c = 0; c < width; c += 1) {
      if (event) out[i * width + c] = width === 1 ? event[key] : event[key][c];
      else out[i * width + c] = from[sample * width + c];
    }
  });
  return out;
}

/** Value at time t: before the release the release, after the end the last. Writes into `out` and returns it (a number for
 *  one-column keys); null where the key has no values.
 *  @param {Path} path @param {number} time_s @param {string} key */
export function at(path, time_s, key, out) {
  const values = path[key];
  const base = key in SAMPLE_KEYS ? path.sampled_s : path.time_s;
  const count = base.length;
  if (!values || count === 0) return null;
  const width = EVENT_KEYS[key] ?? SAMPLE_KEYS[key];
  const hi = upper(base, time_s);
  const b = Math.min(hi, count - 1);
  const a = hi > 0 ? hi - 1 : 0;
  const gap = base[b] - base[a];
  const u = gap > 0 ? Math.min(1, Math.max(0, BROKEN.includes(key) ? share(path, base, a, b, time_s) : (time_s - base[a]) / gap)) : 0;
  if (width === 1) return values[a] + (values[b] - values[a]) * u;
  const flip = width === 4 && facing(values, a, b) < 0 ? -1 : 1;
  for (let c = 0; c < width; c += 1) out[c] = values[a * width + c] + (flip * values[b * width + c] - values[a * width + c]) * u;
  return out;
}

/** How far from sample a to sample b; where a contact lies between them, before it all a and after it all b.
 *  @param {Path} path @param {ArrayLike<number>} base @param {number} a @param {number} b @param {number} time_s */
function share(path, base, a, b, time_s) {
  const broken = path.breaks_s?.[upper(path.breaks_s, base[a])];
  if (broken !== undefined && broken < base[b]) return time_s < broken ? 0 : 1;
  return (time_s - base[a]) / (base[b] - base[a]);
}

/** A quaternion and its negative are the same turning: the nearer one is meant.
 *  @param {ArrayLike<number>} values @param {number} a @param {number} b */
function facing(values, a, b) {
  let dot = 0;
  for (let c = 0; c < 4; c += 1) dot += values[4 * a + c] * values[4 * b + c];
  return dot;
}

/** Index of the first time later than t.
 *  @param {ArrayLike<number>} times @param {number} time_s */
export function upper(times, time_s) {
  let lo = 0;
  let hi = times.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if (times[mid] <= time_s) lo = mid + 1;
    else hi = mid;
  }
  return lo;
}

/** The habitat's angle at time t from the answer's grid; past its end it goes on at the last spin.
 *  @param {number} time_s */
export function angleAt(answer, time_s) {
  const { angle_rad, spin_rad_s, grid } = answer;
  const last = angle_rad.length - 1;
  if (last < 0) return (answer.habitat?.omega_rad_s ?? 0) * time_s;
  const k = time_s / sampleTime(grid, 1);
  if (k >= last) return angle_rad[last] + (time_s - sampleTime(grid, last)) * (spin_rad_s[last] ?? 0);
  const a = Math.max(0, Math.floor(k));
  return angle_rad[a] + (angle_rad[a + 1] - angle_rad[a]) * (k - a);
}

/** How a craft that tumbles lies at time t, [w, x, y, z] from its axes to those that stand still; past the grid's end as it lies there. Null of one
 *  that does not tumble.
 *  @param {any} answer @param {number} time_s @param {number[]} [out] */
export function attitudeAt(answer, time_s, out = [1, 0, 0, 0]) {
  const values = answer.tumbling?.quaternion_wxyz;
  if (!values?.length) return null;
  const last = values.length / 4 - 1;
  const k = Math.min(last, Math.max(0, time_s / sampleTime(answer.grid, 1)));
  const a = Math.floor(k),
    b = Math.min(last, a + 1);
  let dot = 0;
  for (let c = 0; c < 4; c += 1) dot += values[4 * a + c] * values[4 * b + c];
  const angle = Math.acos(Math.min(1, Math.abs(dot))),
    share = k - a;
  const [p, q] = angle < SMALL_RAD ? [1 - share, share] : [Math.sin((1 - share) * angle) / Math.sin(angle), Math.sin(share * angle) / Math.sin(angle)];
  for (let c = 0; c < 4; c += 1) out[c] = p * values[4 * a + c] + (dot < 0 ? -q : q) * values[4 * b + c];
  return out;
}

/** How far the axis of a craft that tumbles has gone from where it pointed at first, in radians.
 *  @param {any} answer @param {number} time_s */
export function leanAt(answer, time_s) {
  const [, x, y] = attitudeAt(answer, time_s) ?? [1, 0, 0];
  return 2 * Math.asin(Math.min(1, Math.hypot(x, y)));
}

/** When the last motion (with its last parcels) has ended, of those that are shown; of all where none is.
 *  @param {{motions: any[]}} answer @param {Path[]} paths @param {(motion: any) => boolean} [shown] */
export function endOf(answer, paths, shown = () => true) {
  const { motions } = answer,
    some = motions.some(shown);
  return Math.max(0, ...motions.map((motion, i) => (some && !shown(motion) ? 0 : lastParcel(motion, paths[i].ends_s))));
}

/** When a motion's last parcel has ended, whose path ends at `ends_s`: drops that go their own ways end at times of their own, the
 *  others follow the first.
 *  @param {any} motion @param {number} ends_s */
export function lastParcel(motion, ends_s) {
  const { stream, findings } = motion,
    own_s = findings?.drops?.ends_s;
  if (own_s?.length) return own_s.reduce((last_s, time_s) => Math.max(last_s, time_s), ends_s);
  return ends_s + Math.max(0, stream ? stream.last_leaves_s - stream.first_leaves_s : 0);
}
