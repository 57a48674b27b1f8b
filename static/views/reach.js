// What a motion brings along besides its body: where its pivot, the place it left, its cup and its dock are on a stage at time t,
// and how far who moves along it reaches from the path. Points are in drawing axes.

import { angleAt, at } from '../time/track.js';
import { PERSON_M } from './lay_figure.js';
import { triad } from './ground.js';
import { bodyAt, deckAt, turnAt } from './model.js';
import { drawnPoint, turned } from './place.js';

const CENTRE_M = 1; // of who lets go of the rim: their middle over their feet
const CAR_M = 2.3;

// Feet, up and forward of who moves; the axes are as they were at the release for who has let go of everything.
export function standOf(model, m, frame, time_s) {
  const centre = bodyAt(model, m, frame, time_s, {});
  const { ground } = model;
  const along_m = m.stage.beside === 'tether' ? m.release.along_m : (at(m.path, time_s, 'along_m') ?? m.release.along_m);
  const axes = triad(ground.azimuth(along_m, m.floor) + turnAt(model, frame, time_s), ground.level);
  return { ...axes, centre, feet: moved(centre, axes.up, -(m.centre_m ?? CENTRE_M)) };
}

export function moved(point, way, by_m) {
  return { x: point.x + way[0] * by_m, y: point.y + way[1] * by_m, z: point.z + way[2] * by_m };
}

// The place that a motion started from, which goes on turning with the habitat.
export function leftAt(model, m, frame, time_s) {
  const { along_m, height_m, axial_m } = m.release;
  return model.ground.at(along_m, height_m, axial_m, turnAt(model, frame, time_s), {}, m.floor);
}

// A position of the turning frame, as the server gives it.
export function riding(model, position_m, frame, time_s) {
  const point = drawnPoint(position_m, 0, model.radius_m, {});
  return frame === 'outside' ? turned(point, model.radius_m, angleAt(model.answer, time_s), point) : point;
}

// The middle of the cup's rim, moved along the ground by [spinward, axial] metres.
export function cupAt(model, m, frame, time_s, [spinward_m, axial_m] = [0, 0]) {
  const { along_m = 0, height_m = 0, axial_m: across_m = 0 } = m.input.target;
  return deckAt(model, frame, along_m + spinward_m, height_m - model.ground.surface(across_m), across_m + axial_m, time_s, {}, m.floor);
}

// Points that a picture of the motion must hold besides its path.
export function reachOf(model, m, frame, time_s) {
  const points = [];
  if (m.stage.mover === 'person') {
    const { feet, up } = standOf(model, m, frame, time_s);
    points.push(feet, moved(feet, up, m.stage.beside === 'lift' ? CAR_M : PERSON_M));
  }
  if (m.stage.beside === 'tether') points.push(leftAt(model, m, frame, time_s));
  if (m.pivot_m) points.push(riding(model, m.pivot_m, frame, time_s));
  if (m.input?.target) for (const move of [[0, 0], m.move_m ?? [0, 0]]) points.push(cupAt(model, m, frame, time_s, move));
  return points;
}
