// What the stages show, read from one answer: no three, no DOM, no physics. Points are in drawing axes.

import { pathStyle } from '../state/palette.js';
import { shapeFacts } from '../state/shapes.js';
import { angleAt, at, companionPoints, lastParcel, pathPoints } from '../time/track.js';
import { holderOf } from './attendant.js';
import { drawnGround, readShape } from './ground.js';
import { drawnPoint, turned } from './place.js';

const TUMBLE = 'tumble';
const MOST_POINTS = 161;
const POINTS_A_CONTACT = 8; // more where it bounces, for each arc is a curve of its own
const MOST_OF_ALL = 1600;
const STRAIGHT = 0.002; // of its length: how far a path may leave its chord and still be called straight

export function readModel(answer, fields) {
  const { habitat, motions } = answer.scene;
  const shape = readShape(habitat, answer.habitat, answer.drawn[0]);
  const model = {
    answer,
    radius_m: habitat.radius_m,
    shape,
    facts: fields && shapeFacts(fields, habitat),
    cameras: fields?.cameras,
    ground: drawnGround(shape),
    craft: answer.craft ?? null,
    tumbling: Boolean(answer.tumbling),
  };
  model.motions = answer.motions.map((motion, i) => readMotion(model, motion, motions[i], i, fields));
  return model;
}

// The same motions in the habitats that the scene names beside its own.
export function readOthers(answer, fields) {
  return (answer.compare ?? []).map((other, i) => ({
    ...readModel({ ...other, drawn: [answer.drawn[i + 1]], scene: { ...answer.scene, habitat: other.habitat_part } }, fields),
    name: other.name,
  }));
}

function readMotion(model, motion, input, i, fields) {
  const { answer, radius_m, ground } = model;
  const path = pathPoints(motion, answer.grid);
  const release = motion.events.find(e => e.kind === 'release') ?? { along_m: 0, height_m: 0, axial_m: 0, time_s: 0 };
  const floor = input?.place?.floor ?? 0;
  const companion = motion.companion?.height_m?.length ? companionPoints(motion.companion, answer.grid, release.time_s) : null;
  const { stage } = fields.kinds[motion.kind];
  const inertial = drawnLine(path, 'inertial_m', radius_m, stage.winds);
  return {
    i,
    motion,
    stage,
    input,
    path,
    release,
    companion,
    floor,
    name: motion.name,
    style: pathStyle(i),
    stream: motion.stream,
    landing: motion.landing,
    starts_s: path.starts_s,
    ends_s: path.ends_s,
    over_s: lastParcel(motion, path.ends_s), // a pour goes on after its first parcel
    diameter_m: bodyDiameter(input, fields),
    outside: stage.outside,
    centre_m: input?.centre_m ?? null,
    size_m: input?.size_m ?? null,
    pivot_m: motion.findings?.pivot_rotating_m ?? null,
    move_m: motion.findings?.move_m ?? null,
    release_rad: ground.azimuth(release.along_m, floor) + angleAt(answer, release.time_s),
    lines: {
      aboard: drawnLine(path, 'rotating_m', radius_m, stage.winds),
      outside: inertial,
      companion: companion ? heldTo(ground, floor, drawnLine(companion, 'rotating_m', radius_m), motion.companion) : null,
    },
    straight: isStraight(inertial.points),
    tumbles: motion.kind === TUMBLE,
    fastest_m_s: fastest(motion.rotating_velocity_m_s),
  };
}

// {points: [x, y, z, …], time: […]}: as many points as a picture needs, and every event: no contact is cut short.
function drawnLine(path, key, radius_m, winds = false) {
  const source = drawnSources(path, winds);
  const points = new Float64Array(3 * source.length);
  const p = {};
  source.forEach((i, k) => {
    drawnPoint(path[key], i, radius_m, p);
    points.set([p.x, p.y, p.z], 3 * k);
  });
  return { points, time: Float64Array.from(source, i => path.time_s[i]), source };
}

