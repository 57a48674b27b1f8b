// What lies over a picture, or a plot, of a path that was seen: the points, the free path nearest to them, the line of known length, and the places
// that show why it cannot be. All in the picture's own pixels; the sizes of marks are those of the window.

import { tr } from '../../state/language.js';
import { runsOf } from '../../state/match_answer.js';
import { clamp } from '../../state/scale.js';
import { lengthWords } from '../../state/units.js';
import { h, s, setAttribute, setChildren } from '../shared/dom.js';

const NUMBER_PX = 24; // from a point to the number of its reason
const GRID_TEXT_PX = 12,
  GRID_EDGE_PX = 30, // from a side of the picture to the middle of a figure, at least
  GRID_FIGURES_PX = [64, 18]; // apart, at least

const DECK_PX = 60; // of the deck's tick at the foot

/** {element, draw, reasons}: an SVG and the numbers over it; `choose(row)`: a number was pressed. */
export function createOver({ label, choose, units = () => 'si' }) {
  const deck = s('g', { class: 'over-deck' }),
    line = s('g', { class: 'over-line' }),
    path = s('g', { class: 'over-path' }),
    seen = s('g', { class: 'over-seen' }),
    now = s('g', { class: 'over-now' });
  const element = s('svg', { class: 'match-over', role: 'img', 'aria-label': label }, deck, line, path, seen, now);
  const numbers = h('div', { class: 'match-numbers' });
  let listed = null;

  /** size [w, h]; k: picture px in one of the window, for marks, and letter for letters; points [[x, y]] by row; current: the row in hand; fitted {x_px, y_px} or null; scale
   *  [from, to] or null; grid of the deck, as the server gives it, or null; reasons of the answer. */
  function draw({ size, k, letter = k, points, current, fitted, scale = null, grid = null, reasons }) {
    setAttribute(element, 'viewBox', `0 0 ${size[0]} ${size[1]}`);
    setChildren(deck, grid ? gridOf(grid, letter, units(), size[0]).flat() : []);
    setChildren(line, scale ? lineOf(scale, k) : []);
    const d = fitted
      ? runsOf(fitted)
          .map(run => `M${run.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`)
          .join('')
      : '';
    const ring = Math.max(1.2 * k, Math.min(3.4 * k, 0.32 * spacing(points)));
    setChildren(path, d ? [s('path', { d, class: 'casing' }), s('path', { d, class: 'fitted' })] : []);
    setChildren(
      seen,
      points.map(([x, y], row) => row !== current && s('circle', { cx: x, cy: y, r: ring })),
    );
    setChildren(now, points[current] ? crossOf(points[current], k) : []);
    drawNumbers(reasons, points, size, k);
  }

  function drawNumbers(reasons, points, [wide, high], k) {
    if (listed !== reasons) {
      listed = reasons;
      setChildren(
        numbers,
        reasons.map(({ at, says }, n) =>
          h('button', { type: 'button', class: 'match-number', 'aria-label': `${n + 1}: ${says}`, title: says, onclick: () => choose(at) }, `${n + 1}`),
        ),
      );
    }
    const taken = [];
    [...numbers.children].forEach((button, n) => {
      const point = points[reasons[n].at];
      button.hidden = !point;
      if (!point) return;
      const x = Math.min(wide - 14 * k, Math.max(14 * k, point[0]));
      let y = point[1] - NUMBER_PX * k < 14 * k ? point[1] + NUMBER_PX * k : point[1] - NUMBER_PX * k;
      while (taken.some(([u, v]) => Math.hypot(u - x, v - y) < 24 * k)) y -= 25 * k;
      taken.push([x, y]);
      button.style.left = `${((100 * x) / wide).toFixed(2)}%`;
      button.style.top = `${((100 * y) / high).toFixed(2)}%`;
    });
  }
  return { element, numbers, draw };
}

// How far apart points are from one row to the next, in the middle of all.
function spacing(points) {
  const gaps = points.slice(1).map(([x, y], i) => Math.hypot(x - points[i][0], y - points[i][1]));
  return gaps.sort((a, b) => a - b)[gaps.length >> 1] ?? Infinity;
}

// The line of known length: its foot on the deck, across which a short tick is drawn.
function lineOf([[x1, y1], [x2, y2]], k) {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1,
    [u, v] = [(y2 - y1) / long, -(x2 - x1) / long],
    half = (DECK_PX * k) / 2;
  const tick = (x, y, size) => `M${x - u * size} ${y - v * size}L${x + u * size} ${y + v * size}`;
  const d = `M${x1} ${y1}L${x2} ${y2}${tick(x1, y1, half)}${tick(x2, y2, 7 * k)}`;
  return [s('path', { d, class: 'casing' }), s('path', { d })];
}

// The deck's grid: thin and strong lines, the figures of the strong ones, and an upright where the camera looks.
function gridOf({ lines, upright }, k, units, wide) {
  const path = strong =>
    lines
      .filter(line => line.strong === strong)
      .flatMap(({ runs }) => runs.map(polyline))
      .join('');
  const both = (d, kind) => d && [s('path', { d, class: `casing ${kind}` }), s('path', { d, class: kind })];
  const figures = apartFrom(
    lines.filter(({ mark }) => mark),
    GRID_FIGURES_PX.map(px => px * k),
  ).map(({ mark: [x, y], of, at_m }) => {
    const length = lengthWords(at_m, units),
      say = of === 'axial_m' ? tr('axis {length}', { length }) : length;
    return s(
      'text',
      { x: clamp(x, GRID_EDGE_PX * k, wide - GRID_EDGE_PX * k), y: y - 4 * k, 'font-size': (GRID_TEXT_PX * k).toFixed(1), 'text-anchor': 'middle' },
      say,
    );
  });
  return [path(false) && s('path', { d: path(false), class: 'thin' }), both(path(true), 'strong'), upright && both(polyline(upright), 'upright'), figures];
}

// Of those with a mark the ones that keep clear of one another, the nearest lines first.
function apartFrom(lines, [wide, high]) {
  const kept = [];
  for (const line of lines.toSorted((a, b) => Math.abs(a.at_m) - Math.abs(b.at_m))) {
    const clear = kept.every(({ mark: [x, y] }) => Math.abs(x - line.mark[0]) > wide || Math.abs(y - line.mark[1]) > high);
    if (clear) kept.push(line);
  }
  return kept;
}

const polyline = points => `M${points.map(([x, y]) => `${x} ${y}`).join('L')}`;

function crossOf([x, y], k) {
  const [near, far] = [5 * k, 15 * k];
  const d = `M${x - far} ${y}H${x - near}M${x + near} ${y}H${x + far}M${x} ${y - far}V${y - near}M${x} ${y + near}V${y + far}`;
  return [s('path', { d, class: 'casing' }), s('path', { d })];
}
