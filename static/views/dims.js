// Ruled dimensions on the deck: how far each landing drifted, and how far the habitat has turned. Every figure is the answer's.

import { tr, trLater } from '../state/language.js';
import { angleAt } from '../time/track.js';
import { drawTip } from './arrows.js';
import { PERSON_M } from './lay_figure.js';
import { Ribbon } from './ribbon.js';
import { degrees, figure, metres } from './spoken.js';
import { BONE } from './materials.js';
import { howFar } from '../state/ways.js';

const NONE = Object.freeze([]);
const LEAST_M = 0.005; // less would be written 0.00
const MOST_PARTS = 96; // of a line along the deck
const arc = new Float64Array(3 * (MOST_PARTS + 1));
const place = { x: 0, y: 0, z: 0 };
const [before, tip] = [
  [0, 0, 0],
  [0, 0, 0],
];
const SMALL_PX = 16; // a person lower than this on the picture: only dimensions twice as long are worth reading

export class Dims {
  constructor(shared) {
    this.ribbon = new Ribbon(shared, { color: BONE, width: 1.7, alpha: 0.92, order: 3, pull: 1e-3, capacity: 256 });
    this.ribbon.material.uniforms.uNow = { value: 1e9 };
    this.mesh = this.ribbon.mesh;
    this.turnedLabels = [{ key: 'turned', text: '', strong: '', at: [{ x: 0.5, y: 0.5, z: 0.5 }], gap: 10, below: true }]; // the same one every frame
  }

  // One dimension a landing, in front of the flight; those that would lie on each other step toward the eye.
  drift(model, shown, eye, frontEdge_m, units) {
    const lines = [];
    const labels = [];
    const gap = Math.min(1.6, 0.3 * model.radius_m) * Math.max(Math.min(1, eye.span_m / 22), eye.span_m / 40);
    const taken = [];
    const least_m = PERSON_M < SMALL_PX * eye.metresPerPx ? 3 * SMALL_PX * eye.metresPerPx : 0;
    const landed = shown.filter(m => m.landing && reach(model, m) >= Math.max(least_m, LEAST_M)).sort((a, b) => reach(model, a) - reach(model, b));
    for (const m of landed) {
      const floor = new Marked(model.ground, m.floor);
      if (model.ground.level) {
        const [from, to] = [m.release, m.landing].map(end => floor.point(end.along_m, end.axial_m));
        lines.push({ points: [from.x, from.y, from.z, to.x, to.y, to.z] });
        labels.push({
          key: `drift ${m.i}`,
          text: metres(reach(model, m), units),
          at: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, z: (from.z + to.z) / 2 },
        });
        continue;
      }
      const a0 = m.release.along_m;
      const a1 = m.landing.way.turns ? a0 + 2 * Math.PI * model.radius_m * m.landing.way.of_turn : m.landing.along_m; // the nearest way
      const span = [Math.min(a0, a1), Math.max(a0, a1)];
      const level = taken.filter(t => t[0] < span[1] - 1e-3 && t[1] > span[0] + 1e-3).length;
      taken.push(span);
      const z = Math.min(m.landing.axial_m + gap * (1 + 0.6 * level), frontEdge_m);
      lines.push(...this.ruled(floor, a0, a1, m.landing.axial_m, z));
      labels.push({ key: `drift ${m.i}`, text: howFar(m.landing.way, units, figure), at: floor.point((a0 + a1) / 2, z) });
    }
    this.ribbon.set(lines);
    return labels;
  }

  ruled(floor, a0, a1, from_z, z) {
    const over = 0.2 * Math.abs(z - from_z);
    return [{ points: floor.line(a0, a1, z) }, ...[a0, a1].map(a => ({ points: [from_z + over, z + over].flatMap(axial => floor.xyz(a, axial)) }))];
  }

  // Outside: from the ghost to the figure.
  turned(model, person, time_s, eye, frontEdge_m) {
    const R = model.radius_m;
    const by = angleAt(model.answer, time_s) - angleAt(model.answer, person.since_s);
    if (Math.abs(by) * R < 0.4 * Math.min(1, R / 4)) {
      return this.clear();
    }
    const z = Math.min(person.axial_m + 2.4 * Math.max(0.12, Math.min(1, R / 20)) * Math.max(Math.min(1, eye.span_m / 24), eye.span_m / 70), frontEdge_m);
    const floor = this.markedOn(model.ground, person.floor);
    const shown = Math.min(by, 2 * Math.PI - 0.02);
    const count = floor.arcInto(arc, person.along_m, person.since_rad, person.since_rad + shown, z);
    const tick = 0.16 * (z - person.axial_m);
    const { ribbon } = this;
    for (let c = 0; c < 3; c += 1) {
      before[c] = arc[3 * count - 6 + c];
      tip[c] = arc[3 * count - 3 + c];
    }
    ribbon.begin();
    ribbon.line(arc, count);
    drawTip(ribbon, before, tip, eye, 'velocity');
    floor.into(arc, 0, person.along_m, z - tick, person.since_rad);
    floor.into(arc, 1, person.along_m, z + tick, person.since_rad);
    ribbon.line(arc, 2);
    ribbon.end();
    const [label] = this.turnedLabels;
    label.text = floor.turnedWords;
    label.strong = degrees(by);
    floor.ground.on(person.along_m, floor.lift_m, z, person.since_rad + shown / 2, label.at[0], person.floor);
    return this.turnedLabels;
  }

  // The same one until the habitat is another.
  markedOn(ground, floor) {
    if (this.marked?.ground !== ground || this.marked.floor !== floor) this.marked = new Marked(ground, floor);
    return this.marked;
  }

  clear() {
    this.mesh.visible = false;
    return NONE;
  }
}