function drawnSources(path, winds) {
  const most = winds ? MOST_OF_ALL : Math.min(MOST_OF_ALL, MOST_POINTS + POINTS_A_CONTACT * (path.breaks_s?.length ?? 0));
  const every = Math.max(1, (path.count - 1) / (most - 1));
  const kept = new Set(path.corners ?? []);
  const count = path.count ? Math.floor((path.count - 1) / every + 1e-9) + 1 : 0;
  for (let k = 0; k < count; k += 1) kept.add(Math.min(path.count - 1, Math.round(k * every)));
  return [...kept].sort((a, b) => a - b);
}

// Plain gravity's path that never lands (it rolls) is drawn as far as there is something to roll on.
function heldTo(ground, floor, line, { landing }) {
  if (landing) return line;
  const { axial_m } = ground.reach(floor);
  const count = line.time.findIndex((_, k) => {
    const under = ground.under({ x: line.points[3 * k], y: line.points[3 * k + 1], z: line.points[3 * k + 2] }, 0, floor);
    return !under || Math.abs(under.axial_m) > (axial_m ?? Infinity);
  });
  return count < 0 ? line : { points: line.points.slice(0, 3 * count), time: line.time.slice(0, count), source: line.source.slice(0, count) };
}

function bodyDiameter(input, fields) {
  const body = input?.body;
  if (body && typeof body === 'object') return body.diameter_m ?? 0;
  return fields?.bodies?.find(b => b.name === body)?.diameter_m ?? 0;
}

function fastest(velocity) {
  let most = 0;
  for (let i = 0; velocity && i < velocity.length; i += 3) most = Math.max(most, Math.hypot(velocity[i], velocity[i + 1], velocity[i + 2]));
  return most;
}

function isStraight(points) {
  const last = points.length - 3;
  if (last < 6) return false;
  const d = [0, 1, 2].map(c => points[last + c] - points[c]);
  const long = Math.hypot(...d);
  if (long < 1e-6) return false;
  for (let i = 3; i < last; i += 3) {
    const q = [0, 1, 2].map(c => points[i + c] - points[c]);
    const cross = [d[1] * q[2] - d[2] * q[1], d[2] * q[0] - d[0] * q[2], d[0] * q[1] - d[1] * q[0]];
    if (Math.hypot(...cross) / long > STRAIGHT * long) return false;
  }
  return true;
}

const held = [0, 0, 0];

// Where the body is drawn at time t, of a craft that tumbles as it is aboard. Once ended it stays put in the turning frame, so that Outside carries it round.
export function bodyAt(model, m, frame, time_s, out) {
  if (frame === 'outside' && time_s <= m.ends_s && !model.tumbling) return drawnPoint(at(m.path, time_s, 'inertial_m', held), 0, model.radius_m, out);
  drawnPoint(at(m.path, time_s, 'rotating_m', held), 0, model.radius_m, out);
  return turned(out, model.radius_m, turnAt(model, frame, time_s), out);
}

// A place of the deck at time t, in the frame of a stage.
export function deckAt(model, frame, along_m, lift_m, axial_m, time_s, out, floor = 0) {
  return model.ground.on(along_m, lift_m, axial_m, turnAt(model, frame, time_s), out, floor);
}

// How far the habitat has turned on a stage. One that tumbles is drawn as it is aboard, and Outside's eye goes round it (tumbling.js).
export function turnAt(model, frame, time_s) {
  return frame === 'outside' && !model.tumbling ? angleAt(model.answer, time_s) : 0;
}

// Where people stand: one figure for each place that a shown motion starts from.
export function standing(shown, ground) {
  const seen = new Map();
  for (const m of shown.filter(({ stage }) => stage.attended_m !== null)) {
    const { along_m, axial_m } = m.release;
    const key = `${along_m.toFixed(2)} ${axial_m.toFixed(2)} ${m.floor}`;
    if (seen.has(key)) continue;
    const holder = holderOf(m, ground);
    seen.set(key, {
      along_m: along_m + (holder?.along_m ?? 0),
      axial_m: axial_m + (holder?.axial_m ?? -m.stage.attended_m),
      heading_rad: holder?.heading_rad ?? 0,
      hand: holder?.hand ?? null,
      floor: m.floor,
      since_s: m.starts_s,
      since_rad: m.release_rad - ground.azimuth(along_m, m.floor),
    });
  }
  if (shown.every(m => m.tumbles)) return [{ ...ground.middleOf(), floor: 0, since_s: 0, since_rad: 0 }];
  return [...seen.values()].slice(0, 6);
}
