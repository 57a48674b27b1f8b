// Who and what moves on a stage at time t: the lay figures, the bodies, and the shadows of both.

import { Group, Mesh } from '../vendor/three.module.js';
import { angleAt } from '../time/track.js';
import { cardMaterial } from './materials.js';
import { Dots, KIND } from './dots.js';
import { figureGeometry, PERSON_M } from './figure.js';
import { bodyAt, groundOf, standing } from './model.js';
import { placeAt } from './place.js';
import { Shadows } from './shadows.js';
import { rgb } from './styles.js';

const BODY_PX = 13;
const p = { x: 0, y: 0, z: 0 };

export class Actors {
  constructor(shared, frame, geometry = figureGeometry()) {
    this.frame = frame;
    this.group = new Group();
    this.geometry = geometry;
    this.wood = cardMaterial(shared, '#D9D2BF', { fill: 0.85 });
    this.pale = cardMaterial(shared, '#C9CED0', { fill: 0.9, alpha: 0.3 });
    this.people = [];
    this.ghosts = [];
    this.bodies = new Dots(shared, { order: 8 });
    this.shadows = new Shadows(shared);
    this.group.add(this.bodies.points, this.shadows.mesh);
  }

  read(model, shown) {
    this.model = model;
    this.shown = shown;
    const fits = PERSON_M < 2 * model.radius_m - 0.1 && PERSON_M < (model.shape.ceiling_m ?? 1e9);
    this.where = fits ? (shown.length ? standing(shown) : [{ along_m: 0, axial_m: 0, since_s: 0, release_rad: 0 }]) : [];
    this.stand(this.people, this.where.length, this.wood);
  }

  stand(meshes, count, material) {
    while (meshes.length < count) {
      const mesh = new Mesh(this.geometry, material);
      mesh.renderOrder = material.transparent ? 3 : 0;
      meshes.push(mesh);
      this.group.add(mesh);
    }
    meshes.forEach((mesh, k) => { mesh.visible = k < count; });
  }

  update(time_s) {
    const turn = this.frame === 'outside' ? angleAt(this.model.answer, time_s) : 0;
    this.shadows.begin();
    this.where.forEach((person, k) => this.putPerson(this.people[k], person.along_m / this.model.radius_m + turn, person.axial_m, true));
    this.putGhosts(turn);
    this.putBodies(time_s);
    this.shadows.end();
  }

  // Outside, a pale ghost stays where each figure stood at the release. `exposures`: more angles at which to draw it faintly.
  putGhosts(turn) {
    if (this.frame !== 'outside') return;
    const spots = this.where.flatMap((person) => (this.exposures ?? [person.release_rad - person.along_m / this.model.radius_m])
      .filter((angle) => Math.abs(turn - angle) * this.model.radius_m > 0.25)
      .map((angle) => [angle + person.along_m / this.model.radius_m, person.axial_m]));
    this.stand(this.ghosts, spots.length, this.pale);
    spots.forEach(([azimuth, axial], k) => this.putPerson(this.ghosts[k], azimuth, axial, false));
  }

  putPerson(mesh, azimuth, axial_m, dark) {
    const R = this.model.radius_m;
    placeAt(R, azimuth * R, 0, axial_m, 0, p);
    mesh.position.set(p.x, p.y, p.z);
    mesh.rotation.z = azimuth;
    if (dark) this.shadows.add(R, azimuth, axial_m, Math.min(0.46, 0.2 * R), 0.62);
  }

  putBodies(time_s) {
    this.bodies.begin();
    for (const m of this.shown) {
      if (m.stream || time_s < m.starts_s - 1e-6) continue;
      bodyAt(this.model, m, this.frame, time_s, p);
      this.bodies.add(p, { size: BODY_PX, diameter: m.diameter_m, kind: KIND.ball, tint: rgb(m.style.color) });
      this.shade(p, m.diameter_m);
    }
    this.bodies.end();
  }

  shade(point, diameter_m) {
    const { along_rad, height_m, axial_m } = groundOf(this.model, point);
    const soft = 1 + 0.35 * height_m;
    this.shadows.add(this.model.radius_m, along_rad, axial_m, Math.max(0.5 * diameter_m, this.least_m ?? 0.1) * soft, 0.72 / (1 + 0.22 * height_m));
  }
}
