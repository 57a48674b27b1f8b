// Those who are themselves what moves: the lay figure that jumps, walks, rides or lets go, its lift, and the craft that comes in.

import { Group, Matrix4, Mesh, Vector3, BoxGeometry, ConeGeometry, CylinderGeometry, TorusGeometry } from '../vendor/three.module.js';
import { findingAt } from '../time/findings.js';
import { angleAt } from '../time/track.js';
import { PERSON_M } from './lay_figure.js';
import { cardMaterial } from './materials.js';
import { bodyAt } from './model.js';
import { moved, standOf } from './reach.js';
import { merged } from './geometry.js';

const DEG = Math.PI / 180;
const LEAST_PX = 10; // lower on the picture than this, and a dot says more than a figure
const CAR_PX = 22; // high; a lift's cabin is drawn no smaller
const CRAFT_PX = 26; // a craft is drawn no shorter
const turning = new Matrix4();
const [x, y, z] = [new Vector3(), new Vector3(), new Vector3()];

export class Movers {
  constructor(shared, frame, figure, wood) {
    Object.assign(this, { shared, frame, group: new Group(), pools: new Map(), shown: [], tall: 1 });
    this.make = {
      person: () => new Mesh(figure, wood),
      car: () => new Mesh((this.car ??= carGeometry()), (this.card ??= cardMaterial(shared, '#9AA3A1', { fill: 0.6, matter: 'metal' }))),
      craft: () => new Mesh((this.hull ??= craftGeometry()), (this.card ??= cardMaterial(shared, '#9AA3A1', { fill: 0.6, matter: 'metal' }))),
    };
  }

  read(model, shown) {
    this.model = model;
    this.shown = shown.filter(m => m.path.count && !m.tumbles && (m.stage.mover === 'person' || m.stage.mover === 'craft'));
  }

  // Whether it is drawn here, and not as a dot.
  draws(m, metresPerPx) {
    return this.shown.includes(m) && (m.stage.mover === 'craft' || PERSON_M > LEAST_PX * metresPerPx);
  }

  update(time_s, metresPerPx) {
    if (!this.shown.length && !this.pools.size) return;
    this.used = { person: 0, car: 0, craft: 0 };
    for (const m of this.shown.filter(({ starts_s }) => time_s >= starts_s - 1e-6)) {
      if (m.stage.mover === 'craft') this.putCraft(m, time_s, metresPerPx);
      else if (this.draws(m, metresPerPx)) this.putPerson(m, time_s);
      else if (m.stage.beside === 'lift') this.putCar(m, time_s, CAR_PX * metresPerPx);
    }
    for (const [kind, pool] of this.pools)
      pool.forEach((mesh, k) => {
        mesh.visible = k < this.used[kind];
      });
  }

  putPerson(m, time_s) {
    const { feet, cabin, axes } = this.stance(m, time_s);
    if (m.stage.beside === 'lift') {
      const car = this.next('car');
      this.place(car, feet, cabin);
      car.scale.setScalar(1);
    }
    const mesh = this.next('person');
    this.place(mesh, feet, axes);
    mesh.scale.setScalar(this.tall);
  }

  // From so far off that nobody is seen in it: as large as can be made out, its middle where the rider's is.
  putCar(m, time_s, high_m) {
    const { spin, up, axial, centre } = standOf(this.model, m, this.frame, time_s);
    const mesh = this.next('car');
    this.place(mesh, moved(centre, up, -high_m / 2), [spin, up, axial]);
    mesh.scale.setScalar(high_m / HIGH_M);
  }

  // Where the feet are, the axes of who moves (forward, up, side), and those of the ground, as a lift's cabin has them.
  stance(m, time_s) {
    const { spin, up, axial, feet } = standOf(this.model, m, this.frame, time_s);
    const turn = headed(spin, axial, (m.input.heading_deg ?? 0) * DEG);
    const axes = leant([turn.forward, up, turn.side], spin, this.lean(m, time_s));
    return { feet, up: axes[1], axes, cabin: [spin, up, axial] };
  }

  // Against what is felt sideways, so that it and the weight go through the feet.
  lean(m, time_s) {
    const finding = name => findingAt(m.motion, this.model.answer.grid, name, time_s) ?? 0;
    return -Math.sign(finding('sideways_m_s2')) * finding('lean_deg') * DEG;
  }

