// The lay figure: 1.75 m of turned wood, feet at the origin, up along y, facing spinward (x), one arm raised; or with one hand at something ([forward, up, aside] m).

import { CylinderGeometry, LatheGeometry, SphereGeometry, Vector2 } from '../vendor/three.module.js';
import { merged } from './geometry.js';

export const PERSON_M = 1.75;

let plain = null; // the one with its arm raised, which both stages have

export function figureGeometry(hand = null) {
  if (hand) return figure(hand);
  plain ??= figure(null);
  return plain;
}

// biome-ignore format: a row is a piece of wood: its profile, then where it stands
function figure(hand) {
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
  const hangs = hand ? -1 : 1; // the arm that does nothing
  add(turnedWood([[0.032, 0], [0.042, 0.12], [0.046, 0.3]], 8), 0.02, 0.85, 0.262 * hangs, { rx: 0.06 * hangs });
  add(turnedWood([[0.036, 0], [0.05, 0.16], [0.054, 0.3]], 8), 0, 1.13, 0.245 * hangs, { rx: 0.08 * hangs });
  const [across, way] = hand ? [Math.hypot(hand[0], hand[2] - ASIDE_M), Math.atan2(hand[2] - ASIDE_M, hand[0])] : [0, 0];
  const { elbow, upper, fore } = hand ? armTo([across, hand[1]]) : RAISED;
  const arm = [
    turnedWood([[0.054, 0], [0.05, 0.14], [0.036, 0.3]], 8).rotateZ(upper).translate(...SHOULDER, 0),
    turnedWood([[0.044, 0], [0.042, 0.14], [0.03, 0.27]], 8).rotateZ(fore).translate(...elbow, 0),
  ];
  return merged([...parts, ...arm.map(piece => piece.rotateY(-way).translate(0, 0, -ASIDE_M * hangs))]);
}

const SHOULDER = [0, 1.42];
const ASIDE_M = 0.22;
const RAISED = { elbow: [0.27, 1.53], upper: -1.15, fore: -0.25 };
const ARM_M = [0.3, 0.28];

/** From the shoulder to a hand at [forward, up] in the arm's own plane, the elbow below; straight toward what is out of reach. Angles are from upright. */
export function armTo([forward, up]) {
  const [upper_m, fore_m] = ARM_M;
  const [x, y] = [forward - SHOULDER[0], up - SHOULDER[1]];
  const far = Math.min(Math.max(Math.hypot(x, y), 0.1), upper_m + fore_m - 1e-6);
  const toward = Math.atan2(y, x);
  const upper = toward - Math.acos((upper_m ** 2 + far ** 2 - fore_m ** 2) / (2 * upper_m * far));
  const elbow = [SHOULDER[0] + upper_m * Math.cos(upper), SHOULDER[1] + upper_m * Math.sin(upper)];
  const fore = Math.atan2(SHOULDER[1] + far * Math.sin(toward) - elbow[1], SHOULDER[0] + far * Math.cos(toward) - elbow[0]);
  return { elbow, upper: upper - Math.PI / 2, fore: fore - Math.PI / 2 };
}

// A piece turned on a lathe: profile of (radius, height).
function turnedWood(profile, sides) {
  const ends = [[0.001, profile[0][1]], ...profile, [0.001, profile[profile.length - 1][1] + 0.01]];
  return new LatheGeometry(
    ends.map(([r, y]) => new Vector2(r, y)),
    sides,
  );
}
