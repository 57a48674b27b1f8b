// Arrows at the moving body, told apart by colour, head and word: velocity (open head), centrifugal (solid), Coriolis (barbed); and in a
// craft that tumbles which way is down. One
// scale for both accelerations: 1 g is as long as a person is tall.

import { trLater } from '../state/language.js';
import { ARROW_KINDS } from '../state/arrow_kinds.js';
import { G_M_S2 } from '../state/units.js';
import { Group } from '../vendor/three.module.js';
import { at } from '../time/track.js';
import { bodyAt } from './model.js';
import { drawnVector } from './place.js';
import { Ribbon } from './ribbon.js';

export const METRES_PER_M_S2 = 1.75 / G_M_S2; // the scale of all arrows of acceleration
const HEAD_PX = 11;
const LEAST_G = 1e-4; // less is no way down
const FASTEST = 0.1; // of the span: the arrow of the fastest moment shown
const LONGEST = 0.45; // of the span: no arrow is drawn longer, its figure still says how much
const DOWN = { word: trLater('down on the floor'), show: 'centrifugal', most: 0.09, least_px: 22 }; // of a craft that tumbles; most: of the span, where most is felt
const SHARES = [0.3, 0.5, 0.7, 0.85, 1];
const MOST_POINTS = 5; // of an arrow's lines
const held = [0, 0, 0];
const from = { x: 0, y: 0, z: 0 },
  way = { x: 0, y: 0, z: 0 };
const [tail, tip, along, across, line, solid] = [3, 3, 3, 3, 9, 2].map(size => Array(size).fill(0));

export class Arrows {
  constructor(shared) {
    this.group = new Group();
    this.ribbons = ARROW_KINDS.map(({ color }) => {
      const ribbon = new Ribbon(shared, { color, width: 2, depth: false, order: 9, capacity: 64 });
      ribbon.material.uniforms.uNow = { value: 1e9 };
      this.group.add(ribbon.mesh);
      return ribbon;
    });
    this.shafts = []; // points along every arrow, for labels to keep off
    this.points = []; // that those are
    this.tips = [];
    this.laid = this.tipped = 0; // of each in this frame: an array that is emptied is allocated anew
    this.drawn = Object.fromEntries(ARROW_KINDS.map(({ show }) => [show, false])); // of which kinds there is one in this frame
    this.told = ARROW_KINDS.map(({ word, color }) => ({ word, color, tip: { x: 0, y: 0, z: 0 }, value_g: null }));
  }

  // Those that a scene can show. `which` {velocity, centrifugal, coriolis, alone}.
  static kindsOf(shown, which) {
    return ARROW_KINDS.filter(({ show }) => which[show] && shown.some(m => m.path.count && !m.stream && !m.stage.no_arrows.includes(show)));
  }

  // Gives the tips for the labels: [{word, color, tip, value_g}] of the leading motion. Alone, it is the only one that has any.
  update(model, shown, lead, time_s, eye, which, width) {
    let fastest = 1e-9;
    for (let i = 0; i < shown.length; i += 1) fastest = Math.max(fastest, shown[i].fastest_m_s);
    this.laid = this.tipped = 0;
    for (let k = 0; k < ARROW_KINDS.length; k += 1) {
      const kind = ARROW_KINDS[k],
        ribbon = this.ribbons[k],
        scale = kind.show === 'velocity' ? (FASTEST * eye.span_m) / fastest : METRES_PER_M_S2;
      ribbon.reserve(MOST_POINTS * (shown.length + 1));
      ribbon.begin();
      this.drawn[kind.show] = false;
      for (let i = 0; which[kind.show] && i < shown.length; i += 1) {
        const m = shown[i];
        if ((which.alone && m !== lead) || time_s < m.starts_s - 1e-6 || time_s > m.ends_s + 1e-6 || m.stage.no_arrows.includes(kind.show)) continue;
        this.arrow(ribbon, this.told[k], m, kind, scale, time_s, bodyAt(model, m, 'aboard', time_s, from), eye, m === lead);
      }
      if (kind.show === DOWN.show && which[DOWN.show]) this.downs(ribbon, model, shown, time_s, eye, kind);
      ribbon.uniforms.uWidth.value = width;
      ribbon.end();
    }
    this.shafts.length = this.laid;
    this.tips.length = this.tipped;
    return this.tips;
  }

  arrow(ribbon, told, m, kind, scale, time_s, { x, y, z }, eye, leads) {
    if (!at(m.path, time_s, kind.of, held)) return;
    const { x: vx, y: vy, z: vz } = drawnVector(held, way);
    const size = Math.sqrt(vx * vx + vy * vy + vz * vz);
    const long = Math.min(size * scale, LONGEST * eye.span_m);
    if (long < 6 * eye.metresPerPx) return;
    put(tail, x, y, z);
    put(tip, x + (vx / size) * long, y + (vy / size) * long, z + (vz / size) * long);
    this.lay(ribbon, eye, kind.show);
    if (!leads) return;
    told.tip.x = tip[0];
    told.tip.y = tip[1];
    told.tip.z = tip[2];
    told.value_g = kind.show === 'velocity' ? null : size / G_M_S2;
    this.tips[this.tipped++] = told;
  }