  // It does not turn while it coasts; docked, it turns with what it is docked to.
  putCraft(m, time_s, metresPerPx) {
    const { points } = m.lines.outside;
    const way = [0, 1, 2].map(c => points[points.length - 3 + c] - points[c]);
    const long = Math.hypot(...way) || 1;
    const { answer } = this.model;
    const last_s = Math.min(time_s, m.ends_s);
    const turn = this.frame === 'outside' ? angleAt(answer, time_s) - angleAt(answer, last_s) : -angleAt(answer, last_s);
    const nose = turnedWay(
      way.map(part => part / long),
      turn,
    );
    const side = Math.abs(nose[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1];
    const up = unit(cross(side, nose));
    const mesh = this.next('craft');
    this.place(mesh, bodyAt(this.model, m, this.frame, time_s, {}), [nose, up, cross(nose, up)]);
    mesh.scale.setScalar(Math.max(m.size_m ?? 1, CRAFT_PX * metresPerPx));
  }

  next(kind) {
    if (!this.pools.has(kind)) this.pools.set(kind, []);
    const pool = this.pools.get(kind);
    if (pool.length === this.used[kind]) {
      pool.push(this.make[kind]());
      this.group.add(pool.at(-1));
    }
    this.used[kind] += 1;
    return pool[this.used[kind] - 1];
  }

  place(mesh, at, [a, b, c]) {
    mesh.position.set(at.x, at.y, at.z);
    mesh.quaternion.setFromRotationMatrix(turning.makeBasis(x.set(...a), y.set(...b), z.set(...c)));
  }
}

// Facing along the ground by an angle from spinward.
function headed(spin, axial, heading) {
  const [s, c] = [Math.sin(heading), Math.cos(heading)];
  return { forward: mix(spin, c, axial, s), side: mix(axial, c, spin, -s) };
}

// The three axes of a figure tipped toward `spin` by an angle.
function leant(axes, spin, angle) {
  if (!angle) return axes;
  const about = cross(axes[1], spin);
  const [s, c] = [Math.sin(angle), Math.cos(angle)];
  return axes.map(v => {
    const along = dot(about, v) * (1 - c);
    const across = cross(about, v);
    return v.map((part, k) => part * c + across[k] * s + about[k] * along);
  });
}

function turnedWay([a, b, c], turn) {
  return [a * Math.cos(turn) - b * Math.sin(turn), a * Math.sin(turn) + b * Math.cos(turn), c];
}

const mix = (a, by, b, more) => a.map((part, k) => part * by + b[k] * more);
const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = v => v.map(part => part / (Math.hypot(...v) || 1));

// What carries people: the car of a lift, and a craft that comes in. Plain shapes of the page's own, made once.

const FLOOR_M = 0.08,
  WIDE_M = 1.2,
  HIGH_M = 2.2,
  POST_M = 0.05;

// A lift's car: a floor, a roof, a post at each corner; open, so that one sees who rides. Its floor is at the origin.
function carGeometry() {
  const parts = [0, HIGH_M].map(y => new BoxGeometry(WIDE_M, FLOOR_M, WIDE_M).translate(0, y - FLOOR_M / 2, 0));
  for (const x of [-1, 1])
    for (const z of [-1, 1])
      parts.push(new BoxGeometry(POST_M, HIGH_M, POST_M).translate((x * (WIDE_M - POST_M)) / 2, HIGH_M / 2, (z * (WIDE_M - POST_M)) / 2));
  return merged(parts);
}

// A craft of size 1, its nose along x: a barrel with a collar at the nose, a blunt cone behind it, and four struts.
function craftGeometry() {
  const lying = (geometry, x) => geometry.rotateZ(-Math.PI / 2).translate(x, 0, 0);
  const parts = [
    lying(new CylinderGeometry(0.2, 0.24, 0.62, 20), 0.02),
    lying(new ConeGeometry(0.24, 0.3, 20).rotateX(Math.PI), -0.4),
    new TorusGeometry(0.15, 0.035, 8, 20).rotateY(Math.PI / 2).translate(0.36, 0, 0),
  ];
  for (let k = 0; k < 4; k += 1) parts.push(new BoxGeometry(0.42, 0.03, 0.05).translate(-0.1, 0.3, 0).rotateX((k * Math.PI) / 2 + Math.PI / 4));
  return merged(parts);
}
