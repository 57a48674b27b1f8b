// What stands on the map: the tint each limit lays on what it forbids, its line with feet on that side, and lines of equal gravity.

import { showQuantity, shownUnit } from '../../../state/units.js';
import { s } from '../../shared/dom.js';
import { axisWords, pathOf } from './frame.js';
import { limitWords } from './groups.js';
import { levelSpots, placeLabel } from './labels.js';

const DARKEST = 0.6; // were all tints to lie on one another
const MANY = 6; // fewer tints are no darker
const FOOT_PX = 4,
  FEET_APART_PX = 22;

/** What is drawn, as elements; `rows` as tableRows gives them, `quantities` those of the answer. */
export function drawLines(frame, { gravity, rows, quantities }, units) {
  const limits = rows.map(({ limit }) => limit),
    full = ({ limit, who }) => `${limitWords(limit, quantities, units)}: ${who}`;
  const drawn = rows.filter(({ limit }) => limit.line).map(row => ({ limit: row.limit, line: inPx(frame, row.limit.line), full: full(row) })),
    equal = gravity.filter(({ g }) => !limits.some(is(g))).map(({ label, line }) => ({ label, line: inPx(frame, line) }));
  const room = { taken: wordsOfAxes(frame, units), lines: [...drawn, ...equal].map(({ line }) => line), box: frame.box };
  const tint = (1 - (1 - DARKEST) ** (1 / Math.max(MANY, limits.length))).toFixed(3);
  return [
    limits
      .filter(limit => limit.forbids)
      .map(limit => s('path', { d: `${pathOf(inPx(frame, limit.forbids))}Z`, class: 'forbids', 'fill-opacity': tint })),
    equal.map(({ line }) => s('path', { d: pathOf(line), class: 'equal' })),
    drawn.map(lineOf),
    drawn.map(({ limit, line }) => s('path', { d: feet(frame, limit, line), class: 'feet' })),
    equal.map(({ label, line }) => words(label, line, { ...room, side: 0 }, 'equal')),
    drawn.map(({ limit, line, full }) => {
      const said = words(shortWords(limit, quantities, units), line, { ...room, side: forbiddenSide(frame, limit, line) }, `limit-words${mark(limit)}`);
      return said && titled(full, said);
    }),
  ].flat();
}

// with room about it for a pointer to rest on
function lineOf({ limit, line, full }) {
  const d = pathOf(line);
  return titled(full, s('path', { d, class: `limit${mark(limit)}` }), s('path', { d, class: 'reach' }));
}

function mark({ mine }) {
  return mine ? ' mine' : '';
}

// what a pointer that rests on it is told
function titled(full, ...elements) {
  return s('g', {}, s('title', {}, full), elements);
}

// a limit on gravity is itself a line of equal gravity
function is(g) {
  return ({ quantity, limit }) => quantity === 'gravity' && limit === g;
}

function wordsOfAxes(frame, units) {
  return axisWords(frame, units).flatMap(({ say, x, y, anchor }) => levelSpots(say, x + (anchor === 'start' ? 3 : -3) * say.length, y - 4));
}

/** The limit alone, short enough to stand on its line; a bare number says what it is of. */
export function shortWords(limit, quantities, units) {
  const { label } = quantities.find(({ name }) => name === limit.quantity);
  const said = shownUnit(limit.unit, units) === limit.unit ? limit.short : showQuantity(limit.limit, limit.unit, units);
  return `${limit.unit ? '' : `${label.split(' ')[0]} `}${said}${limit.mine ? ', yours' : ''}`;
}

function inPx(frame, points) {
  return points.map(([radius, spin]) => [frame.x(radius), frame.y(spin)]);
}

function words(text, line, place, kind) {
  const found = placeLabel(text, line, place);
  if (!found) return null;
  place.taken.push(...found.spots);
  const { x, y, turn_deg } = found;
  return s(
    'text',
    { class: kind, 'text-anchor': 'middle', transform: `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn_deg.toFixed(1)})`, dy: 4 },
    text,
  );
}

// 1 where the forbidden side lies above the line as it is read (left of an upright one), −1 where below
function forbiddenSide(frame, limit, line) {
  const [nx, ny] = towardForbidden(frame, limit, line);
  return ny < 0 || (ny === 0 && nx < 0) ? 1 : -1;
}

// a unit vector off the line, to the side its forbidden part lies on
function towardForbidden(frame, { forbids }, [[x0, y0], [x1, y1]]) {
  const long = Math.hypot(x1 - x0, y1 - y0) || 1,
    [nx, ny] = [(y1 - y0) / long, (x0 - x1) / long];
  const lean = inPx(frame, forbids ?? []).reduce((sum, [x, y]) => sum + (x - x0) * nx + (y - y0) * ny, 0);
  return lean >= 0 ? [nx, ny] : [-nx, -ny];
}

// one-sided, so that a line says without its tint what it forbids
function feet(frame, limit, line) {
  if (!limit.forbids) return '';
  const [[x0, y0], [x1, y1]] = line,
    long = Math.hypot(x1 - x0, y1 - y0);
  const [nx, ny] = towardForbidden(frame, limit, line);
  const count = Math.floor(long / FEET_APART_PX);
  return Array.from({ length: count }, (_, i) => {
    const at = (i + 0.5) / count;
    const [x, y] = [x0 + (x1 - x0) * at, y0 + (y1 - y0) * at];
    return pathOf([[x, y], [x + nx * FOOT_PX, y + ny * FOOT_PX]]);
  }).join('');
}
