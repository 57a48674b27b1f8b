// Soft shadows: each lies on the deck straight under its thing and shows where along it is.

import { BufferAttribute, BufferGeometry, DynamicDrawUsage, Mesh } from '../vendor/three.module.js';
import { blobMaterial } from './materials.js';

const MOST = 400;
const CORNERS = [[-1, -1], [1, -1], [1, 1], [-1, 1]];
const p = { x: 0, y: 0, z: 0 };

export class Shadows {
  constructor(shared) {
    const geometry = new BufferGeometry();
    this.position = new BufferAttribute(new Float32Array(MOST * 12), 3).setUsage(DynamicDrawUsage);
    this.strength = new BufferAttribute(new Float32Array(MOST * 4), 1).setUsage(DynamicDrawUsage);
    geometry.setAttribute('position', this.position);
    geometry.setAttribute('strength', this.strength);
    geometry.setAttribute('uv', new BufferAttribute(Float32Array.from({ length: MOST * 8 }, (_, i) => [0, 0, 1, 0, 1, 1, 0, 1][i % 8]), 2));
    geometry.setIndex(Array.from({ length: MOST * 6 }, (_, i) => 4 * Math.floor(i / 6) + [0, 1, 2, 0, 2, 3][i % 6]));
    this.mesh = new Mesh(geometry, blobMaterial(shared, '#020406', { core: 0.2 }));
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 2;
    this.count = 0;
  }

  begin() {
    this.count = 0;
  }

  // A shadow of radius `size_m` round a place of the deck, the habitat turned by `turn_rad`.
  add(ground, { along_m, axial_m, floor }, turn_rad, size_m, strength) {
    if (this.count === MOST) return;
    const lift_m = Math.min(0.012, 0.002 * ground.radius_m);
    const stretch = ground.level ? ground.radius_m / Math.max(axial_m, size_m) : 1;
    CORNERS.forEach(([s, z], k) => {
      ground.on(along_m + s * size_m * stretch, lift_m, axial_m + z * size_m, turn_rad, p, floor);
      this.position.setXYZ(4 * this.count + k, p.x, p.y, p.z);
      this.strength.setX(4 * this.count + k, strength);
    });
    this.count += 1;
  }

  end() {
    this.position.needsUpdate = true;
    this.strength.needsUpdate = true;
    this.mesh.geometry.setDrawRange(0, this.count * 6);
    this.mesh.visible = this.count > 0;
  }
}
