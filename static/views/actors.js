// Who and what moves on a stage at time t: the lay figures, the bodies, and the shadows of both.

import { Group, Mesh, Quaternion, Vector3, BufferAttribute, BufferGeometry, DynamicDrawUsage } from '../vendor/three.module.js';
import { at } from '../time/track.js';
import { Balls } from './balls.js';
import { cardMaterial, blobMaterial, rgb } from './materials.js';
import { Dots, KIND } from './dots.js';
import { FirstPart } from './first_part.js';
import { figureGeometry, PERSON_M } from './lay_figure.js';
import { bodyAt, standing, turnAt } from './model.js';
import { Movers } from './movers.js';

const BODY_PX = 13;
const p = { x: 0, y: 0, z: 0 };
const below = { along_m: 0.5, height_m: 0.5, axial_m: 0.5 };
const attitude = [1, 0, 0, 0];
const AXIS = new Vector3(0, 0, 1);
const RISEN = new Quaternion().setFromAxisAngle(new Vector3(1, 0, 0), Math.PI / 2); // upright where up is along the axis

export class Actors {
  constructor(shared, frame, geometry = figureGeometry()) {
    this.frame = frame;
    this.group = new Group();
    this.geometry = geometry;
    this.wood = cardMaterial(shared, '#D9D2BF', { fill: 0.85, matter: 'cloth' });
    this.pale = cardMaterial(shared, '#C9CED0', { fill: 0.9, alpha: 0.3 });
    this.poses = new Map();
    this.people = [];
    this.ghosts = [];
    this.bodies = new Dots(shared, { order: 8 });
    this.balls = new Balls(shared, this.group);
    this.shadows = new Shadows(shared);
    this.movers = new Movers(shared, frame, geometry, this.wood);
    this.group.add(this.bodies.points, this.movers.group, this.shadows.mesh);
    this.metresPerPx = 0;
    this.tall = 1;
  }

  // How tall people are drawn.
  grow(tall_m) {
    this.tall = this.movers.tall = tall_m / PERSON_M;
  }

  read(model, shown) {
    this.model = model;
    this.shown = shown;
    const people = standing(shown, model.ground);
    this.where = people.filter(({ floor }) => PERSON_M < model.ground.headroom(floor));
    this.stand(this.people, this.where.length, this.wood);
    this.where.forEach(({ hand }, k) => {
      this.people[k].geometry = this.posed(hand);
    });
    this.balls.read(shown);
    this.movers.read(model, shown);
    this.looks = new Map(shown.map(m => [m, { size: BODY_PX, diameter: m.diameter_m, tint: rgb(m.style.color), kind: KIND.ball, time: 0 }]));
  }

  stand(meshes, count, material) {
    while (meshes.length < count) {
      const mesh = new Mesh(this.geometry, material);
      mesh.renderOrder = material.transparent ? 3 : 0;
      meshes.push(mesh);
      this.group.add(mesh);
    }
    meshes.forEach((mesh, k) => {
      mesh.visible = k < count;
    });
  }

  // With a hand at what they hold; few heights are ever asked for.
  posed(hand) {
    if (!hand) return this.geometry;
    const key = hand.map(part => part.toFixed(2)).join();
    if (!this.poses.has(key)) this.poses.set(key, figureGeometry(hand));
    return this.poses.get(key);
  }

  update(time_s) {
    const turn = turnAt(this.model, this.frame, time_s);
    this.shadows.begin();
    for (let k = 0; k < this.where.length; k += 1) this.putPerson(this.people[k], this.where[k], turn, true);
    this.putGhosts(turn);
    this.movers.update(time_s, this.metresPerPx);
    this.putBodies(time_s, turn);
    this.shadows.end();
  }

  // Outside, a pale ghost stays where each figure stood at the release. `exposures`: more angles at which to draw it faintly.
  putGhosts(turn) {
    if (this.frame !== 'outside' || this.model.tumbling) return;
    let count = 0;
    for (const person of this.where)
      if (this.exposures) for (const angle of this.exposures) count += this.putGhost(count, person, angle, turn);
      else count += this.putGhost(count, person, person.since_rad, turn);
    for (let k = count; k < this.ghosts.length; k += 1) this.ghosts[k].visible = false;
  }

  // How many more there are: none where the figure itself still stands.
  putGhost(k, person, angle, turn) {
    if (Math.abs(turn - angle) * this.model.radius_m <= 0.25) return 0;
    if (k === this.ghosts.length) this.stand(this.ghosts, k + 1, this.pale);
    const ghost = this.ghosts[k];
    ghost.visible = true;
    ghost.geometry = this.posed(person.hand);
    this.putPerson(ghost, person, angle, false);
    return 1;
  }

