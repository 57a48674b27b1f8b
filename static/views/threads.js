// Lines that change with the clock: a pendulum's, its plumb line, a lift's spoke, push and plumb line, the line to the place someone left; and
// what is written at them and at a cup.

import { tr } from '../state/language.js';
import { findingAt } from '../time/findings.js';
import { Dots, KIND } from './dots.js';
import { METRES_PER_M_S2, headed } from './arrows.js';
import { bodyAt, turnAt } from './model.js';
import { cupAt, leftAt, moved, riding, standOf } from './reach.js';
import { Ribbon } from './ribbon.js';
import { triad } from './ground.js';
import { figure, metres } from './spoken.js';
import { drawnVector } from './place.js';
import { BONE } from './materials.js';

const NONE = [];
const CHEST_M = 1.2;
const CAR_M = 2.3;
const RAIL_M = 0.68; // of a lift's shaft from its middle
const RAIL_WIDE_M = [0.05, 0.05];
const PLUMB = { pivot_m: 2.1, long_m: 1.2, aside_m: 0.4, front_m: 0.45 }; // in the cabin, in front of who rides
const LEAST_PX = 16;
const LEAST_M_S2 = 5e-4;
const NEAR_M = 0.05;
const ROUND = 1.005; // longer than straight by so much: it lies round something
const BESIDE = { pendulum: 'hung', lift: 'lifted', tether: 'tethered', cup: 'poured' }; // what is drawn with a motion → how

export class Threads {
  constructor(shared, frame) {
    this.frame = frame;
    this.line = new Ribbon(shared, { color: BONE, width: 1.6, order: 5, capacity: 64 });
    this.faint = new Ribbon(shared, { color: BONE, width: 1.6, alpha: 0.55, dash: [5, 4], order: 4, capacity: 32 });
    for (const ribbon of [this.line, this.faint]) ribbon.material.uniforms.uNow = { value: 1e9 };
    this.marks = new Dots(shared, { order: 7, depth: false, capacity: 8 });
    this.meshes = [this.line.mesh, this.faint.mesh, this.marks.points];
  }

  read(model, shown) {
    this.model = model;
    this.shown = shown.filter(m => BESIDE[m.stage.beside] && m.path.count);
  }

  // Gives the labels it asks for.
  update(time_s, eye, units) {
    if (!this.shown.length) return this.clear();
    Object.assign(this, { eye, units, lines: [], dashed: [], labels: [] });
    this.marks.begin();
    for (const m of this.shown)
      if (time_s >= m.starts_s - 1e-6) this[BESIDE[m.stage.beside]](m, Math.min(time_s, m.stage.beside === 'lift' ? time_s : m.ends_s), time_s);
    this.marks.end();
    this.line.set(this.lines);
    this.faint.set(this.dashed);
    this.faint.uniforms.uUnit.value = 1.6 * eye.metresPerPx;
    return this.labels;
  }

  clear() {
    this.line.mesh.visible = this.faint.mesh.visible = this.marks.points.visible = false;
    return NONE;
  }

  finding(m, name, time_s) {
    return findingAt(m.motion, this.model.answer.grid, name, time_s);
  }

  // The line is not drawn straight while nothing pulls it.
  hung(m, until_s, time_s) {
    if (!m.pivot_m) return;
    const pivot = riding(this.model, m.pivot_m, this.frame, time_s);
    const bob = bodyAt(this.model, m, this.frame, time_s, {});
    const slack = this.finding(m, 'tension_n', until_s) === 0;
    (slack ? this.dashed : this.lines).push({ points: [...xyz(pivot), ...xyz(bob)] });
    this.marks.add(pivot, { size: 7, kind: KIND.bead, time: -1e9 });
    const plumb = this.plumbAt(m, until_s, time_s);
    if (plumb) this.dashed.push({ points: [...xyz(pivot), ...xyz(plumb)] });
  }

  plumbAt(m, until_s, time_s) {
    const rows = m.motion.findings.plumb_rotating;
    if (!rows?.length) return null;
    const [first, rate] = [m.motion.first, this.model.answer.grid];
    const k = Math.max(0, Math.min(rows.length / 3 - 1, Math.round((until_s * rate.fps[0] * rate.samples_per_frame) / rate.fps[1]) - first));
    const way = drawnVector(
      [0, 1, 2].map(c => rows[3 * k + c]),
      {},
    );
    const end = riding(
      this.model,
      [0, 1, 2].map(c => m.pivot_m[c] + rows[3 * k + c] * (m.input.length_m ?? 1)),
      this.frame,
      time_s,
    );
    return Math.hypot(way.x, way.y, way.z) > 0 ? end : null;
  }

