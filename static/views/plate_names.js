// The names on a line plate: each at the middle of its path, moved up or down where another text stands.

import { metres } from './say.js';
import { PLAIN } from '../state/palette.js';

export const LETTER = 0.5;       // a letter's width over its height, about
const PLAIN_AT = 0.7;            // of its length: where plain gravity is named
const OVER_PX = 12;

export function nameAll(plate) {
  const { frame, shown, view } = plate;
  for (const m of shown) {
    const drift = m.landing && frame === 'aboard' ? `, ${metres(Math.abs(m.landing.drift_m), view.units)}` : '';
    name(plate, m.lines[frame].points, 0.5, `${m.name}${drift}`, m.style.paper);
  }
  if (frame === 'aboard' && view.companion) name(plate, longestPlain(shown), PLAIN_AT, 'plain gravity', PLAIN.paper);
}

// One name for all of them.
function longestPlain(shown) {
  const reach = (points) => Math.abs(points.at(-3) - points[0]);
  const lines = shown.map((m) => m.lines.companion?.points ?? []).filter((points) => points.length);
  return lines.reduce((a, b) => (a.length && reach(a) >= reach(b) ? a : b), []);
}

function name(plate, points, share, words, fill) {
  if (!points.length) return;
  const i = 3 * Math.floor(((points.length - 3) / 3) * share);
  const [x, y] = plate.at({ x: points[i], y: points[i + 1] });
  plate.taken.push(plate.text(plate.sheet, [x, apart(plate, x, y - OVER_PX, words)], words, fill));
}

// The height nearest to y at which no other text stands.
export function apart({ room: { text, highest }, rect, taken }, x, y, words) {
  const half = (words.length * LETTER * text) / 2;
  const free = (at) => taken.every(([l, t, r, b]) => x - half > r || x + half < l || at - 0.8 * text > b || at + 0.2 * text < t);
  return [0, -1, 1, -2, 2, -3, 3, -4, 4].map((k) => y + k * text).find((at) => at > highest && at < rect.height - 4 && free(at)) ?? y;
}