  putPerson(mesh, person, turn, dark) {
    const { ground } = this.model;
    const { along_m, axial_m, floor, heading_rad = 0 } = person;
    ground.on(along_m, 0, axial_m, turn, p, floor);
    mesh.position.set(p.x, p.y, p.z);
    mesh.quaternion.setFromAxisAngle(AXIS, ground.azimuth(along_m, floor) + turn);
    if (ground.level) mesh.quaternion.multiply(RISEN);
    if (heading_rad) mesh.rotateY(-heading_rad);
    mesh.scale.setScalar(this.tall);
    if (dark) this.shadows.add(ground, along_m, axial_m, floor, turn, Math.min(0.46, 0.2 * ground.radius_m), 0.62);
  }

  putBodies(time_s, turn) {
    this.bodies.begin();
    this.balls.begin();
    for (let k = 0; k < this.shown.length; k += 1) {
      const m = this.shown[k];
      if (m.stream || m.tumbles || time_s < m.starts_s - 1e-6) continue; // a craft that tumbles is the scenery
      bodyAt(this.model, m, this.frame, time_s, p);
      this.shade(p, m, turn);
      if (this.movers.draws(m, this.metresPerPx)) continue;
      const look = this.looks.get(m);
      if (m.stage.mover === 'cup') {
        look.kind = KIND.cup;
        look.time = this.azimuthAt(m, time_s, turn);
        this.bodies.add(p, look);
      } else if (m.path.attitude_wxyz) this.balls.add(p, look, at(m.path, time_s, 'attitude_wxyz', attitude), turn);
      else this.bodies.add(p, look);
    }
    this.bodies.end();
    this.balls.end();
  }

  azimuthAt(m, time_s, turn) {
    return this.model.ground.azimuth(at(m.path, time_s, 'along_m') ?? 0, m.floor) + turn;
  }

  shade(point, m, turn) {
    const under = this.model.ground.under(point, turn, m.floor, below);
    if (!under) return;
    const soft = 1 + 0.35 * Math.max(0, under.height_m);
    this.shadows.add(
      this.model.ground,
      under.along_m,
      under.axial_m,
      m.floor,
      turn,
      Math.max(0.5 * m.diameter_m, this.least_m ?? 0.1) * soft,
      0.72 / (1 + 0.22 * Math.max(0, under.height_m)),
    );
  }
}

// Soft shadows: each lies on the deck straight under its thing and shows where along it is.

const MOST = 400;
// biome-ignore format: corner by corner
const CORNERS = [-1, -1, 1, -1, 1, 1, -1, 1];
const corner = { x: 0, y: 0, z: 0 };

class Shadows {
  constructor(shared) {
    const geometry = new BufferGeometry();
    this.position = new BufferAttribute(new Float32Array(MOST * 12), 3).setUsage(DynamicDrawUsage);
    this.strength = new BufferAttribute(new Float32Array(MOST * 4), 1).setUsage(DynamicDrawUsage);
    geometry.setAttribute('position', this.position);
    geometry.setAttribute('strength', this.strength);
    geometry.setAttribute(
      'uv',
      new BufferAttribute(
        Float32Array.from({ length: MOST * 8 }, (_, i) => [0, 0, 1, 0, 1, 1, 0, 1][i % 8]),
        2,
      ),
    );
    geometry.setIndex(Array.from({ length: MOST * 6 }, (_, i) => 4 * Math.floor(i / 6) + [0, 1, 2, 0, 2, 3][i % 6]));
    this.mesh = new Mesh(geometry, blobMaterial(shared, '#020406', { core: 0.2 }));
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 2;
    this.sent = [new FirstPart(this.position), new FirstPart(this.strength)];
    this.count = 0;
  }

  begin() {
    this.count = 0;
  }

  // A shadow of radius `size_m` round a place of the deck, the habitat turned by `turn_rad`.
  add(ground, along_m, axial_m, floor, turn_rad, size_m, strength) {
    if (this.count === MOST) return;
    const lift_m = Math.min(0.012, 0.002 * ground.radius_m);
    const stretch = ground.level ? ground.radius_m / Math.max(axial_m, size_m) : 1;
    for (let k = 0; k < 4; k += 1) {
      ground.on(along_m + CORNERS[2 * k] * size_m * stretch, lift_m, axial_m + CORNERS[2 * k + 1] * size_m, turn_rad, corner, floor);
      this.position.setXYZ(4 * this.count + k, corner.x, corner.y, corner.z);
      this.strength.setX(4 * this.count + k, strength);
    }
    this.count += 1;
  }

  end() {
    this.mesh.visible = this.count > 0;
    if (!this.count) return;
    this.sent[0].send(this.count * 12);
    this.sent[1].send(this.count * 4);
    this.mesh.geometry.setDrawRange(0, this.count * 6);
  }
}
