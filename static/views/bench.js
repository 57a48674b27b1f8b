// A turntable: a round platform on its stand, in a room that does not turn with it. The room's floor lies as far below as a
// bench is high; a large platform lies low, so that people may step on it.

import { CircleGeometry, CylinderGeometry, BoxGeometry, Group, Mesh, Vector3 } from '../vendor/three.module.js';
import { Craft, put } from './craft.js';
import { figureGeometry } from './figure.js';
import { cardMaterial, deckMaterial } from './materials.js';
import { platterMaterial } from './platter.js';
import { merged, rectangle } from './wheel.js';

const BENCH_M = 0.8;
const STEP_M = 0.3;
const LARGE_M = 2;               // from this radius on people ride on it
const ROOM = 7;                  // radii of floor about it, at least ROOM_M
const ROOM_M = 9;

export class Bench extends Craft {
  constructor(shared) {
    super(shared);
    this.room = new Group();
    this.top = this.mesh(platterMaterial(shared));
    this.rim = this.mesh(cardMaterial(shared, '#7E8886'));
    this.marks = this.ribbon({ color: '#EFEADC', width: 2 });
    this.stand = this.mesh(cardMaterial(shared, '#4A4C48'), this.room);
    this.floor = this.mesh(deckMaterial(shared, { dim: 0.62 }), this.room);
    this.floor.material.uniforms.uOpen.value = 1;
    this.person = new Mesh(figureGeometry(), cardMaterial(shared, '#D9D2BF', { fill: 0.85 }));
    this.room.add(this.person);
  }

  build(shape) {
    const R = shape.radius_m;
    const large = R >= LARGE_M;
    const thick = Math.min(0.05, 0.06 * R);
    const drop = large ? STEP_M : BENCH_M;
    this.radius_m = R;
    this.half_m = R;
    this.top.material.uniforms.uEdge.value = R;
    const disc = new CircleGeometry(R, 96);
    disc.setAttribute('uv', disc.attributes.position.clone());      // flat metres from the middle: X outward, −Y where along is 0
    put(this.top, disc.translate(0, R, 0));
    put(this.rim, standing(new CylinderGeometry(R, R, thick, 96, 1, true), R, -thick / 2 - 1e-4 * R));
    this.marks.set([0, 1, 2, 3].map((k) => ({ points: sideMark(R, (k * Math.PI) / 2, thick) })));
    this.buildRoom(R, thick, drop, large);
  }

  buildRoom(R, thick, drop, large) {
    const post = standing(new CylinderGeometry(0.14 * R, 0.2 * R, large ? drop : 0.4 * R, 32, 1), R, -thick - (large ? drop : 0.4 * R) / 2);
    const parts = [post];
    if (!large) {
      const top = -thick - 0.4 * R;
      parts.push(new BoxGeometry(2.6 * R + 0.3, 2.6 * R + 0.3, 0.04).translate(0, R, top - 0.02));
      for (const x of [-1, 1]) for (const y of [-1, 1]) parts.push(new BoxGeometry(0.06, 0.06, drop).translate(x * (1.25 * R + 0.1), R + y * (1.25 * R + 0.1), top - 0.04 - drop / 2));
    }
    put(this.stand, merged(parts));
    const floor_z = large ? -drop - thick : -thick - 0.4 * R - 0.04 - drop;
    const half = Math.max(ROOM * R, ROOM_M);
    this.floor.material.uniforms.uEdge.value = half;
    put(this.floor, rectangle((along, axial) => [along, R - axial, floor_z], half, half));
    this.person.visible = !large;
    this.person.position.set(-1.6 * R - 0.9, 4 * R + 1.6, floor_z);
    this.person.rotation.set(Math.PI / 2, 0, 0);
  }
}

// Upright geometry laid so that its own y is the spin axis.
function standing(geometry, R, z) {
  return geometry.rotateX(Math.PI / 2).translate(0, R, z);
}

// A stroke down the rim: so that one sees it turn from the side.
function sideMark(R, angle, thick) {
  const out = new Vector3(Math.sin(angle), -Math.cos(angle), 0).multiplyScalar(1.002 * R);
  return [out.x, R + out.y, 0, out.x, R + out.y, -thick];
}
