// What the stages show, read from one answer: no three, no DOM, no physics. Points are in drawing axes.

import { angleAt, at, companionPoints, pathPoints } from '../time/track.js';
import { azimuthOf, drawnPoint, placeAt, turned } from './place.js';
import { pathStyle } from './styles.js';

const MOST_POINTS = 161;
const STRAIGHT = 0.002;         // of its length: how far a path may leave its chord and still be called straight

export function readModel(answer, fields) {
  const { habitat, motions } = answer.scene;
  const radius_m = habitat.radius_m;
  return {
    answer,
    radius_m,
    shape: { radius_m, width_m: habitat.width_m ?? null, ceiling_m: habitat.ceiling_m ?? null, hub_radius_m: habitat.hub_radius_m ?? null },
    motions: answer.motions.map((motion, i) => readMotion(answer, motion, motions[i], i, fields)),
  };
}

function readMotion(answer, motion, asked, i, fields) {
  const radius_m = answer.scene.habitat.radius_m;
  const path = pathPoints(motion, answer.grid);
  const release = motion.events.find((e) => e.kind === 'release') ?? { along_m: 0, height_m: 0, axial_m: 0, time_s: 0 };
  const companion = motion.companion?.height_m?.length ? companionPoints(motion.companion, answer.grid, release.time_s) : null;
  const inertial = drawnLine(path, 'inertial_m', radius_m);
  return {
    i, motion, asked, path, release, companion,
    name: motion.name,
    style: pathStyle(i),
    stream: motion.stream,
    landing: motion.landing,
    starts_s: path.starts_s,
    ends_s: path.ends_s,
    diameter_m: bodyDiameter(asked, fields),
    release_rad: release.along_m / radius_m + angleAt(answer, release.time_s),
    lines: { aboard: drawnLine(path, 'rotating_m', radius_m), outside: inertial, companion: companion ? drawnLine(companion, 'rotating_m', radius_m) : null },
    straight: isStraight(inertial.points),
    fastest_m_s: fastest(motion.rotating_velocity_m_s),
  };
}

// {points: [x, y, z, …], time: […]} of at most MOST_POINTS points.
function drawnLine(path, key, radius_m) {
  const every = Math.max(1, (path.count - 1) / (MOST_POINTS - 1));
  const count = path.count ? Math.floor((path.count - 1) / every + 1e-9) + 1 : 0;
  const points = new Float64Array(3 * count);
  const time = new Float64Array(count);
  const source = [];
  const p = {};
  for (let k = 0; k < count; k += 1) {
    const i = Math.min(path.count - 1, Math.round(k * every));
    drawnPoint(path[key], i, radius_m, p);
    points.set([p.x, p.y, p.z], 3 * k);
    time[k] = path.time_s[i];
    source.push(i);
  }
  return { points, time, source };
}

function bodyDiameter(asked, fields) {
  const body = asked?.body;
  if (body && typeof body === 'object') return body.diameter_m ?? 0;
  return fields?.bodies?.find((b) => b.name === body)?.diameter_m ?? 0;
}

function fastest(velocity) {
  let most = 0;
  for (let i = 0; velocity && i < velocity.length; i += 3) most = Math.max(most, Math.hypot(velocity[i], velocity[i + 1], velocity[i + 2]));
  return most;
}

function isStraight(points) {
  const last = points.length - 3;
  if (last < 6) return false;
  const d = [0, 1, 2].map((c) => points[last + c] - points[c]);
  const long = Math.hypot(...d);
  if (long < 1e-6) return false;
  for (let i = 3; i < last; i += 3) {
    const q = [0, 1, 2].map((c) => points[i + c] - points[c]);
    const cross = [d[1] * q[2] - d[2] * q[1], d[2] * q[0] - d[0] * q[2], d[0] * q[1] - d[1] * q[0]];
    if (Math.hypot(...cross) / long > STRAIGHT * long) return false;
  }
  return true;
}

const held = [0, 0, 0];

// Where the body is drawn at time t. Once ended it stays put in the turning frame, so that Outside carries it round.
export function bodyAt(model, m, frame, time_s, out) {
  if (frame === 'outside' && time_s <= m.ends_s) return drawnPoint(at(m.path, time_s, 'inertial_m', held), 0, model.radius_m, out);
  drawnPoint(at(m.path, time_s, 'rotating_m', held), 0, model.radius_m, out);
  return frame === 'outside' ? turned(out, model.radius_m, angleAt(model.answer, time_s), out) : out;
}

// A place of the deck at time t, in the frame of a stage.
export function deckAt(model, frame, along_m, height_m, axial_m, time_s, out) {
  return placeAt(model.radius_m, along_m, height_m, axial_m, frame === 'outside' ? angleAt(model.answer, time_s) : 0, out);
}

export function groundOf(model, point) {
  const along_rad = azimuthOf(point, model.radius_m);
  return { along_rad, height_m: model.radius_m - Math.hypot(point.x, model.radius_m - point.y), axial_m: point.z };
}

const ARM_M = 0.3;              // a thing starts in the hand, an arm's length in front of who holds it

// Where people stand: one figure for each place that a shown motion starts from.
export function standing(shown) {
  const seen = new Map();
  for (const m of shown) {
    const key = `${m.release.along_m.toFixed(2)} ${m.release.axial_m.toFixed(2)}`;
    if (!seen.has(key)) seen.set(key, { along_m: m.release.along_m, axial_m: m.release.axial_m - ARM_M, since_s: m.starts_s, release_rad: m.release_rad });
  }
  return [...seen.values()].slice(0, 6);
}
