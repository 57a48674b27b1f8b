// A track without a picture: its points by place along the deck and height, at one scale, with the nearest free path.

import { inSigns, tr } from '../../state/language.js';
import { filled } from '../../state/match_rows.js';
import { clamp } from '../../state/scale.js';
import { shownUnit, toShown } from '../../state/units.js';
import { h, s, setAttribute, setChildren } from '../shared/dom.js';
import { createOver } from './match_over.js';

const WIDE = { least: 240, first: 320, most: 900 }, // px, as wide as there is room
  HIGH = { least: 0.34, most: 0.72 }, // of the width
  MARGIN = { left: 42, right: 14, top: 24, bottom: 34 };
const STEPS = [1, 2, 5];

/** get() → {match, answer, row}; choose(row); `units()`: which are shown. */
export function createMatchPlot({ get, choose, units }) {
  const ground = s('svg', { class: 'match-ground', 'aria-hidden': true }),
    over = createOver({ label: tr('Height by place along the deck, with the nearest free path'), choose });
  const element = h('div', { class: 'match-picture plot-ground' }, ground, over.element, over.numbers);

  // [[along, height]…] in metres: of an animated object's keys the places of the nearest path, for its own axes are others
  function placesOf({ rows }, answer) {
    const items = filled(rows);
    if (!rows.columns.includes('x_m')) return items.filter(row => row.along_m !== null && row.height_m !== null).map(row => [row.along_m, row.height_m]);
    if (!answer) return [];
    return answer.at.along_m.map((along, i) => [along, answer.at.height_m[i]]).filter(([along]) => along !== null);
  }

  function update() {
    const { match, answer, row } = get(),
      places = match.rows && match.source === null ? placesOf(match, answer) : [];
    setAttribute(element, 'hidden', places.length < 2);
    if (places.length < 2) return;
    const path = answer ? answer.path.along_m.map((along, i) => [along, answer.path.height_m[i]]).filter(([, height]) => height !== null) : [];
    const { size, at, scale } = framed([...places, ...path], clamp(element.clientWidth || WIDE.first, WIDE.least, WIDE.most));
    element.parentElement.style.setProperty('--aspect', (size[0] / size[1]).toFixed(5));
    setAttribute(ground, 'viewBox', `0 0 ${size[0]} ${size[1]}`);
    setChildren(ground, grid(size, at, scale, units()));
    const fitted = path.map(at);
    over.draw({
      size,
      k: size[0] / (element.clientWidth || size[0]),
      points: places.map(at),
      current: row,
      fitted: fitted.length ? { x_px: fitted.map(([x]) => x), y_px: fitted.map(([, y]) => y) } : null,
      reasons: answer?.reasons ?? [],
    });
  }
  return { element, update };
}

// {size, at(place) → px, scale: {low, high, px_m}} with room on all sides.
function framed(places, wide) {
  const ends = k => [Math.min(...places.map(place => place[k])), Math.max(...places.map(place => place[k]))];
  const [left, right] = ends(0),
    [low, high] = ends(1);
  const across = wide - MARGIN.left - MARGIN.right,
    bottom = Math.min(low, Math.max(0, low - 0.4 * Math.max(high - low, right - left))); // the deck, where it is near
  const px_m = Math.min(across / Math.max(right - left, 1e-6), (HIGH.most * wide - MARGIN.top - MARGIN.bottom) / Math.max(high - bottom, 1e-6)),
    tall = Math.max(Math.round(HIGH.least * wide), Math.round((high - bottom) * px_m + MARGIN.top + MARGIN.bottom));
  const from = left - (across / px_m - (right - left)) / 2;
  const at = ([along, height]) => [MARGIN.left + (along - from) * px_m, tall - MARGIN.bottom - (height - bottom) * px_m];
  const reach = { along: [from, from + across / px_m], height: [bottom, bottom + (tall - MARGIN.top - MARGIN.bottom) / px_m] };
  return { size: [wide, tall], at, scale: { ...reach, px_m } };
}

function grid([wide, high], at, { along, height, px_m }, units) {
  const unit = shownUnit('m', units),
    per = toShown(1, 'm', units);
  const figures = ([low, end], least_px) => {
    const step = stepFor(least_px / px_m, per);
    const first = Math.ceil(low / step);
    return Array.from({ length: Math.max(0, Math.floor(end / step) - first + 1) }, (_, k) => (first + k) * step);
  };
  const say = value => inSigns(String(Number(toShown(value, 'm', units).toFixed(6)))).replace('-', '−');
  return [
    ...figures(height, 34).flatMap(value => {
      const [, y] = at([0, value]);
      return [
        s('path', { class: value === 0 ? 'deck' : null, d: `M${MARGIN.left} ${y}H${wide - MARGIN.right}` }),
        s('text', { x: MARGIN.left - 8, y: y + 4, 'text-anchor': 'end' }, say(value)),
      ];
    }),
    ...figures(along, 70).flatMap(value => {
      const [x] = at([value, 0]);
      return [
        s('path', { d: `M${x} ${MARGIN.top}V${high - MARGIN.bottom}` }),
        s('text', { x, y: high - MARGIN.bottom + 18, 'text-anchor': 'middle' }, say(value)),
      ];
    }),
    s('text', { x: 4, y: 13 }, tr('height, {unit}', { unit })),
    s('text', { x: wide - 4, y: high - 3, 'text-anchor': 'end' }, tr('along the deck, {unit}', { unit })),
  ];
}

// a round step of at least so many metres, in the shown unit
function stepFor(least_m, per) {
  const least = least_m * per,
    ten = 10 ** Math.floor(Math.log10(least));
  return ([...STEPS, 10].find(step => step * ten >= least) * ten) / per;
}
