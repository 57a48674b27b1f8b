// The net of landings: what is varied of a throw, and which throw of the net lies under a point of its drawing. No elements.

import { sceneOf } from './shot.js';

export const PAIRS = [
  ['elevation_deg', 'speed_m_s'],
  ['heading_deg', 'speed_m_s'],
  ['elevation_deg', 'heading_deg'],
];
const STEPS = { elevation_deg: [0.5, 1, 2], heading_deg: [5], speed_m_s: [0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 25, 50, 100] }; // from one throw to the next
const MOST = { elevation_deg: 45, heading_deg: 73, speed_m_s: 49 };
const FIRST = { elevation_deg: [0, 80], heading_deg: [0, 355], speed_m_s: [1, 12] };
const FASTER = 2; // than the throw is now, to begin with
const NEAR_PX = 18;

/** What is varied to begin with: two ranges, elevation or heading first. */
export function firstOver(pair, motion) {
  return pair.map(field => {
    const [first, last] = FIRST[field];
    return rangeOf(field, first, field === 'speed_m_s' ? Math.max(last, Math.ceil(FASTER * (motion.speed_m_s ?? 0))) : last);
  });
}

/** A range in steps that are round figures: the finest with which there are not too many throws. */
export function rangeOf(field, first, last) {
  const long = Math.abs(last - first),
    step = STEPS[field].find(one => long / one < MOST[field]) ?? long / (MOST[field] - 1);
  return { field, first, last, count: Math.max(2, Math.round(long / step) + 1) };
}

/** As POST /api/landings takes it; null while nothing is varied. */
export function landingsRequest(scene, motion, over) {
  if (!over) return null;
  const varied = over.map(({ field }) => field);
  return { scene: sceneOf(scene, [motion], motion, varied), motion, over };
}

/** The figures of the throw at row and column: {speed_m_s, heading_deg, elevation_deg} as far as they vary. */
export function throwAt({ over: [rows, columns] }, [row, column]) {
  return { [rows.field]: rows.values[row], [columns.field]: columns.values[column] };
}

/** Where a throw of the net lies in its drawing, px. */
export function spotOf(landings, [row, column]) {
  const { drawing, net, over } = landings,
    i = row * over[1].count + column;
  const up = net.up in landings ? landings[net.up][i] : over.find(({ field }) => field === net.up).values[over[0].field === net.up ? row : column];
  return pointAt(drawing, landings.along_m[i], up);
}

function pointAt({ box_px: [left, top, right, bottom], along_m: [a, b], up: [low, high] }, along_m, up) {
  return [left + ((along_m - a) / (b - a)) * (right - left), bottom - ((up - low) / (high - low)) * (bottom - top)];
}

/** The throw whose landing lies nearest to a point of the drawing, [row, column]; null where none is near. Only what lands. */
export function nearestTo(landings, [x, y], near_px = NEAR_PX) {
  const [rows, columns] = landings.over.map(({ count }) => count);
  let best = /** @type {number[] | null} */ (null),
    least = near_px;
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      if (!lands(landings, [row, column])) continue;
      const [u, v] = spotOf(landings, [row, column]);
      const off = Math.hypot(u - x, v - y);
      if (off < least) [best, least] = [[row, column], off];
    }
  return best;
}

/** Whether the throw at row and column comes down on the deck. */
export function lands({ ended, over }, [row, column]) {
  return ended[row * over[1].count + column] === 0;
}
