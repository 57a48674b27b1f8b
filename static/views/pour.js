// A pour at time t. At steady spin every parcel follows the same path in the turning frame, later by when it left: the stream is
// that path between two ages, the drops are points on it. Where each parcel has its own path, the answer holds them all
// (at the foot of this file). Both stages draw it in the turning frame, Outside turned by the angle.

import { Group } from '../vendor/three.module.js';
import { angleAt, at, upper } from '../time/track.js';
import { Dots, KIND } from './dots.js';
import { drawnPoint, turned } from './place.js';
import { Ribbon } from './ribbon.js';
import { rgb } from './materials.js';

const MOST_DROPS = 1500;
const DROP_PX = 4.2; // at least; drops that fall one by one are drawn so that each is seen
const DRIP_PX = 8;
const WATER = rgb('#D8ECF4');
const held = [0, 0, 0];
const p = { x: 0, y: 0, z: 0 };

export class Pours {
  constructor(shared, frame) {
    this.shared = shared;
    this.frame = frame;
    this.group = new Group();
    this.turning = new Group(); // turned about the axis by the habitat's angle
    this.inner = new Group();
    this.turning.add(this.inner);
    this.ribbons = [];
    this.drops = new Dots(shared, { order: 6, capacity: 256 });
    this.group.add(this.turning, this.drops.points);
  }

  read(model, shown) {
    this.model = model;
    this.pours = shown.filter(m => m.stream);
    this.turning.position.set(0, model.radius_m, 0);
    this.inner.position.set(0, -model.radius_m, 0);
    while (this.ribbons.length < this.pours.length) this.ribbons.push(this.ribbon());
    this.ribbons.forEach((ribbon, k) => {
      const m = this.pours[k];
      ribbon.mesh.visible = Boolean(m) && m.stream.regime === 'stream' && !own(m);
      if (ribbon.mesh.visible) ribbon.set([streamLine(m)]);
    });
  }

  ribbon() {
    const ribbon = new Ribbon(this.shared, { color: '#D8ECF4', width: 2.2, order: 5, alpha: 0.95 });
    ribbon.material.uniforms.uNow = { value: 1e9 };
    this.inner.add(ribbon.mesh);
    return ribbon;
  }

  update(time_s) {
    const turn = this.frame === 'outside' ? angleAt(this.model.answer, time_s) : 0;
    this.turning.rotation.z = turn;
    this.drops.begin();
    if (!this.pours.length) return this.drops.end();
    this.pours.forEach((m, k) => {
      if (own(m)) {
        this.drawOwn(m, this.ribbons[k], time_s, turn);
        return;
      }
      const { first_leaves_s, last_leaves_s, breakup, regime } = m.stream;
      const whole_s = m.ends_s - m.starts_s;
      const breaks_s = breakup ? breakup.time_s - first_leaves_s : whole_s;
      const { uFrom, uTo } = this.ribbons[k].uniforms;
      uFrom.value = Math.max(0, time_s - last_leaves_s);
      uTo.value = Math.min(time_s - first_leaves_s, breaks_s, whole_s);
      if (regime !== 'stream' || breakup) this.addDrops(m, time_s, turn, regime === 'stream' ? breaks_s : 0);
    });
    this.drops.end();
  }

  drawOwn({ motion, stream }, ribbon, time_s, turn) {
    const {
      radius_m,
      answer: { grid },
    } = this.model;
    const rate = (grid.fps[0] / grid.fps[1]) * grid.samples_per_frame;
    ribbon.uniforms.uFrom.value = -1e9;
    ribbon.uniforms.uTo.value = 1e9;
    ribbon.set(time_s >= stream.first_leaves_s ? streamLines(motion.findings.thread, time_s, radius_m) : []);
    eachDrop(motion.findings.drops, rate, time_s, radius_m, MOST_DROPS, (point, diameter) => {
      if (turn) turned(point, radius_m, turn, point);
      this.drops.add(point, { size: DROP_PX, diameter, kind: KIND.ball, tint: WATER });
    });
  }

  // Drop n leaves n intervals after the first and is a drop from the age of breakup on.
  addDrops(m, time_s, turn, from_age_s) {
    const { first_leaves_s, drop_interval_s, drop_diameter_m, drop_count } = m.stream;
    if (!(drop_interval_s > 0)) return;
    const whole_s = m.ends_s - m.starts_s;
    const oldest = Math.max(0, Math.ceil((time_s - whole_s - first_leaves_s) / drop_interval_s));
    const youngest = Math.min(drop_count - 1, Math.floor((time_s - from_age_s - first_leaves_s) / drop_interval_s));
    const skip = Math.max(1, Math.ceil((youngest - oldest + 1) / MOST_DROPS));
    for (let n = Math.ceil(oldest / skip) * skip; n <= youngest; n += skip) {
      const age_s = time_s - first_leaves_s - n * drop_interval_s;
      drawnPoint(at(m.path, m.starts_s + age_s, 'rotating_m', held), 0, this.model.radius_m, p);
      if (turn) turned(p, this.model.radius_m, turn, p);
      this.drops.add(p, { size: m.stream.regime === 'drips' ? DRIP_PX : DROP_PX, diameter: drop_diameter_m, kind: KIND.ball, tint: WATER });
    }
  }
}

function own({ motion }) {
  return Boolean(motion.findings?.drops);
}

// The parcel's path with age for time and the stream's diameter.
function streamLine(m) {
  const { points, time } = m.lines.aboard;
  const known = m.path.diameter_m;
  const diameter = Array.from(time, t => (known ? at(m.path, t, 'diameter_m') : 0));
  return { points, time: Array.from(time, t => t - m.starts_s), diameter };
}

// A pour whose parcels each go their own way, at time t: its drops are samples of the answer, its stream lies between parcels that
// were followed one after another. Values between two of them lie on the straight line; nothing is computed here.

const POINTS = 48; // along the stream
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
    if (!flows[share < 0.5 ? k : k + 1]) {
      line = null;
      continue;
    }
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
  const gone = k => leaves_s[k] + whole_s[k];
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