const TURNED = { habitat: trLater('the habitat has turned '), craft: trLater('the craft has turned '), turntable: trLater('the turntable has turned ') };

// How far off it lands, as its dimension is ruled: spinward, on a turntable straight.
function reach({ ground }, { landing: { way } }) {
  return ground.level ? Math.hypot(way.spinward_m, way.axial_m) : Math.abs(way.spinward_m);
}

// Lines drawn on one floor, a hair above it.
class Marked {
  constructor(ground, floor) {
    Object.assign(this, { ground, floor, lift_m: Math.min(0.02, 0.003 * ground.radius_m), turnedWords: tr(TURNED[ground.whole]) });
  }

  point(along, axial, turn = 0) {
    return this.ground.on(along, this.lift_m, axial, turn, {}, this.floor);
  }

  xyz(along, axial, turn = 0) {
    const { x, y, z } = this.point(along, axial, turn);
    return [x, y, z];
  }

  // Along the deck, and with the deck as it turns.
  line(from, to, axial) {
    return steps(from, to, 0.04 * this.ground.radius_m).flatMap(along => this.xyz(along, axial));
  }

  // Into `out`; how many points they are.
  arcInto(out, along, from_rad, to_rad, axial) {
    const parts = partsOf(from_rad, to_rad, 0.04);
    for (let k = 0; k <= parts; k += 1) this.into(out, k, along, axial, from_rad + ((to_rad - from_rad) * k) / parts);
    return parts + 1;
  }

  into(out, k, along, axial, turn) {
    const { x, y, z } = this.ground.on(along, this.lift_m, axial, turn, place, this.floor);
    out[3 * k] = x;
    out[3 * k + 1] = y;
    out[3 * k + 2] = z;
  }
}

function partsOf(from, to, size) {
  return Math.max(8, Math.min(MOST_PARTS, Math.ceil(Math.abs(to - from) / size)));
}

function steps(from, to, size) {
  const parts = partsOf(from, to, size);
  return Array.from({ length: parts + 1 }, (_, k) => from + ((to - from) * k) / parts);
}