  // From `tail` to `tip`.
  lay(ribbon, eye, show) {
    this.drawn[show] = true;
    drawHeaded(ribbon, tail, tip, eye, show);
    for (let i = 0; i < SHARES.length; i += 1) {
      const u = SHARES[i],
        point = this.nextPoint();
      point.x = tail[0] + (tip[0] - tail[0]) * u;
      point.y = tail[1] + (tip[1] - tail[1]) * u;
      point.z = tail[2] + (tip[2] - tail[2]) * u;
    }
  }

  // Which way is down at the middle of a floor that tumbles, where anything is felt there.
  downs(ribbon, model, shown, time_s, eye, { color }) {
    const over = shown.find(m => m.tumbles && time_s <= m.ends_s + 1e-6);
    if (!over || !at(over.path, time_s, 'felt_g', held)) return;
    const { x: vx, y: vy, z: vz } = drawnVector(held, way),
      size = Math.hypot(vx, vy, vz);
    if (size < LEAST_G) return;
    const long = Math.max((DOWN.most * eye.span_m * size) / over.motion.findings.floor_greatest_g, DOWN.least_px * eye.metresPerPx);
    const { x, y, z } = model.ground.on(0, 0, 0, 0, {}, 0);
    put(tail, x, y, z);
    put(tip, x + (vx / size) * long, y + (vy / size) * long, z + (vz / size) * long);
    this.lay(ribbon, eye, DOWN.show);
    this.tips[this.tipped++] = { word: DOWN.word, color, tip: { x: tip[0], y: tip[1], z: tip[2] }, value_g: size };
  }

  // A further one of the points along arrows; they are the same ones every frame.
  nextPoint() {
    const k = this.laid++;
    this.points[k] ??= { x: 0.5, y: 0.5, z: 0.5 };
    this.shafts[k] = this.points[k];
    return this.points[k];
  }
}

// Shaft and head, the head in the plane of the picture.
export function headed(start, end, eye, kind) {
  const lines = [];
  const line = (points, count, _time, diameter) => lines.push({ points: points.slice(0, 3 * count), ...(diameter && { diameter }) });
  drawHeaded({ line }, start, end, eye, kind);
  return lines;
}

/** The same into a ribbon, with nothing made anew. */
export function drawHeaded(ribbon, start, end, eye, kind) {
  const head = aim(start, end, eye);
  copy(line, 0, start);
  if (kind !== 'centrifugal') {
    copy(line, 3, end);
    ribbon.line(line, 2);
    return drawHead(ribbon, end, head, kind);
  }
  back(line, 3, end, 0.8 * head, 0);
  ribbon.line(line, 2);
  back(line, 0, end, head, 0);
  copy(line, 3, end);
  solid[0] = 0.8 * head;
  ribbon.line(line, 2, null, solid);
}

/** The head alone of a velocity's or a Coriolis arrow. */
export function drawTip(ribbon, start, end, eye, kind) {
  drawHead(ribbon, end, aim(start, end, eye), kind);
}

function drawHead(ribbon, end, head, kind) {
  if (kind === 'coriolis') {
    back(line, 0, end, head, 0.55 * head);
    copy(line, 3, end);
    return ribbon.line(line, 2);
  }
  back(line, 0, end, 0.9 * head, 0.42 * head);
  copy(line, 3, end);
  back(line, 6, end, 0.9 * head, -0.42 * head);
  return ribbon.line(line, 3);
}

// Sets `along` and `across` the arrow in the plane of the picture; gives how long its head is.
function aim(start, end, { axes: { right, up }, metresPerPx }) {
  let x = 0,
    y = 0;
  for (let c = 0; c < 3; c += 1) {
    x += right[c] * (end[c] - start[c]);
    y += up[c] * (end[c] - start[c]);
  }
  const flat = Math.sqrt(x * x + y * y) || 1;
  for (let c = 0; c < 3; c += 1) {
    along[c] = (right[c] * x + up[c] * y) / flat;
    across[c] = (up[c] * x - right[c] * y) / flat;
  }
  return HEAD_PX * metresPerPx;
}

function back(out, k, end, far, side) {
  for (let c = 0; c < 3; c += 1) out[k + c] = end[c] - along[c] * far + across[c] * side;
}

function copy(out, k, point) {
  for (let c = 0; c < 3; c += 1) out[k + c] = point[c];
}

function put(out, x, y, z) {
  out[0] = x;
  out[1] = y;
  out[2] = z;
}
