// What the drawn habitats are made of: card, lines, footlights, and the lantern on the axis.

import { BufferGeometry, CylinderGeometry, Group, Mesh, PlaneGeometry } from '../vendor/three.module.js';
import { blobMaterial, cardMaterial } from './materials.js';
import { Dots } from './dots.js';
import { Ribbon } from './ribbon.js';
import { withStrength } from './wheel.js';

export class Craft {
  constructor(shared) {
    this.shared = shared;
    this.group = new Group();
    this.open = false;           // no edges: as wide as can be seen
    this.half_m = 1;             // half of what can be walked on, across
  }

  mesh(material, group = this.group) {
    const mesh = new Mesh(new BufferGeometry(), material);
    mesh.frustumCulled = false;
    group.add(mesh);
    return mesh;
  }

  ribbon(look, group = this.group) {
    const ribbon = new Ribbon(this.shared, { order: 2, ...look });
    ribbon.material.uniforms.uNow = { value: 1e9 };
    group.add(ribbon.mesh);
    return ribbon;
  }

  footlights(group = this.group) {
    const dots = new Dots(this.shared, { additive: true, order: 2, fogged: 1 });
    group.add(dots.points);
    return dots;
  }

  lantern() {
    this.core = this.mesh(cardMaterial(this.shared, '#FFE3B0', { glow: 1 }));
    const sprite = (look) => new Mesh(withStrength(new PlaneGeometry(2, 2)), blobMaterial(this.shared, look.color, { core: 0, glow: true, ...look }));
    this.glow = sprite({ color: '#FFD69A', opacity: 0.62, power: 3.2 });
    this.haze = sprite({ color: '#D8B890', opacity: 0.2, power: 1.3 });
    for (const one of [this.haze, this.glow]) {
      one.renderOrder = 1;
      one.frustumCulled = false;
      this.group.add(one);
    }
  }

  // The lantern as a column of radius r and a length along the axis.
  light(R, r, long) {
    this.glow.position.set(0, R, 0);
    this.haze.position.set(0, R, 0);
    this.glow.scale.setScalar(Math.min(0.57 * R, 60 + 0.1 * R));
    this.haze.scale.setScalar(R);
    put(this.core, new CylinderGeometry(r, r, long, 32, 1).rotateX(Math.PI / 2).translate(0, R, 0));
  }

  // `side`: of the eye along the axis, 0 when nothing is to be cut away.
  cutAway() {}

  seen() {}
}

export function put(mesh, geometry) {
  mesh.geometry.dispose();
  mesh.geometry = geometry;
}

// How thick a hull is drawn.
export function skinOf(R) {
  return Math.min(Math.max(0.02 * R, 0.02), 1.15 + 0.002 * R);
}
