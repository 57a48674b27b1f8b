// "Down" changes along a flat floor: a plumb line at each place where it is known, beside the floor's own upright, and the arc that is level.

import { Group } from '../vendor/three.module.js';
import { Dots, KIND } from './dots.js';
import { Ribbon } from './ribbon.js';
import { rgb } from './materials.js';

const PLUMB_M = 1.1;
const INK = '#EFEADC';
const DEG = Math.PI / 180;
const p = { x: 0, y: 0, z: 0 };

export class Levels {
  constructor(shared) {
    this.group = new Group();
    const ribbon = look => new Ribbon(shared, { color: INK, order: 3, ...look });
    this.plumbs = ribbon({ width: 1.6 });
    this.normals = ribbon({ width: 1, alpha: 0.35, dash: [3, 3] });
    this.level = ribbon({ width: 1.4, alpha: 0.55, dash: [5, 3] });
    for (const one of [this.plumbs, this.normals, this.level]) one.material.uniforms.uNow = { value: 1e9 };
    this.bobs = new Dots(shared, { order: 4 });
    this.group.add(this.plumbs.mesh, this.normals.mesh, this.level.mesh, this.bobs.points);
  }

  build(ground, floors) {
    const [plumbs, normals, arcs] = [[], [], []];
    const point = (floor, along, height, axial) => {
      const { x, y, z } = ground.at(along, height, axial, 0, p, floor);
      return [x, y, z];
    };
    this.group.visible = floors.length > 0;
    this.bobs.begin();
    floors.forEach((one, i) => {
      const axial = -0.86 * one.half_m[1];
      const high = Math.min(PLUMB_M, 0.25 * one.radius_m, 0.6 * (one.ceiling_m ?? Infinity));
      for (const { along_m, lean_deg } of one.levels) {
        const lean = lean_deg * DEG;
        const foot = point(i, along_m, 0.02, axial);
        plumbs.push({ points: [...point(i, along_m - high * Math.sin(lean), high * Math.cos(lean), axial), ...foot] });
        normals.push({ points: [...foot, ...point(i, along_m, high, axial)] });
        this.bobs.add(ground.at(along_m, 0.05 * high, axial, 0, p, i), { size: 5, diameter: 0.07 * high, kind: KIND.bead, tint: rgb(INK), time: -1 });
      }
      if (one.levels.length) arcs.push({ points: levelArc(one).flatMap(([along, height]) => point(i, along, height, axial)) });
    });
    this.bobs.end();
    this.plumbs.set(plumbs);
    this.normals.set(normals);
    this.level.set(arcs);
  }

  // Dashes are of the screen.
  seen(span_m) {
    if (!this.group.visible) return;
    for (const ribbon of [this.normals, this.level]) ribbon.uniforms.uUnit.value = span_m / 700;
  }
}

// The circle about the axis that touches the floor's middle, as far as the floor reaches: [along, height].
function levelArc({ radius_m: r, half_m: [a] }) {
  const end = Math.atan2(a, r);
  return Array.from({ length: 33 }, (_, k) => {
    const angle = end * (k / 16 - 1);
    return [r * Math.sin(angle), 2 * r * Math.sin(angle / 2) ** 2];
  });
}