  lifted(m, until_s, time_s) {
    const { ground } = this.model;
    const { release, floor } = m;
    const turn = turnAt(this.model, this.frame, time_s);
    const { spin } = triad(ground.azimuth(release.along_m, floor) + turn, ground.level);
    const spoke = (height_m, aside_m) => moved(ground.at(release.along_m, height_m, release.axial_m, turn, {}, floor), spin, aside_m);
    const top_m = Math.max(m.input.place?.height_m ?? 0, m.input.to_height_m ?? 0) + CAR_M;
    for (const aside of [-RAIL_M, RAIL_M]) this.lines.push({ points: [0, top_m].flatMap(height_m => xyz(spoke(height_m, aside))), diameter: RAIL_WIDE_M });
    const push = this.finding(m, 'sideways_m_s2', until_s) ?? 0;
    if (time_s > m.ends_s + 1e-6 || Math.abs(push) < LEAST_M_S2) return;
    const stand = standOf(this.model, m, this.frame, time_s);
    const { feet, up } = stand;
    this.plumbAboard(stand, (Math.sign(push) * (this.finding(m, 'tilt_deg', until_s) ?? 0) * Math.PI) / 180);
    if (this.frame === 'outside') return;
    const chest = moved(feet, up, CHEST_M);
    const tip = moved(chest, spin, Math.sign(push) * Math.max(Math.abs(push) * METRES_PER_M_S2, LEAST_PX * this.eye.metresPerPx));
    this.lines.push(...headed(xyz(chest), xyz(tip), this.eye, 'coriolis'));
    this.labels.push({
      key: `push ${m.i}`,
      text: push > 0 ? tr('pressed spinward ') : tr('pressed antispinward '),
      strong: figure(Math.abs(push), 'm/s²', this.units),
      at: [tip],
      gap: 10,
    });
  }

  // Down as it is felt in the cabin: the bob goes where the rider is pressed, and has room to.
  plumbAboard({ feet, up, spin, axial }, tilt) {
    if (PLUMB.long_m < LEAST_PX * this.eye.metresPerPx) return;
    const pivot = moved(moved(moved(feet, up, PLUMB.pivot_m), spin, -Math.sign(tilt) * PLUMB.aside_m), axial, PLUMB.front_m);
    const bob = moved(moved(pivot, up, -PLUMB.long_m * Math.cos(tilt)), spin, PLUMB.long_m * Math.sin(tilt));
    this.dashed.push({ points: [...xyz(pivot), ...xyz(bob)] });
    this.marks.add(bob, { size: 7, kind: KIND.bead, time: -1e9 });
  }

  tethered(m, until_s, time_s) {
    const left = leftAt(this.model, m, this.frame, time_s);
    const body = bodyAt(this.model, m, this.frame, time_s, {});
    this.dashed.push({ points: [...xyz(left), ...xyz(body)] });
    this.marks.add(left, { size: 12, kind: KIND.ring, tint: [0.94, 0.92, 0.86] });
    this.labels.push(...this.howFar(m, until_s, middle(left, body)));
    this.passes(m);
  }

  // A line from the place they left may have to lie round the hull.
  howFar(m, time_s, at) {
    const [away_m, line_m] = ['distance_m', 'line_m'].map(name => this.finding(m, name, time_s) ?? 0);
    if (away_m < NEAR_M) return [];
    const round = line_m > away_m * ROUND ? tr('line round the hull {length}, straight ', { length: metres(line_m, this.units) }) : tr('line ');
    return [{ key: `line ${m.i}`, text: round, strong: metres(away_m, this.units), at: [at], gap: 8, shy: true }];
  }

  // What became of what was poured, at its cup.
  poured(m, _until_s, time_s) {
    const { caught } = m.motion.findings;
    if (!m.input.target || typeof caught !== 'number') return;
    const strong = caught > 0 ? tr('{share} % caught', { share: Math.round(100 * caught) }) : tr('missed');
    this.labels.push({ key: `cup ${m.i}`, strong, text: '', at: [cupAt(this.model, m, this.frame, time_s)], gap: 12 });
  }

  // Where they are each time the place they left sweeps by.
  passes(m) {
    const { points, time } = m.lines[this.frame];
    (m.motion.findings.sweeps_by ?? []).forEach(({ time_s, distance_m }, k) => {
      const i = time.findIndex(t => t >= time_s);
      if (i < 0) return;
      const at = { x: points[3 * i], y: points[3 * i + 1], z: points[3 * i + 2] };
      this.marks.add(at, { size: 13, kind: KIND.diamond, tint: [0.94, 0.92, 0.86], alpha: 0.4 });
      this.labels.push({
        key: `pass ${m.i} ${k}`,
        text: tr('{time}, sweeps by at ', { time: figure(time_s, 's', 'si', 1) }),
        strong: metres(distance_m, this.units),
        at: [at],
        gap: 10,
        shy: true,
      });
    });
  }
}

const xyz = ({ x, y, z }) => [x, y, z];
const middle = (a, b) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 });
