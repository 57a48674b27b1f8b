// The same motions in other habitats, laid over this one's: each path carried so that both leave the same hand, standing over the
// same spot of the deck. Thin, in the motion's colour, a dash of its own a habitat.

import { tr } from '../state/language.js';
import { Group } from '../vendor/three.module.js';
import { turnAt } from './model.js';
import { triad } from './ground.js';
import { Ribbon } from './ribbon.js';

const DASHES = [
  [7, 3],
  [1.6, 1.6],
  [7, 2, 1.6, 2],
];
const SHARE = 0.5; // of a path's width

export class ComparedPaths {
  constructor(shared, frame) {
    Object.assign(this, { shared, frame, group: new Group(), pool: [], lines: [] });
  }

  read(model, shown, others) {
    this.named = null;
    this.lines = others.flatMap((other, k) => shown.flatMap(m => this.line(model, m, other, k) ?? []));
    this.lines.forEach((line, n) => this.ribbon(n, line).set([line]));
    this.pool.forEach((ribbon, n) => {
      if (n >= this.lines.length) ribbon.mesh.visible = false;
    });
  }

  line(model, m, other, k) {
    const twin = other.motions[m.i];
    if (!twin?.lines[this.frame].time.length) return null;
    const { points, time } = twin.lines[this.frame];
    return {
      points: carried(points, handOf(other, twin, this.frame), handOf(model, m, this.frame)),
      time,
      m,
      name: other.name ?? tr('the scene’s own'),
      dash: DASHES[k % DASHES.length],
    };
  }

  ribbon(n, { m, dash }) {
    const key = m.style.color + dash.join();
    if (this.pool[n]?.key !== key) {
      if (this.pool[n]) this.group.remove(this.pool[n].mesh);
      this.pool[n] = new Ribbon(this.shared, { color: m.style.color, width: 2.2, alpha: 0.9, ahead: 0.8, dash, order: 3 });
      this.pool[n].key = key;
      this.group.add(this.pool[n].mesh);
    }
    return this.pool[n];
  }

  size(px, metresPerPx) {
    if (!this.lines.length) return;
    for (const { uniforms } of this.pool) {
      uniforms.uWidth.value = px * SHARE;
      uniforms.uUnit.value = px * SHARE * metresPerPx;
    }
  }

  points() {
    return this.lines.flatMap(({ points }) => Array.from(points));
  }

  // One name a line, toward its end, where paths have parted.
  labels() {
    this.named ??= this.lines.map(({ points, m, name }, n) => ({
      key: `other ${n}`,
      text: `${m.name}: ${name}`,
      color: m.style.color,
      gap: 8,
      shy: true,
      at: [0.85, 0.7, 1, 0.5].map(share => {
        const i = 3 * Math.round(share * (points.length / 3 - 1));
        return { x: points[i], y: points[i + 1], z: points[i + 2] };
      }),
    }));
    return this.named;
  }
}

// The deck under a motion's release, and its directions there, as they are at the release.
function handOf(model, m, frame) {
  const { along_m, axial_m, time_s } = m.release;
  const turn = turnAt(model, frame, time_s);
  return { at: model.ground.on(along_m, 0, axial_m, turn, {}, m.floor), ...triad(model.ground.azimuth(along_m, m.floor) + turn, model.ground.level) };
}

function carried(points, from, to) {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [x, y, z] = [points[i] - from.at.x, points[i + 1] - from.at.y, points[i + 2] - from.at.z];
    const part = way => way[0] * x + way[1] * y + way[2] * z;
    const [s, u, a] = [part(from.spin), part(from.up), part(from.axial)];
    out.set(
      [to.at.x, to.at.y, to.at.z].map((c, k) => c + s * to.spin[k] + u * to.up[k] + a * to.axial[k]),
      i,
    );
  }
  return out;
}
