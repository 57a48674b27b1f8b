// Arrows at the moving body, told apart by colour, head and word: velocity (open head), centrifugal (solid), Coriolis (barbed); and in a
// craft that tumbles which way is down. One
// scale for both accelerations: 1 g is as long as a person is tall.

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
const DOWN = { word: 'down on the floor', show: 'centrifugal', most: 0.09, least_px: 22 }; // of a craft that tumbles; most: of the span, where most is felt
const SHARES = [0.3, 0.5, 0.7, 0.85, 1];
const held = [0, 0, 0];

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
  }

  // Those that a scene can show: what the stage's legend names. `which` {velocity, centrifugal, coriolis, alone}.
  static kindsOf(shown, which) {
    return ARROW_KINDS.filter(({ show }) => which[show] && shown.some(m => m.path.count && !m.stream && !m.stage.no_arrows.includes(show)));
  }

  // Gives the tips for the labels: [{word, color, tip, value_g}] of the leading motion. Alone, it is the only one that has any.
  update(model, shown, lead, time_s, eye, which, width) {
    const tips = [];
    this.shafts = [];
    const fastest = Math.max(1e-9, ...shown.map(m => m.fastest_m_s));
    const scales = { velocity: (FASTEST * eye.span_m) / fastest, centrifugal: METRES_PER_M_S2, coriolis: METRES_PER_M_S2 };
    const moving = shown.filter(m => (!which.alone || m === lead) && time_s >= m.starts_s - 1e-6 && time_s <= m.ends_s + 1e-6);
    ARROW_KINDS.forEach((kind, k) => {
      const lines = [];
      if (which[kind.show])
        for (const m of moving) {
          if (m.stage.no_arrows.includes(kind.show)) continue;
          const tip = this.arrow(lines, m, kind, scales[kind.show], time_s, bodyAt(model, m, 'aboard', time_s, {}), eye);
          if (tip && m === lead) tips.push(tip);
        }
      if (kind.show === DOWN.show && which[DOWN.show]) tips.push(...this.downs(lines, model, shown, time_s, eye, kind));
      this.ribbons[k].uniforms.uWidth.value = width;
      this.ribbons[k].set(lines);
    });
    return tips;
  }

  lay(lines, start, to, eye, show) {
    lines.push(...headed(start, to, eye, show));
    for (const u of SHARES) this.shafts.push(partOf(start, to, u));
  }

  // Which way is down at the middle of a floor that tumbles, where anything is felt there.
  downs(lines, model, shown, time_s, eye, { color }) {
    const over = shown.find(m => m.tumbles && time_s <= m.ends_s + 1e-6);
    if (!over || !at(over.path, time_s, 'felt_g', held)) return [];
    const v = drawnVector(held, {}),
      size = Math.hypot(v.x, v.y, v.z),
      greatest = over.motion.findings.floor_greatest_g;
    if (size < LEAST_G) return [];
    const long = Math.max((DOWN.most * eye.span_m * size) / greatest, DOWN.least_px * eye.metresPerPx);
    const from = model.ground.on(0, 0, 0, 0, {}, 0);
    const start = [from.x, from.y, from.z];
    const to = ['x', 'y', 'z'].map(c => from[c] + (v[c] / size) * long);
    this.lay(lines, start, to, eye, DOWN.show);
    return [{ word: DOWN.word, color, tip: { x: to[0], y: to[1], z: to[2] }, value_g: size }];
  }

  arrow(lines, m, kind, scale, time_s, from, eye) {
    if (!at(m.path, time_s, kind.of, held)) return null;
    const v = drawnVector(held, {});
    const size = Math.hypot(v.x, v.y, v.z);
    const long = Math.min(size * scale, LONGEST * eye.span_m);
    if (long < 6 * eye.metresPerPx) return null;
    const to = ['x', 'y', 'z'].map(c => from[c] + (v[c] / size) * long);
    const start = [from.x, from.y, from.z];
    this.lay(lines, start, to, eye, kind.show);
    return { word: kind.word, color: kind.color, tip: { x: to[0], y: to[1], z: to[2] }, value_g: kind.show === 'velocity' ? null : size / G_M_S2 };
  }
}

function partOf(start, to, u) {
  const [x, y, z] = start.map((from, c) => from + (to[c] - from) * u);
  return { x, y, z };
}

// Shaft and head, the head in the plane of the picture.
export function headed(from, to, eye, kind) {
  const { right, up } = eye.axes;
  const d = [0, 1, 2].map(c => to[c] - from[c]);
  const dot = a => a[0] * d[0] + a[1] * d[1] + a[2] * d[2];
  const [x, y] = [dot(right), dot(up)];
  const flat = Math.hypot(x, y) || 1;
  const head = HEAD_PX * eye.metresPerPx;
  const along = [0, 1, 2].map(c => (right[c] * x + up[c] * y) / flat);
  const across = [0, 1, 2].map(c => (up[c] * x - right[c] * y) / flat);
  const back = (share, side) => [0, 1, 2].map(c => to[c] - along[c] * head * share + across[c] * head * side);
  if (kind === 'centrifugal') return [{ points: [...from, ...back(0.8, 0)] }, { points: [...back(1, 0), ...to], diameter: [head * 0.8, 0] }];
  const shaft = { points: [...from, ...to] };
  if (kind === 'coriolis') return [shaft, { points: [...back(1, 0.55), ...to] }];
  return [shaft, { points: [...back(0.9, 0.42), ...to, ...back(0.9, -0.42)] }];
}
