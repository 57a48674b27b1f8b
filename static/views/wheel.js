// Geometry of the wheel: where its corners are, and bands, rings and spokes made of them.

import { BufferAttribute, BufferGeometry, CylinderGeometry } from '../vendor/three.module.js';
import { placeAt } from './place.js';

const MOST_SEGMENTS = 1200;
const MOST_POSTS = 200;
const p = { x: 0, y: 0, z: 0 };

// An open wheel is drawn as wide as anybody can see.
export function drawnHalfWidth(shape, eye) {
  if (shape.width_m !== null) return shape.width_m / 2;
  return 2 ** Math.ceil(Math.log2(2.5 * Math.max(eye.near_m, Math.min(eye.far_m, shape.radius_m), 4)));
}

// Angles of the ring's corners about where people look, both ways to the far side.
export function ringAngles(R, eye, most = MOST_SEGMENTS) {
  const side = [];
  const coarse = Math.max(1, Math.PI * Math.sqrt(R / (8 * (eye.far_m / 2500))) / (most / 2));
  for (let s = 0; s < Math.PI * R;) {
    side.push(s / R);
    const leave = Math.min(eye.far_m, eye.near_m + 3 * s) / 2500;
    s += Math.min(coarse * Math.sqrt(8 * R * leave), (Math.PI * R) / 24);
  }
  const middle = eye.at_m / R;
  return [...side.slice(1).reverse().map((a) => middle - a), ...side.map((a) => middle + a), middle + 2 * Math.PI - side[side.length - 1]];
}

// A sheet swept round the axis: `profile` [{height, axial, normal: [up, axial]}] at each of `angles`; `deck` as in band().
export function swept(R, angles, profile, facing, deck = false) {
  const [rows, columns] = [angles.length, profile.length];
  const position = new Float32Array(rows * columns * 3);
  const normal = new Float32Array(rows * columns * 3);
  const where = new Float32Array(rows * columns * 2);
  angles.forEach((angle, i) => profile.forEach(({ height, axial, normal: [up, over] }, k) => {
    const at = i * columns + k;
    position.set(xyz(R, angle * R, height, axial), 3 * at);
    const sign = facing === 'out' ? -1 : 1;
    normal.set([-Math.sin(angle) * up * sign, Math.cos(angle) * up * sign, over * sign], 3 * at);
    where.set([angle * R, axial], 2 * at);
  }));
  const index = [];
  for (let i = 0; i + 1 < rows; i += 1) for (let k = 0; k + 1 < columns; k += 1) {
    const [q, r] = [i * columns + k, (i + 1) * columns + k];
    index.push(...(facing === 'out' ? [q, r, q + 1, r, r + 1, q + 1] : [q, q + 1, r, r, q + 1, r + 1]));
  }
  return card(position, normal, deck && where, index);
}

// A mesh of corners; `where`, on decks only, is where on the deck each corner is.
function card(position, normal, where, index) {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  if (where) geometry.setAttribute('deck', new BufferAttribute(where, 2));
  geometry.setIndex(index);
  return geometry;
}

export function xyz(R, along, height, axial) {
  placeAt(R, along, height, axial, 0, p);
  return [p.x, p.y, p.z];
}

export function ring(R, angles, height, axial) {
  return angles.flatMap((a) => xyz(R, a * R, height, axial));
}

// Places along the deck a round number of metres apart, at most MOST_POSTS within reach of where people look.
export function evenly(R, reach, least, at_m, offset = 0) {
  let gap = least;
  while ((2 * reach) / gap > MOST_POSTS) gap *= 2;
  const around = Math.max(4, Math.round((2 * Math.PI * R) / gap));
  gap = (2 * Math.PI * R) / around;
  const count = Math.min(around, Math.floor((2 * reach) / gap));
  const first = Math.round(at_m / gap) - Math.floor(count / 2);
  return Array.from({ length: count }, (_, k) => (first + k + offset) * gap);
}

// A band round the wheel between two lines (height, axial); `deck` adds where on the deck each corner is.
export function band(R, angles, a, b, facing, deck = false) {
  const count = angles.length;
  const position = new Float32Array(count * 6);
  const normal = new Float32Array(count * 6);
  const where = new Float32Array(count * 4);
  angles.forEach((angle, i) => {
    const up = [-Math.sin(angle), Math.cos(angle), 0];
    const n = facing === 'in' ? up : facing === 'out' ? up.map((c) => -c) : [0, 0, facing === 'front' ? 1 : -1];
    [a, b].forEach(([height, axial], k) => {
      position.set(xyz(R, angle * R, height, axial), 6 * i + 3 * k);
      normal.set(n, 6 * i + 3 * k);
      where.set([angle * R, axial], 4 * i + 2 * k);
    });
  });
  const index = [];
  const flip = facing === 'out' || facing === 'back';
  for (let i = 0; i + 1 < count; i += 1) {
    const [q, r, s, t] = [2 * i, 2 * i + 2, 2 * i + 1, 2 * i + 3];
    index.push(...(flip ? [q, s, r, r, s, t] : [q, r, s, r, t, s]));
  }
  return card(position, normal, deck && where, index);
}

// A flat piece of deck, half_along × half_axial about its middle; `point(along, axial)` gives its corners, seen from above.
export function rectangle(point, half_along, half_axial) {
  const corners = [[-1, 1], [1, 1], [1, -1], [-1, -1]].map(([s, z]) => [s * half_along, z * half_axial]);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(corners.flatMap(([s, z]) => point(s, z))), 3));
  geometry.setAttribute('deck', new BufferAttribute(new Float32Array(corners.flat()), 2));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  return geometry;
}

export function spokes(R, shape) {
  const top = shape.ceiling_m ?? 0;
  const thick = Math.min(Math.max(0.018 * R, 0.03), 4 + 0.001 * R);
  const long = R - top - shape.hub_radius_m;
  const parts = [];
  for (const degrees of [45, 135, 225, 315]) {
    const stand = (geometry, height) => parts.push(geometry.translate(0, height, 0).translate(0, -R, 0).rotateZ((degrees * Math.PI) / 180).translate(0, R, 0));
    stand(new CylinderGeometry(thick, thick, long, 16, 1, true), top + long / 2);
    if (!top) stand(new CylinderGeometry(1.7 * thick, 1.7 * thick, 3 * thick, 20, 1), 1.5 * thick);
  }
  return merged(parts);
}

// One geometry out of several with position, normal and index.
export function merged(parts) {
  const position = [];
  const normal = [];
  const index = [];
  for (const part of parts) {
    const base = position.length / 3;
    position.push(...part.attributes.position.array);
    normal.push(...part.attributes.normal.array);
    index.push(...Array.from(part.index.array, (i) => base + i));
    part.dispose();
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(position), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(normal), 3));
  geometry.setIndex(index);
  return geometry;
}

export function withStrength(geometry, strength = 1) {
  const count = geometry.attributes.position.count;
  geometry.setAttribute('strength', new BufferAttribute(new Float32Array(count).fill(strength), 1));
  return geometry;
}
