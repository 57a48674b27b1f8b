// The paths of one stage: a ribbon each, flown and still to fly told apart in the shader by time, beads at equal times, the
// landing's mark, and the same under plain gravity.

import { Group } from '../vendor/three.module.js';
import { at, isLanding } from '../time/track.js';
import { isWithheld } from '../state/shown.js';
import { Dots, KIND } from './dots.js';
import { PERSON_M } from './lay_figure.js';
import { drawnPoint } from './place.js';
import { Ribbon } from './ribbon.js';
import { companionOutside } from './camera_presets.js';
import { PLAIN } from '../state/palette.js';
import { rgb } from './materials.js';

const MOST_BEADS = 240;
const CASING = 2;
const PLAIN_ALPHA = 0.8;
const BEADS_SHRINK_PX = 22; // a person lower than this on the picture: smaller beads, or they would run together
const TO_THE_END = { value: 1e9 };
const OPEN = 0.4; // of a marker: its outline alone
const held = [0, 0, 0];
const p = { x: 0, y: 0, z: 0 };

export class Paths {
  constructor(shared, frame) {
    this.shared = shared;
    this.frame = frame;
    this.group = new Group();
    this.pool = new Map();
    this.sized = { px: 0, metresPerPx: 0 };
    this.beads = new Dots(shared, { order: 5 });
    this.marks = new Dots(shared, { order: 7, depth: false });
    this.group.add(this.beads.points, this.marks.points);
  }

  read(model, shown, view) {
    this.plain = new Map();
    this.sized.px = 0;
    for (const entry of this.pool.values()) entry.line.mesh.visible = entry.plain.mesh.visible = false;
    const plain = view.companion && (this.frame === 'aboard' || view.companionOutside);
    const told = shown.filter(m => !isWithheld(view, m.name));
    shown.forEach((m, k) => this.readOne(model, m, k, plain && told.includes(m), told.includes(m)));
    this.readBeads(model, told, view.beads_s);
    this.readMarks(model, told);
  }

  // `whole`: with what is still to fly.
  readOne(model, m, k, plain, whole) {
    const entry = this.entry(m);
    const { line, plain: dotted } = entry;
    line.mesh.renderOrder = 4 - 0.01 * k;
    line.material.depthTest = !m.outside;
    line.uniforms.uTo = whole ? TO_THE_END : this.shared.uNow;
    line.set([m.lines[this.frame]]);
    Object.assign(entry, { thin: m.stream ? 0.5 : 1 });
    line.uniforms.uAlpha.value = m.stream ? 0.7 : 1;
    line.uniforms.uCasing.value = m.stream ? 1 : CASING;
    if (!plain || !m.lines.companion) return;
    const { points, time } = m.lines.companion;
    this.plain.set(m, this.frame === 'aboard' ? points : companionOutside(model, points, time));
    dotted.set([{ points: this.plain.get(m) }]);
  }

  companionLine(m) {
    return this.plain.get(m) ?? null;
  }

  entry(m) {
    const key = m.i % 12;
    if (!this.pool.has(key)) {
      const line = new Ribbon(this.shared, { color: m.style.color, width: 4.5, casing: CASING, ahead: 0.55, dash: m.style.dash, order: 4 });
      const plain = new Ribbon(this.shared, { color: PLAIN.color, alpha: PLAIN_ALPHA, width: 3.4, dash: PLAIN.dash, round: true, order: 3 });
      plain.material.uniforms.uNow = { value: 1e9 };
      this.group.add(line.mesh, plain.mesh);
      this.pool.set(key, { line, plain });
    }
    return this.pool.get(key);
  }

  readBeads(model, shown, beads_s) {
    this.beads.begin();
    for (const m of beads_s ? shown.filter(one => !one.stream) : []) {
      const every = Math.max(beads_s, (m.ends_s - m.starts_s) / MOST_BEADS);
      for (let t = m.starts_s; t <= m.ends_s + 1e-6; t += every) {
        drawnPoint(at(m.path, t, this.frame === 'aboard' ? 'rotating_m' : 'inertial_m', held), 0, model.radius_m, p);
        this.beads.add(p, { size: 6.4, kind: KIND.bead, time: t, tint: rgb(m.style.color) });
      }
    }
    this.beads.end();
  }

  // Outside what has landed is carried on from its mark: a filled one would be taken for another thing.
  readMarks(model, shown) {
    this.marks.begin();
    for (const m of shown)
      if (m.landing) {
        const landed = m.motion.events.find(isLanding);
        if (landed)
          this.marks.add(drawnPoint(landed[this.frame === 'aboard' ? 'rotating_m' : 'inertial_m'], 0, model.radius_m, p), {
            size: 17,
            kind: KIND[m.style.marker],
            tint: rgb(m.style.color),
            alpha: m.style.open || this.frame === 'outside' ? OPEN : 1,
          });
      }
    this.marks.end();
  }

  // Line width in px, and the metres that one line width measures at the flight's distance (the unit of the dashes).
  size(px, metresPerPx) {
    if (this.sized.px === px && this.sized.metresPerPx === metresPerPx) return;
    Object.assign(this.sized, { px, metresPerPx });
    for (const { line, plain, thin } of this.pool.values()) {
      line.uniforms.uWidth.value = px * thin;
      plain.uniforms.uWidth.value = px * 0.76;
      line.uniforms.uUnit.value = px * metresPerPx;
      plain.uniforms.uUnit.value = px * metresPerPx;
    }
    this.beads.material.uniforms.uScale.value = (px / 4.5) * Math.max(0.45, Math.min(1, PERSON_M / (BEADS_SHRINK_PX * metresPerPx)));
    this.marks.material.uniforms.uScale.value = Math.max(0.85, px / 4.5);
  }
}
