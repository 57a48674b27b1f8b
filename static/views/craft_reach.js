// A craft as lines: how far it reaches, for pictures that must hold it, and how it lies while it tumbles, for flat ones. Points are in drawing axes.

import { attitudeAt } from '../time/track.js';
import { drawnPoint } from './place.js';

const INNER = 1 / Math.sqrt(3); // of a ball's radius: the corners of the box in it

/** Points that hold a craft that tumbles however it lies, [x, y, z, …]. */
export function sweptPoints(model) {
  const { answer, craft, ground, radius_m } = model;
  const centre = drawnPoint(answer.tumbling.centre_m, 0, radius_m, {});
  const outline = ground.outline();
  let reach = 0;
  for (let i = 0; i < outline.length; i += 3) reach = Math.max(reach, Math.hypot(outline[i] - centre.x, outline[i + 1] - centre.y, outline[i + 2] - centre.z));
  for (const part of craft?.parts ?? [])
    for (const { x, y, z } of endsOf(part, radius_m)) reach = Math.max(reach, halfOf(part) + Math.hypot(x - centre.x, y - centre.y, z - centre.z));
  return ball(centre, reach);
}

/** The same of a craft that lies as it is drawn aboard, with its habitat. */
export function craftPoints({ craft, ground, radius_m }) {
  return [...ground.outline(), ...(craft?.parts ?? []).flatMap(part => endsOf(part, radius_m).flatMap(end => ball(end, halfOf(part))))];
}

// The two ends of a part's axis, and how far it reaches about them at most.
function endsOf({ place_m, axis, length_m = 0 }, radius_m) {
  const long = Math.hypot(...axis) || 1;
  return [-1, 1].map(way =>
    drawnPoint(
      place_m.map((c, k) => c + (way * length_m * axis[k]) / (2 * long)),
      0,
      radius_m,
      {},
    ),
  );
}

const halfOf = ({ size_m, radius_m = 0, tube_radius_m = 0 }) => (size_m ? Math.hypot(...size_m) / 2 : radius_m + tube_radius_m);

// Its poles, and the corners of the box in it.
function ball({ x, y, z }, reach) {
  const signs = [-reach, reach];
  return [
    ...[0, 1, 2].flatMap(axis => signs.flatMap(by => [x, y, z].map((c, k) => (k === axis ? c + by : c)))),
    ...signs.flatMap(a => signs.flatMap(b => signs.flatMap(c => [x + INNER * a, y + INNER * b, z + INNER * c]))),
  ];
}

/** A function that carries a drawn point of a craft that tumbles to where it is at time t, seen from the side: {x: along the axis as it lay at first, y: up}. */
export function fromTheSide(model, time_s) {
  const { answer, radius_m } = model;
  const { x: cx, y: cy, z: cz } = drawnPoint(answer.tumbling.centre_m, 0, radius_m, {});
  const [w, qx, qy, qz] = attitudeAt(answer, time_s);
  const [x, y, z] = [qy, -qx, qz]; // in drawing axes
  return point => {
    const [a, b, c] = [point.x - cx, point.y - cy, point.z - cz];
    // t = 2 q × v; v + w t + q × t
    const t = [2 * (y * c - z * b), 2 * (z * a - x * c), 2 * (x * b - y * a)];
    return { x: cz + c + w * t[2] + (x * t[1] - y * t[0]), y: cy + b + w * t[1] + (z * t[0] - x * t[2]) };
  };
}

/** The line along a craft from end to end, two drawn points. */
export function lengthOf(model) {
  const points = craftPoints(model);
  let [least, most] = [Infinity, -Infinity];
  for (let i = 2; i < points.length; i += 3) [least, most] = [Math.min(least, points[i]), Math.max(most, points[i])];
  return [least, most].map(z => ({ x: 0, y: model.radius_m, z }));
}

const ROUND = 24;

