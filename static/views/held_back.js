// A motion whose way is held back, as pictures are framed: as if it ended where the clock may go, with room on both sides along the deck for guesses.

import { questionOf, roomOf } from '../state/guesses.js';
import { heldUntil } from '../state/shown.js';
import { at, upper } from '../time/track.js';
import { drawnPoint } from './place.js';

const PLACES = { rotating_m: 3, inertial_m: 3, along_m: 1, height_m: 1, axial_m: 1 };
const FRAMES = { aboard: 'rotating_m', outside: 'inertial_m' };
const PARTS = 24; // of the room, along a deck that bends

/** The motions of a model with those that the view holds back cut short; each of these has `held` {until_s, guesses_m: places along the deck}. */
export function asFarAsHeld(model, motions, view) {
  const until_s = m => (view ? heldUntil(view, m.name) : Infinity);
  return motions.map(m => (until_s(m) < Infinity ? cut(model, m, Math.max(until_s(m), m.starts_s)) : m));
}

function cut(model, m, until_s) {
  const path = pathTo(m.path, until_s);
  const line = (frame, key) => lineTo(m.lines[frame], drawnPoint(at(path, until_s, key, [0, 0, 0]) ?? [0, 0, 0], 0, model.radius_m, {}), until_s);
  return {
    ...m,
    path,
    lines: { ...Object.fromEntries(Object.entries(FRAMES).map(([frame, key]) => [frame, line(frame, key)])), companion: null },
    landing: null,
    move_m: null, // where a cup would have to stand
    ends_s: until_s,
    over_s: until_s,
    held: { until_s, guesses_m: guessesOf(model, m) },
  };
}

// With a last point at the time itself.
function pathTo(path, until_s) {
  const count = upper(path.time_s, until_s);
  if (!path.count || count === path.count) return path;
  const own = { ...path, time_s: Float64Array.of(...path.time_s.slice(0, count), until_s), count: count + 1, ends_s: until_s };
  for (const [key, width] of Object.entries(PLACES)) {
    const last = at(path, until_s, key, Array(width));
    own[key] = Float64Array.of(...path[key].slice(0, width * count), ...(width === 1 ? [last] : last));
  }
  return own;
}

function lineTo(line, { x, y, z }, until_s) {
  const count = line.time.length && upper(line.time, until_s);
  if (count === line.time.length) return line;
  const { points, time, source } = line;
  return {
    points: Float64Array.of(...points.slice(0, 3 * count), x, y, z),
    time: Float64Array.of(...time.slice(0, count), until_s),
    source: source.slice(0, count),
  };
}

function guessesOf({ answer, ground }, m) {
  const question = questionOf(answer, m.name, 0);
  if (!question) return [];
  const { from_m } = question,
    half_m = roomOf(question, m.motion.companion);
  const ends = ground.floors ? [-1, 1].map(side => side * ground.reach(m.floor).along_m) : [-Infinity, Infinity];
  return Array.from({ length: PARTS + 1 }, (_, k) => Math.min(ends[1], Math.max(ends[0], from_m + half_m * ((2 * k) / PARTS - 1))));
}
