// A pour whose parcels each go their own way, at time t: its drops are samples of the answer, its stream lies between parcels that
// were followed one after another. Values between two of them lie on the straight line; nothing is computed here.

import { upper } from '../time/track.js';
import { drawnPoint } from './place.js';

const POINTS = 48;              // along the stream
const a = { x: 0, y: 0, z: 0 };
const b = { x: 0, y: 0, z: 0 };

// The drops in the air at time t, at most `most` of them: tell(point, diameter). `rate` is the grid's samples a second.
export function eachDrop({ born_s, ends_s, diameter_m, first, count, rotating_m }, rate, time_s, radius_m, most, tell) {
  const born = upper(born_s, time_s);
  let alive = 0;
  for (let n = 0; n < born; n += 1) if (time_s <= ends_s[n]) alive += 1;
  const every = Math.max(1, Math.ceil(alive / most));
  let offset = 0;
  for (let n = 0, nth = 0; n < born; offset += count[n], n += 1) {
    if (time_s > ends_s[n] || !count[n]) continue;
    nth += 1;
    if (nth % every) continue;
    const k = Math.min(count[n] - 1, Math.max(0, time_s * rate - first[n]));
    between(rotating_m, offset + Math.floor(k), offset + Math.min(count[n] - 1, Math.floor(k) + 1), k % 1, radius_m, a);
    tell(a, diameter_m[n]);
  }
}

// The stream at time t as polylines from the lip on, for a `Ribbon`; none where no stream is whole.
export function streamLines(thread, time_s, radius_m) {
  const { leaves_s, whole_s, flows } = thread;
  const last = leaves_s.length - 1;
  const youngest = Math.min(time_s, leaves_s[last]);
  const oldest = Math.min(youngest, stillWhole(leaves_s, whole_s, time_s));
  if (!(youngest > oldest)) return [];
  const lines = [];
  let line = null;
  for (let i = 0; i < POINTS; i += 1) {
    const left_s = youngest + ((oldest - youngest) * i) / (POINTS - 1);
    const k = Math.min(last - 1, Math.max(0, upper(leaves_s, left_s) - 1));
    const share = Math.min(1, Math.max(0, (left_s - leaves_s[k]) / (leaves_s[k + 1] - leaves_s[k])));
    if (!flows[share < 0.5 ? k : k + 1]) { line = null; continue; }
    if (!line) lines.push((line = { points: [], time: [], diameter: [] }));
    const age_s = time_s - left_s;
    const width = (1 - share) * parcelAt(thread, k, age_s, radius_m, a) + share * parcelAt(thread, k + 1, age_s, radius_m, b);
    line.points.push(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share, a.z + (b.z - a.z) * share);
    line.time.push(age_s);
    line.diameter.push(width);
  }
  return lines.filter(({ time }) => time.length > 1);
}

// When the oldest parcel that is still whole left.
function stillWhole(leaves_s, whole_s, time_s) {
  const gone = (k) => leaves_s[k] + whole_s[k];
  const k = leaves_s.findIndex((_, i) => gone(i) > time_s);
  if (k < 0) return Infinity;
  if (k === 0) return leaves_s[0];
  return leaves_s[k - 1] + ((leaves_s[k] - leaves_s[k - 1]) * (time_s - gone(k - 1))) / (gone(k) - gone(k - 1));
}

// A followed parcel at an age, into `out`; returns how wide the stream is there.
function parcelAt({ whole_s, rotating_m, diameter_m }, k, age_s, radius_m, out) {
  const ages = diameter_m.length / whole_s.length;
  const at = whole_s[k] > 0 ? Math.min(1, Math.max(0, age_s / whole_s[k])) * (ages - 1) : 0;
  const i = k * ages + Math.floor(at);
  const j = Math.min(i + 1, k * ages + ages - 1);
  between(rotating_m, i, j, at % 1, radius_m, out);
  return diameter_m[i] + (diameter_m[j] - diameter_m[i]) * (at % 1);
}

function between(values, i, j, share, radius_m, out) {
  drawnPoint(values, i, radius_m, out);
  const { x, y, z } = out;
  drawnPoint(values, j, radius_m, out);
  out.x = x + (out.x - x) * share;
  out.y = y + (out.y - y) * share;
  out.z = z + (out.z - z) * share;
}
