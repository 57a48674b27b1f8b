// Corners of what is drawn: sheets swept round the axis as fine as the eye needs, round bars, rectangles, and several made one.

import { BufferAttribute, BufferGeometry, CircleGeometry, CylinderGeometry, Quaternion, Vector3 } from '../vendor/three.module.js';
import { placeAt } from './place.js';

const MOST_POSTS = 200;
const UP = new Vector3(0, 1, 0);
const p = { x: 0, y: 0, z: 0 };

// Angles of the ring's corners about where people look, both ways to the far side: a chord may leave the circle by a third of a
// pixel, less where people stand. `eye` {near_m, far_m, at_m}: spans seen Aboard and Outside, and where.
export function ringAngles(R, eye, most) {
  const side = [];
  const coarse = Math.max(1, (Math.PI * Math.sqrt(R / (8 * (eye.far_m / 2500)))) / (most / 2));
  for (let s = 0; s < Math.PI * R; ) {
    side.push(s / R);
    const leave = Math.min(eye.far_m, eye.near_m + 3 * s) / 2500;
    s += Math.min(coarse * Math.sqrt(8 * R * leave), (Math.PI * R) / 24);
  }
  const middle = eye.at_m / R;
  return [
    ...side
      .slice(1)
      .reverse()
      .map(a => middle - a),
    ...side.map(a => middle + a),
    middle + 2 * Math.PI - side[side.length - 1],
  ];
}

// The profile of a straight band, (height, axial) from one place to another, with its normal: on the left, looking spinward.
export function straight(profile, stretch = 1) {
  const [a, b] = profile.map(([height, axial]) => [height, axial * stretch]);
  const [dh, dz] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dh, dz);
  return [a, b].map(([height, axial]) => ({ height, axial, normal: [-dz / long, dh / long] }));
}

// The profile of an arc, at those of `angles` that lie inside it; its inside shows where its angles fall.
export function arc([centre, radius, from, to], angles) {
  const [least, most] = [Math.min(from, to), Math.max(from, to)];
  const wound = angles.map(a => ((a + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
  const inside = wound.filter(a => a > least + 1e-3 && a < most - 1e-3).sort((q, r) => (q - r) * Math.sign(to - from));
  const facing = from > to ? 1 : -1;
  return [from, ...inside, to].map(a => ({
    height: centre - radius * Math.cos(a),
    axial: radius * Math.sin(a),
    normal: [facing * Math.cos(a), -facing * Math.sin(a)],
  }));
}

// A profile [{height, axial, normal: [up, axial]}] swept round the axis at `angles`; each corner knows where on the deck it is.
export function swept(R, angles, profile) {
  const [rows, columns] = [angles.length, profile.length];
  const [position, normal, deck] = [3, 3, 2].map(size => new Float32Array(rows * columns * size));
  angles.forEach((angle, i) =>
    profile.forEach(({ height, axial, normal: [up, over] }, k) => {
      const at = i * columns + k;
      position.set(xyz(R, angle * R, height, axial), 3 * at);
      normal.set([-Math.sin(angle) * up, Math.cos(angle) * up, over], 3 * at);
      deck.set([angle * R, axial], 2 * at);
    }),
  );
  const index = [];
  for (let i = 0; i + 1 < rows; i += 1)
    for (let k = 0; k + 1 < columns; k += 1) {
      const [q, r] = [i * columns + k, (i + 1) * columns + k];
      index.push(q, r, r + 1, q, r + 1, q + 1);
    }
  return geometryOf({ position, normal, deck }, index);
}

function geometryOf({ position, normal, deck }, index) {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(position, 3));
  if (normal) geometry.setAttribute('normal', new BufferAttribute(normal, 3));
  if (deck) geometry.setAttribute('deck', new BufferAttribute(deck, 2));
  geometry.setIndex(index);
  return geometry;
}

export function xyz(R, along, height, axial) {
  placeAt(R, along, height, axial, 0, p);
  return [p.x, p.y, p.z];
}

export function ring(R, angles, height, axial) {
  return angles.flatMap(a => xyz(R, a * R, height, axial));
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

// A flat sheet of four corners, half_along × half_axial about its middle.
export function sheet(corners, [a, z]) {
  return geometryOf({ position: new Float32Array(corners.flat()), deck: new Float32Array([-a, z, a, z, a, -z, -a, -z]) }, [0, 1, 2, 0, 2, 3]);
}

// A round plate that faces along the axis; its uv are metres from the middle: X outward, −Y where along is 0.
export function disc(R) {
  const geometry = new CircleGeometry(R, 96);
  geometry.setAttribute('uv', geometry.attributes.position.clone());
  return geometry.translate(0, R, 0);
}

// A round bar between two points, with its radius at both.
export function tube([from, to], radii, sides, closed) {
  const [a, b] = [new Vector3(...from), new Vector3(...to)];
  const way = b.clone().sub(a);
  const long = way.length();
  const turned = new Quaternion().setFromUnitVectors(UP, way.normalize());
  return new CylinderGeometry(radii[1], radii[0], long, sides, 1, !closed).applyQuaternion(turned).translate(...a.add(b).multiplyScalar(0.5).toArray());
}

// One geometry out of several with position, normal and index.
export function merged(parts) {
  const position = [];
  const normal = [];
  const index = [];
  for (const part of parts) {
    const base = position.length / 3;
    for (const value of part.attributes.position.array) position.push(value);
    for (const value of part.attributes.normal.array) normal.push(value);
    for (const corner of part.index.array) index.push(base + corner);
    part.dispose();
  }
  return geometryOf({ position: new Float32Array(position), normal: new Float32Array(normal) }, index);
}

export function withStrength(geometry, strength = 1) {
  const count = geometry.attributes.position.count;
  geometry.setAttribute('strength', new BufferAttribute(new Float32Array(count).fill(strength), 1));
  return geometry;
}
