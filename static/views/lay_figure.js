// The lay figure: 1.75 m of turned wood, feet at the origin, up along y, facing spinward (x), one arm raised.

import { CylinderGeometry, LatheGeometry, SphereGeometry, Vector2 } from '../vendor/three.module.js';
import { merged } from './geometry.js';

export const PERSON_M = 1.75;

// biome-ignore format: a row is a piece of wood: its profile, then where it stands
export function figureGeometry() {
  const parts = [];
  const add = (geometry, x, y, z, { rx = 0, rz = 0, scale = [1, 1, 1] } = {}) => parts.push(geometry.scale(...scale).rotateX(rx).rotateZ(rz).translate(x, y, z));
  for (const s of [1, -1]) {
    add(turnedWood([[0.042, 0], [0.05, 0.1], [0.062, 0.24], [0.05, 0.4]], 10), s * 0.02, 0.06, s * 0.1);
    add(turnedWood([[0.055, 0], [0.075, 0.14], [0.088, 0.32], [0.07, 0.43]], 10), s * 0.02, 0.47, s * 0.1);
    add(new SphereGeometry(0.054, 10, 6), s * 0.02, 0.465, s * 0.1);
    add(new SphereGeometry(0.07, 10, 6), 0.05 + s * 0.02, 0.045, s * 0.1, { scale: [1.6, 0.62, 0.8] });
  }
  add(turnedWood([[0.02, 0], [0.13, 0.02], [0.14, 0.1], [0.105, 0.17]], 14), 0, 0.82, 0, { scale: [0.78, 1, 1.12] });
  add(turnedWood([[0.1, 0], [0.115, 0.1], [0.155, 0.3], [0.165, 0.42], [0.13, 0.49], [0.05, 0.53]], 16), 0, 0.98, 0, { scale: [0.7, 1, 1.15] });
  add(new CylinderGeometry(0.042, 0.052, 0.1, 10), 0, 1.52, 0);
  add(new SphereGeometry(0.112, 16, 12), 0.01, 1.63, 0, { scale: [0.93, 1.07, 0.84] });
  add(turnedWood([[0.032, 0], [0.042, 0.12], [0.046, 0.3]], 8), 0.02, 0.85, 0.262, { rx: 0.06 });
  add(turnedWood([[0.036, 0], [0.05, 0.16], [0.054, 0.3]], 8), 0, 1.13, 0.245, { rx: 0.08 });
  add(turnedWood([[0.054, 0], [0.05, 0.14], [0.036, 0.3]], 8), 0, 1.42, -0.22, { rz: -1.15 });
  add(turnedWood([[0.044, 0], [0.042, 0.14], [0.03, 0.27]], 8), 0.27, 1.53, -0.22, { rz: -0.25 });
  return merged(parts);
}

// A piece turned on a lathe: profile of (radius, height).
function turnedWood(profile, sides) {
  const ends = [[0.001, profile[0][1]], ...profile, [0.001, profile[profile.length - 1][1] + 0.01]];
  return new LatheGeometry(
    ends.map(([r, y]) => new Vector2(r, y)),
    sides,
  );
}
