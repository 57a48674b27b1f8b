// On a flat plate, seen along the axis: what goes with a motion besides its path, as on the stages. A lamp's line, a lift's shaft and
// cabin, a tether, a cup on its table, the jug or tap a liquid comes from.

import { svg } from './overlay.js';
import { triad } from './ground.js';
import { bodyAt, turnAt } from './model.js';
import { cupAt, leftAt, moved, riding, standOf } from './reach.js';
import { tiltAt, vesselAt } from './vessels.js';

const INK = '#182024';
const SOFT = '#465157';
const CABIN_M = [1.2, 2.2];
const LEAST_CABIN_PX = 14;
const JUG = [
  [0, 0],
  [-0.025, -0.03],
  [-0.015, -0.2],
  [-0.03, -0.22],
  [-0.14, -0.22],
  [-0.16, -0.14],
  [-0.14, 0],
]; // metres from the lip: along the pour, up
const DRAWN = { pendulum, lift, tether, cup };

/** Draws into the plate's moving part what goes with a motion at time t. */
export function drawProps(plate, m, time_s) {
  if (!m.path.count || time_s < m.starts_s - 1e-6) return;
  DRAWN[m.stage.beside]?.(plate, m, time_s);
}

function pendulum(plate, m, time_s) {
  if (!m.pivot_m) return;
  const pivot = riding(plate.model, m.pivot_m, plate.frame, time_s);
  stroke(plate, [pivot, bodyAt(plate.model, m, plate.frame, time_s, {})], { stroke: INK, 'stroke-width': 1.4, class: 'prop-line' });
  const [x, y] = plate.at(pivot);
  svg('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 3, fill: INK }, plate.moving);
}

function lift(plate, m, time_s) {
  const { model, frame } = plate;
  const { ground } = model;
  const turn = turnAt(model, frame, time_s);
  const top_m = Math.max(m.input.place?.height_m ?? 0, m.input.to_height_m ?? 0) + CABIN_M[1];
  const { feet, spin, up } = standOf(model, m, frame, time_s);
  const spoke = triad(ground.azimuth(m.release.along_m, m.floor) + turn, ground.level);
  for (const aside of [-0.68, 0.68])
    stroke(
      plate,
      [0, top_m].map(height_m => moved(ground.at(m.release.along_m, height_m, m.release.axial_m, turn, {}, m.floor), spoke.spin, aside)),
      { stroke: SOFT, 'stroke-width': 1.2, class: 'prop-line' },
    );
  const grown = Math.max(1, LEAST_CABIN_PX / (CABIN_M[1] * plate.px));
  const [wide, high] = CABIN_M.map(size => size * grown);
  const corner = (s, h) => moved(moved(feet, up, h - (high - CABIN_M[1]) / 2), spin, (s * wide) / 2);
  stroke(plate, [corner(-1, 0), corner(1, 0), corner(1, high), corner(-1, high), corner(-1, 0)], { stroke: INK, 'stroke-width': 1.6, class: 'prop-cabin' });
}

function tether(plate, m, time_s) {
  const ends = [leftAt(plate.model, m, plate.frame, time_s), bodyAt(plate.model, m, plate.frame, time_s, {})];
  stroke(plate, ends, { stroke: INK, 'stroke-width': 1.2, 'stroke-dasharray': '5 4', class: 'prop-line' });
}

function cup(plate, m, time_s) {
  const { model, frame } = plate;
  const { at, forward, up } = vesselAt(model, m, frame, time_s);
  const lean = (-tiltAt(m, time_s) * Math.PI) / 180;
  const [s, c] = [Math.sin(lean), Math.cos(lean)];
  const jug = JUG.map(([along, high]) => moved(moved(at, forward, along * c - high * s), up, along * s + high * c));
  stroke(plate, [...jug, jug[0]], { stroke: INK, 'stroke-width': 1.4, class: 'prop-jug' });
  if (!m.input.target) return;
  const { along_m = 0, height_m, axial_m = 0, diameter_m, depth_m } = m.input.target;
  const axes = triad(model.ground.azimuth(along_m, m.floor) + turnAt(model, frame, time_s), model.ground.level);
  const rim = cupAt(model, m, frame, time_s);
  const point = (aside, down) => moved(moved(rim, axes.spin, aside), axes.up, -down);
  const r = diameter_m / 2;
  stroke(plate, [point(-r, 0), point(-0.8 * r, depth_m), point(0.8 * r, depth_m), point(r, 0)], { stroke: INK, 'stroke-width': 1.8, class: 'prop-cup' });
  const stand_m = height_m - model.ground.surface(axial_m) - depth_m;
  if (stand_m < 0.05) return;
  const half = m.motion.findings?.table?.half_m ?? 1.4 * r;
  stroke(plate, [point(-half, depth_m), point(half, depth_m)], { stroke: SOFT, 'stroke-width': 2, class: 'prop-table' });
  for (const side of [-0.92, 0.92]) stroke(plate, [point(side * half, depth_m), point(side * half, depth_m + stand_m)], { stroke: SOFT, 'stroke-width': 1.2 });
}

function stroke(plate, points, look) {
  const d = points
    .map(
      (p, i) =>
        `${i ? 'L' : 'M'}${plate
          .at(p)
          .map(c => c.toFixed(1))
          .join(' ')}`,
    )
    .join('');
  svg('path', { d, fill: 'none', 'stroke-linejoin': 'round', ...look }, plate.moving);
}
