// A small drawing of a scene seen down the axis, as numbers that a record keeps: deck, people and paths as Aboard shows them.

import { fromTheSide, lengthOf } from './craft_reach.js';
import { seenPoints } from './camera_presets.js';
import { PERSON_M } from './lay_figure.js';
import { readModel, standing } from './model.js';
import { drawnPoint } from './place.js';

/** The drawing's size, in its own units. */
export const WIDE = 320,
  HIGH = 200;
const MARGIN = 22;
const MOST_POINTS = 48;
const ENDS = new Set(['deck', 'floor', 'table', 'target']); // of a path, marked
const END_ON = 10; // times as far along the line of sight as across it
const EXPOSURES = 6; // of a craft that tumbles
const FLATTEST = 40_000; // the largest circle drawn as one: past it the deck is a straight line

/** {circles: [[x, y, r]], lines: [[x, y, x, y]], hung: [[x, y, x, y]], people: [[x, y, x, y]], paths: [{look, points: [x, y, …], end: [x, y] or null}]}; `look` is the path's number
 *  from 1. Without the motions named in `hidden`. */
export function vignetteOf(answer, fields, hidden = []) {
  const model = readModel(answer, fields);
  const shown = model.motions.filter(m => m.lines.aboard.points.length && !hidden.includes(m.name));
  if (model.tumbling && shown[0]?.tumbles) return goingOver(model, shown[0]);
  if (shown.length && alongTheAxis(shown)) return fromAbove(model, shown);
  const at = scaled(shown.length ? seenPoints({ frame: 'aboard', companion: false, lead: shown[0] }, model, shown) : model.ground.outline());
  return {
    ...deckOf(model, at),
    hung: shown.filter(m => m.pivot_m).map(m => lineOf(model, m, at)),
    people: model.ground.level ? [] : standing(shown, model.ground).map(person => personAt(model, person, at)),
    paths: shown.map(m => ({ look: m.style.number, points: thinned(m.lines.aboard.points, at), end: endOf(model, m, at) })),
  };
}

// A craft that goes over: its length at so many times, seen from the side.
function goingOver(model, { starts_s, ends_s }) {
  const ends = Array.from({ length: EXPOSURES }, (_, k) => lengthOf(model).map(fromTheSide(model, starts_s + ((ends_s - starts_s) * k) / (EXPOSURES - 1))));
  const at = scaled(ends.flat().flatMap(({ x, y }) => [x, y, 0]));
  return { circles: [], lines: ends.map(pair => pair.flatMap(at)), hung: [], people: [], paths: [] };
}

// what goes along the line of sight would be a dot
function alongTheAxis(shown) {
  const [x, y, z] = [0, 1, 2].map(c => Math.max(...shown.map(({ lines: { aboard } }) => spanOf(aboard.points, c))));
  return z > END_ON * Math.hypot(x, y);
}

function spanOf(points, c) {
  const values = points.filter((_, i) => i % 3 === c);
  return Math.max(...values) - Math.min(...values);
}

// the axis across the sheet, spinward up it
function fromAbove(model, shown) {
  const turned = points => Float64Array.from(points, (_, i) => [points[i + 2], points[i - 1], points[i - 1]][i % 3]);
  const all = shown.map(m => turned(m.lines.aboard.points));
  const at = scaled(all.flatMap(points => [...points]));
  const end = m => endOf(model, m, ({ x, z }) => at({ x: z, y: x }));
  return { circles: [], lines: [], hung: [], people: [], paths: shown.map((m, k) => ({ look: m.style.number, points: thinned(all[k], at), end: end(m) })) };
}

// Everything in the middle of the sheet, as large as fits; one unit is about a third of a pixel, so figures are whole.
function scaled(points) {
  const x = [Infinity, -Infinity],
    y = [Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 3) {
    x[0] = Math.min(x[0], points[i]);
    x[1] = Math.max(x[1], points[i]);
    y[0] = Math.min(y[0], points[i + 1]);
    y[1] = Math.max(y[1], points[i + 1]);
  }
  const scale = Math.min((WIDE - 2 * MARGIN) / Math.max(x[1] - x[0], 1e-6), (HIGH - 2 * MARGIN) / Math.max(y[1] - y[0], 1e-6));
  const [left, top] = [WIDE / 2 - (scale * (x[0] + x[1])) / 2, HIGH / 2 + (scale * (y[0] + y[1])) / 2];
  const at = p => [Math.round(left + scale * p.x), Math.round(top - scale * p.y)];
  return Object.assign(at, { scale });
}

// what hangs, on its line as it is let go
function lineOf({ radius_m }, { pivot_m, lines }, at) {
  const [x, y] = lines.aboard.points;
  return [...at(drawnPoint(pivot_m, 0, radius_m, {})), ...at({ x, y })];
}

function deckOf({ ground, shape, radius_m }, at) {
  if (ground.floors) return { circles: [], lines: ground.floors.map(({ half_m: [reach_m] }, floor) => floorAt(ground, floor, reach_m, at)) };
  if (radius_m * at.scale > FLATTEST) return { circles: [], lines: [[0, at({ x: 0, y: 0 })[1], WIDE, at({ x: 0, y: 0 })[1]]] };
  const rings = shape.section_m && shape.section_m < radius_m ? [radius_m, radius_m - 2 * shape.section_m] : [radius_m];
  return { circles: rings.map(ring_m => [...at({ x: 0, y: radius_m }), Math.round(ring_m * at.scale)]), lines: [] };
}

function floorAt(ground, floor, reach_m, at) {
  return [-reach_m, reach_m].flatMap(along_m => at(ground.at(along_m, 0, 0, 0, {}, floor)));
}

function personAt({ ground, radius_m }, { along_m, axial_m, floor }, at) {
  return [0, Math.min(PERSON_M, 1.6 * radius_m)].flatMap(height_m => at(ground.on(along_m, height_m, axial_m, 0, {}, floor)));
}

function thinned(points, at) {
  const count = points.length / 3;
  const every = Math.max(1, (count - 1) / (MOST_POINTS - 1));
  const out = [];
  for (let k = 0; Math.round(k * every) < count; k += 1) {
    const i = 3 * Math.round(k * every);
    const [x, y] = at({ x: points[i], y: points[i + 1] });
    if (x !== out.at(-2) || y !== out.at(-1)) out.push(x, y);
  }
  return out;
}

function endOf({ radius_m }, { motion }, at) {
  const landing = motion.events.find(event => ENDS.has(event.kind));
  return landing?.rotating_m ? at(drawnPoint(landing.rotating_m, 0, radius_m, {})) : null;
}
