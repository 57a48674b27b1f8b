// Arrows at the moving body, told apart by colour, head and word: velocity (open head), centrifugal (solid), Coriolis (barbed). One
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
const FASTEST = 0.1; // of the span: the arrow of the fastest moment shown
const LONGEST = 0.45; // of the span: no arrow is drawn longer, its figure still says how much
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
      this.ribbons[k].uniforms.uWidth.value = width;
      this.ribbons[k].set(lines);
    });
    return tips;
  }

  arrow(lines, m, kind, scale, time_s, from, eye) {
    if (!at(m.path, time_s, kind.of, held)) return null;
    const v = drawnVector(held, {});
    const size = Math.hypot(v.x, v.y, v.z);
    const long = Math.min(size * scale, LONGEST * eye.span_m);
    if (long < 6 * eye.metresPerPx) return null;
    const to = ['x', 'y', 'z'].map(c => from[c] + (v[c] / size) * long);
    const start = [from.x, from.y, from.z];
    lines.push(...headed(start, to, eye, kind.show));
    for (const u of SHARES)
      this.shafts.push({ x: start[0] + (to[0] - start[0]) * u, y: start[1] + (to[1] - start[1]) * u, z: start[2] + (to[2] - start[2]) * u });
    return { word: kind.word, color: kind.color, tip: { x: to[0], y: to[1], z: to[2] }, value_g: kind.show === 'velocity' ? null : size / G_M_S2 };
  }
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
