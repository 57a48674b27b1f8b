// What is poured into: a cup on a table, or a basin on the ground, upright where it stands, and in chalk where it should have stood. They
// turn with the habitat.

import { BoxGeometry, BufferGeometry, CylinderGeometry, Group, Matrix4, Mesh, TorusGeometry, Vector3 } from '../vendor/three.module.js';
import { cardMaterial } from './materials.js';
import { triad } from './ground.js';
import { cupAt, moved } from './reach.js';
import { Ribbon } from './ribbon.js';
import { merged } from './geometry.js';

const MOST = 6;
const TAPER = 0.82; // the foot's width, of the rim's
const BASIN = { from_m: 0.08, taper: 0.68 }; // half as wide as that, a cup is a basin
const TABLE = { top_m: 0.03, leg_m: 0.03 };
const LEAST_MOVE_M = 1e-3;
const CORNERS = 32;

export class Cups {
  constructor(shared) {
    this.shared = shared;
    this.group = new Group();
    this.cups = [];
    this.key = '';
  }

  read(model, shown) {
    const poured = shown.filter(m => m.input?.target).slice(0, MOST);
    const key = JSON.stringify(poured.map(m => [m.input.target, m.floor, Array.from(m.move_m ?? []), m.style.color, model.radius_m]));
    if (key === this.key) return;
    this.key = key;
    poured.forEach((m, i) => this.lay(this.cup(i), model, m));
    this.cups.forEach(({ group }, i) => {
      group.visible = i < poured.length;
    });
  }

  cup(i) {
    if (!this.cups[i]) {
      const cup = {
        group: new Group(),
        body: new Mesh(new BufferGeometry(), cardMaterial(this.shared, '#C9C2AE', { side: 'both', fill: 0.7 })),
        rim: new Ribbon(this.shared, { color: '#EFEADC', width: 2, order: 3, capacity: 2 * CORNERS }),
        chalk: new Ribbon(this.shared, { color: '#EFEADC', width: 2, alpha: 0.85, order: 3, depth: false, capacity: 2 * CORNERS }),
      };
      for (const { material } of [cup.rim, cup.chalk]) material.uniforms.uNow = { value: 1e9 };
      cup.group.add(cup.body, cup.rim.mesh, cup.chalk.mesh);
      this.group.add(cup.group);
      this.cups[i] = cup;
    }
    return this.cups[i];
  }

  lay({ body, rim, chalk }, model, m) {
    const { along_m = 0, height_m, axial_m = 0, diameter_m, depth_m } = m.input.target;
    const axes = triad(model.ground.azimuth(along_m, m.floor), model.ground.level);
    const at = cupAt(model, m, 'aboard', 0);
    const r = diameter_m / 2;
    const stand_m = Math.max(height_m - model.ground.surface(axial_m) - depth_m, 0);
    const taper = r > BASIN.from_m ? BASIN.taper : TAPER;
    const parts = [
      new CylinderGeometry(r, r * taper, depth_m, CORNERS, 1, true).translate(0, -depth_m / 2, 0),
      new CylinderGeometry(r * taper, r * taper, 0.01 * r, CORNERS).translate(0, -depth_m, 0),
      ...(r > BASIN.from_m ? [] : [new TorusGeometry(0.3 * depth_m, 0.12 * r, 6, 14, Math.PI).rotateZ(-Math.PI / 2).translate(0.92 * r, -0.5 * depth_m, 0)]),
    ];
    if (stand_m > 0.05 * r) parts.push(...under(stand_m, r, m.motion.findings?.table).map(part => part.translate(0, -depth_m, 0)));
    body.geometry.dispose();
    body.geometry = merged(parts);
    body.position.set(at.x, at.y, at.z);
    body.quaternion.setFromRotationMatrix(new Matrix4().makeBasis(...[axes.spin, axes.up, axes.axial].map(way => new Vector3(...way))));
    rim.set([ringAt(at, axes, r)]);
    chalk.set(this.wanted(model, m, r, axes));
  }

  // A broken ring as wide as the cup, and the line it would have to be moved along.
  wanted(model, m, r, axes) {
    const move = m.move_m;
    if (!move || Math.hypot(...move) < LEAST_MOVE_M) return [];
    const [from, to] = [[0, 0], move].map(by => cupAt(model, m, 'aboard', 0, by));
    return [...arcsAt(to, axes, r), { points: [from.x, from.y, from.z, to.x, to.y, to.z] }];
  }
}

// A table as high as that, its top at the origin.
function under(high_m, r, table) {
  if (!table) return [new CylinderGeometry(1.4 * r, 1.4 * r, high_m, CORNERS).translate(0, -high_m / 2, 0)];
  const half = table.half_m;
  const parts = [new BoxGeometry(2 * half, TABLE.top_m, 2 * half).translate(0, -TABLE.top_m / 2, 0)];
  for (const s of [-1, 1])
    for (const k of [-1, 1])
      parts.push(new BoxGeometry(TABLE.leg_m, high_m, TABLE.leg_m).translate(s * (half - TABLE.leg_m), -high_m / 2, k * (half - TABLE.leg_m)));
  return parts;
}

function ringAt(at, axes, r, from = 0, to = 2 * Math.PI) {
  const steps = Math.max(4, Math.round((CORNERS * (to - from)) / (2 * Math.PI)));
  const points = Array.from({ length: steps + 1 }, (_, k) => from + ((to - from) * k) / steps).flatMap(angle => {
    const { x, y, z } = moved(moved(at, axes.spin, r * Math.cos(angle)), axes.axial, r * Math.sin(angle));
    return [x, y, z];
  });
  return { points };
}

function arcsAt(at, axes, r) {
  return Array.from({ length: 8 }, (_, k) => ringAt(at, axes, r, (k * Math.PI) / 4, (k * Math.PI) / 4 + Math.PI / 6));
}
