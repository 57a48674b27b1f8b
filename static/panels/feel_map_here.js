// This habitat on the map: guides to both axes, a ring, and its name where it hides no other words, as far as that can be had.

import { s } from './dom.js';
import { beyond } from './feel_map_frame.js';
import { levelSpots, touches } from './feel_map_labels.js';

const MOST_LETTERS = 26,
  LETTER_PX = 6.5; // of the bold name, about
const SIDES = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]; // right or left, above or below

/** taken: spots of the words that stand on the map. */
export function drawHere(frame, { name, radius_m, spin_rpm, taken }) {
  const { left, bottom } = frame.box,
    [x, y] = [frame.x(radius_m), frame.y(spin_rpm)],
    off = beyond(frame, radius_m, spin_rpm);
  return [
    s('path', { d: `M${left} ${y.toFixed(1)}H${x.toFixed(1)}V${bottom}`, class: 'guide' }),
    s('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 7.5, class: 'ring' }),
    off ? null : s('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 2.5 }),
    nameAt(frame, x, y, shortened(name, MOST_LETTERS), off ? `: ${off}` : '', taken),
  ];
}

// whole and hiding nothing if there is such a place, else whole, else with as many letters as there is room for
function nameAt({ box }, x, y, name, tail, taken) {
  const places = SIDES.map(([dx, dy]) => placed(box, x, y, name, tail, dx, dy)).filter(
    ({ middle }) => middle > box.top && middle < box.bottom,
  );
  const whole = places.filter(({ text }) => text === name + tail);
  const hidden = ({ spots }) => taken.filter(spot => touches([spot], spots)).length;
  const { text, at } = whole.length
    ? whole.reduce((a, b) => (hidden(b) < hidden(a) ? b : a))
    : places.reduce((a, b) => (b.text.length > a.text.length ? b : a));
  return s('g', {}, plate(at, text), s('text', at, text));
}

// where no place is free the name stands on a plate, and what it hides is hidden whole
function plate({ x, y, 'text-anchor': anchor }, text) {
  const width = text.length * LETTER_PX + 6;
  return s('rect', { x: (anchor === 'start' ? Number(x) - 3 : Number(x) - width + 3).toFixed(1), y: y - 13, width, height: 17, class: 'plate' });
}

function placed(box, x, y, name, tail, dx, dy) {
  const from = x + 12 * dx,
    letters = Math.floor((dx > 0 ? box.right + 8 - from : from - box.left) / LETTER_PX),
    text = shortened(name, letters - tail.length) + tail;
  const base = dy < 0 ? y - 9 : y + 19;
  const spots = levelSpots(text, from + (dx * text.length * LETTER_PX) / 2, base - 5);
  const at = { x: from.toFixed(1), y: base.toFixed(1), 'text-anchor': dx > 0 ? 'start' : 'end', class: 'name' };
  return { text, spots, middle: base - 5, at };
}

function shortened(text, letters) {
  return text.length <= letters ? text : `${text.slice(0, Math.max(0, letters - 1)).trimEnd()}…`;
}
