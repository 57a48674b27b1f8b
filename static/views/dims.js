// Ruled dimensions on the deck: how far each landing drifted, and how far the wheel has turned. Every figure is the answer's.

import { angleAt } from '../time/track.js';
import { placeAt } from './place.js';
import { headed } from './arrows.js';
import { PERSON_M } from './figure.js';
import { Ribbon } from './ribbon.js';
import { degrees, metres } from './say.js';
import { BONE } from './styles.js';

const SMALL_PX = 16;             // a person lower than this on the picture: only dimensions twice as long are worth reading
const p = { x: 0, y: 0, z: 0 };

export class Dims {
  constructor(shared) {
    this.ribbon = new Ribbon(shared, { color: BONE, width: 1.7, alpha: 0.92, order: 3, pull: 1e-3, capacity: 256 });
    this.ribbon.material.uniforms.uNow = { value: 1e9 };
    this.mesh = this.ribbon.mesh;
  }

  // One dimension a landing, in front of the flight; those that would lie on each other step toward the eye.
  drift(model, shown, eye, frontEdge_m, units) {
    const lines = [];
    const labels = [];
    const gap = Math.min(1.6, 0.3 * model.radius_m) * Math.max(Math.min(1, eye.span_m / 22), eye.span_m / 40);
    const taken = [];
    const least_m = PERSON_M < SMALL_PX * eye.metresPerPx ? 3 * SMALL_PX * eye.metresPerPx : 0;
    const landed = shown.filter((m) => m.landing && Math.abs(m.landing.drift_m) >= least_m).sort((a, b) => Math.abs(a.landing.drift_m) - Math.abs(b.landing.drift_m));
    for (const m of landed) {
      const [a0, a1] = [m.release.along_m, m.landing.along_m];
      const span = [Math.min(a0, a1), Math.max(a0, a1)];
      const level = taken.filter((t) => t[0] < span[1] - 1e-3 && t[1] > span[0] + 1e-3).length;
      taken.push(span);
      const z = Math.min(m.landing.axial_m + gap * (1 + 0.6 * level), frontEdge_m);
      lines.push(...this.ruled(model.radius_m, a0, a1, m.landing.axial_m, z));
      labels.push({ key: `drift ${m.i}`, text: metres(Math.abs(m.landing.drift_m), units), at: { ...placeAt(model.radius_m, (a0 + a1) / 2, 0, z, 0, p) } });
    }
    this.ribbon.set(lines);
    return labels;
  }

  ruled(R, a0, a1, from_z, z) {
    const over = 0.2 * Math.abs(z - from_z);
    return [
      { points: arc(R, a0 / R, a1 / R, z) },
      ...[a0, a1].map((a) => ({ points: [from_z + over, z + over].flatMap((axial) => xyz(R, a, axial)) })),
    ];
  }

  // Outside: from the ghost to the figure.
  turned(model, person, time_s, eye, frontEdge_m) {
    const R = model.radius_m;
    const from = person.release_rad;
    const by = angleAt(model.answer, time_s) - angleAt(model.answer, person.since_s);
    if (by * R < 0.4 * Math.min(1, R / 4)) {
      return this.clear();
    }
    const z = Math.min(person.axial_m + 2.4 * Math.max(0.12, Math.min(1, R / 20)) * Math.max(Math.min(1, eye.span_m / 24), eye.span_m / 70), frontEdge_m);
    const shown = Math.min(by, 2 * Math.PI - 0.02);
    const points = arc(R, from, from + shown, z);
    const tip = points.slice(-3);
    const before = points.slice(-6, -3);
    const tick = 0.16 * (z - person.axial_m);
    this.ribbon.set([{ points }, ...headed(before, tip, eye, 'velocity').slice(1), { points: [z - tick, z + tick].flatMap((axial) => xyz(R, from * R, axial)) }]);
    placeAt(R, (from + shown / 2) * R, 0, z, 0, p);
    return [{ key: 'turned', text: 'the wheel has turned ', strong: degrees(by), at: { ...p } }];
  }

  clear() {
    this.ribbon.set([]);
    return [];
  }
}

function xyz(R, along, axial) {
  placeAt(R, along, Math.min(0.02, 0.003 * R), axial, 0, p);
  return [p.x, p.y, p.z];
}

function arc(R, from, to, axial) {
  const parts = Math.max(8, Math.min(96, Math.ceil(Math.abs(to - from) / 0.04)));
  const points = [];
  for (let k = 0; k <= parts; k += 1) points.push(...xyz(R, (from + ((to - from) * k) / parts) * R, axial));
  return points;
}