/** Its parts and its habitat as strokes, each a list of drawn points. */
export function strokesOf(model) {
  const { craft, ground, radius_m, shape } = model;
  const half_m = shape.half_m ?? 0;
  const own = ground.floors ? ground.floors.map((_, floor) => floorOf(ground, floor)) : tubeOf(radius_m, half_m);
  const strokes = [...own.map(points => ({ points, home: true })), ...(craft?.parts ?? []).flatMap(part => partStrokes(part).map(points => ({ points })))];
  return strokes.map(({ points, home = false }) => ({ home, points: home && ground.floors ? points : points.map(at => drawnPoint(at, 0, radius_m, {})) }));
}

function tubeOf(radius_m, half_m) {
  const rings = [-half_m, half_m].map(z => ringOf([0, 0, z], [0, 0, 1], radius_m));
  return [...rings, ...[0, 1, 2, 3].map(k => rings.map(ring => ring[(k * ROUND) / 4]))];
}

function floorOf(ground, floor) {
  const { along_m, axial_m } = ground.reach(floor);
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ];
  return corners.map(([a, z]) => ground.at(a * along_m, 0, z * axial_m, 0, {}, floor));
}

/** A part's edges, each a list of points in the craft's axes. */
export function partStrokes({ solid, place_m, axis, radius_m = 0, tube_radius_m = 0, length_m = 0, size_m }) {
  if (size_m) return boxOf(place_m, axis, size_m);
  if (solid === 'point') return [];
  const reach = radius_m + tube_radius_m;
  if (solid.startsWith('sphere')) return [[1, 0, 0], [0, 1, 0], [0, 0, 1]].map(way => ringOf(place_m, way, reach)); // biome-ignore format: three ways
  const along = by => place_m.map((c, k) => c + (by * axis[k]) / (Math.hypot(...axis) || 1));
  const ends = [along(-length_m / 2), along(length_m / 2)];
  if (!reach) return [ends];
  const [aft, fore] = ends.map(end => ringOf(end, axis, reach));
  if (!length_m) return [aft];
  const lines = [0, 1, 2, 3].map(k => [aft[(k * ROUND) / 4], solid === 'cone' ? ends[1] : fore[(k * ROUND) / 4]]);
  return solid === 'cone' ? [aft, ...lines] : [aft, fore, ...lines];
}

// Two ways square to an axis, and to each other.
function across(axis) {
  const long = Math.hypot(...axis) || 1;
  const [x, y, z] = axis.map(c => c / long);
  const [a, b, c] = Math.abs(z) > 0.9 ? [1, 0, 0] : [0, 0, 1];
  const u = [y * c - z * b, z * a - x * c, x * b - y * a];
  const size = Math.hypot(...u);
  const v = u.map(part => part / size);
  return [v, [y * v[2] - z * v[1], z * v[0] - x * v[2], x * v[1] - y * v[0]], [x, y, z]];
}

function ringOf(middle, axis, radius) {
  const [u, v] = across(axis);
  return Array.from({ length: ROUND + 1 }, (_, k) => {
    const angle = (2 * Math.PI * k) / ROUND;
    return middle.map((c, i) => c + radius * (Math.cos(angle) * u[i] + Math.sin(angle) * v[i]));
  });
}

// As it lies about the craft's own axes; turned with its axis where that is another.
function boxOf(place, axis, size) {
  const upright = Math.hypot(axis[0], axis[1]) < 1e-9;
  const ways = upright ? [[1, 0, 0], [0, 1, 0], [0, 0, 1]] : across(axis); // biome-ignore format: three ways
  const corner = (a, b, c) => place.map((p, k) => p + (a * size[0] * ways[0][k] + b * size[1] * ways[1][k] + c * size[2] * ways[2][k]) / 2);
  const face = c => [corner(-1, -1, c), corner(1, -1, c), corner(1, 1, c), corner(-1, 1, c), corner(-1, -1, c)];
  return [face(-1), face(1), ...[[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([a, b]) => [corner(a, b, -1), corner(a, b, 1)])]; // biome-ignore format: its edges
}
