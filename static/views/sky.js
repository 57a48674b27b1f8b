// Stars: they stand still Outside and turn Aboard. Drawn about the eye, behind everything.

import { Group } from '../vendor/three.module.js';
import { Dots, KIND } from './dots.js';

const COUNT = 900;
const FAR = 50;

export class Sky {
  constructor(shared) {
    this.group = new Group();
    const dots = new Dots(shared, { capacity: COUNT, additive: true, depth: false, order: -10 });
    dots.material.transparent = false;      // drawn before all that is solid
    const random = seeded(7);
    dots.begin();
    for (let i = 0; i < COUNT; i += 1) {
      const z = 2 * random() - 1;
      const turn = 2 * Math.PI * random();
      const flat = Math.sqrt(1 - z * z);
      const bright = 0.14 + 0.86 * random() ** 7;
      const warm = random();
      dots.add({ x: FAR * flat * Math.cos(turn), y: FAR * flat * Math.sin(turn), z: FAR * z }, { size: 1.8 + 2.4 * bright, kind: KIND.light, tint: [bright * (0.85 + 0.15 * warm), bright * 0.92, bright * (1 - 0.15 * warm)] });
    }
    dots.end();
    this.group.add(dots.points);
  }

  look(camera, angle_rad) {
    this.group.position.copy(camera.position);
    this.group.scale.setScalar((camera.near * 4) / FAR);
    this.group.rotation.z = angle_rad;
  }
}

function seeded(state) {
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}
