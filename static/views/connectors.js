// What joins flat floors to each other: arms from a hub, a tether with its bridles, or the truss of one long hull. One side of
// it at a time (1 or −1 along the axis), so that the side toward the eye can be cut away.

import { BoxGeometry, CylinderGeometry, Quaternion, Vector3 } from '../vendor/three.module.js';

const UP = new Vector3(0, 1, 0);

export function joinery(kind, ground, floors, side) {
  const make = { pods: arm, tether: bridle, tumbler: truss }[kind];
  const parts = floors.map((floor, i) => make(ground, floor, i, side));
  return { solid: [...parts.flatMap((part) => part.solid ?? []), ...(kind === 'tether' && side > 0 ? [winch(ground)] : [])], lines: parts.flatMap((part) => part.lines ?? []) };
}

// An arm leaves the hub and meets the middle of the floor's long edge.
function arm(ground, { half_m: [, z], radius_m }, i, side) {
  const thick = Math.min(0.012 * radius_m + 0.04, 0.5);
  const hub = ground.at(0, radius_m, side * Math.min(z, 0.2 * radius_m), 0, {}, i);
  return { solid: [beam(hub, ground.at(0, 0, side * (z + 1.2 * thick), 0, {}, i), thick)] };
}

// Four lines from the corners to one point, and the tether from there to the axis (drawn once, with the far side).
function bridle(ground, { half_m: [a, z], radius_m, ceiling_m }, i, side) {
  const top = ceiling_m ?? 0;
  const knot = Math.min(0.7 * radius_m, Math.max(1.6 * Math.max(a, z), 2 * top));
  const at = (along, height, axial) => xyz(ground.at(along, height, axial, 0, {}, i));
  const lines = [-a, a].map((along) => ({ points: [...at(along, top, side * z), ...at(0, knot, 0)] }));
  if (side < 0) lines.push({ points: [...at(0, knot, 0), ...at(0, radius_m, 0)], diameter: [0.06, 0.06] });
  return { lines };
}

function winch(ground) {
  const size = Math.min(0.04 * ground.radius_m, 1.2);
  return new BoxGeometry(1.6 * size, size, size).translate(0, ground.radius_m, 0);
}

// Two longerons of the hull's side, with a zigzag between them, from the floor to the axis.
function truss(ground, { half_m: [a, z], radius_m }, i, side) {
  const bay = Math.max(1, Math.round(radius_m / Math.max(2 * a, 0.12 * radius_m)));
  const at = (along, n) => xyz(ground.at(along, (n / bay) * radius_m, side * z, 0, {}, i));
  const bar = Math.min(0.12, 0.01 * radius_m);
  const lines = [-a, a].map((along) => ({ points: [...at(along, 0), ...at(along, bay)], diameter: [bar, bar] }));
  for (let n = 0; n < bay; n += 1) {
    lines.push({ points: [...at(-a, n + 1), ...at(a, n + 1)] }, { points: n % 2 ? [...at(a, n), ...at(-a, n + 1)] : [...at(-a, n), ...at(a, n + 1)] });
  }
  return { lines };
}

function xyz({ x, y, z }) {
  return [x, y, z];
}

function beam(from, to, thick) {
  const [a, b] = [new Vector3(from.x, from.y, from.z), new Vector3(to.x, to.y, to.z)];
  const way = b.clone().sub(a);
  const long = way.length();
  return new CylinderGeometry(thick, thick, long, 12, 1).applyQuaternion(new Quaternion().setFromUnitVectors(UP, way.normalize())).translate(...a.add(b).multiplyScalar(0.5).toArray());
}
