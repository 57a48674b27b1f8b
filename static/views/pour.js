// A pour at time t. At steady spin every parcel follows the same path in the turning frame, later by when it left: the stream is
// that path between two ages, the drops are points on it. Where each parcel has its own path, the answer holds them all
// (`pour_own.js`). Both stages draw it in the turning frame, Outside turned by the angle.

import { Group } from '../vendor/three.module.js';
import { angleAt, at } from '../time/track.js';
import { Dots, KIND } from './dots.js';
import { drawnPoint, turned } from './place.js';
import { eachDrop, streamLines } from './pour_own.js';
import { Ribbon } from './ribbon.js';
import { rgb } from './styles.js';

const MOST_DROPS = 1500;
const DROP_PX = 4.2;             // at least; drops that fall one by one are drawn so that each is seen
const DRIP_PX = 8;
const WATER = rgb('#D8ECF4');
const held = [0, 0, 0];
const p = { x: 0, y: 0, z: 0 };

export class Pours {
  constructor(shared, frame) {
    this.shared = shared;
    this.frame = frame;
    this.group = new Group();
    this.turning = new Group();       // turned about the axis by the habitat's angle
    this.inner = new Group();
    this.turning.add(this.inner);
    this.ribbons = [];
    this.drops = new Dots(shared, { order: 6, capacity: 256 });
    this.group.add(this.turning, this.drops.points);
  }

  read(model, shown) {
    this.model = model;
    this.pours = shown.filter((m) => m.stream);
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
    const { radius_m, answer: { grid } } = this.model;
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
  const diameter = Array.from(time, (t) => (known ? at(m.path, t, 'diameter_m') : 0));
  return { points, time: Array.from(time, (t) => t - m.starts_s), diameter };
}
