// The small drawing of a scene, kept or to start from.

import { PATHS } from '../../state/palette.js';
import { s } from './dom.js';

/** `drawing`: as views/vignette.js makes it; null: one never drawn has an empty stage. */
export function smallDrawing(drawing) {
  const { circles = [], lines = [], hung = [], people = [], paths = [] } = drawing ?? {};
  const look = n => PATHS[(n - 1) % PATHS.length];
  return s(
    'svg',
    { class: 'vignette', viewBox: '0 0 320 200', 'aria-hidden': 'true' },
    circles.map(([cx, cy, r], i) => s('circle', { cx, cy, r, class: i ? 'inner' : 'deck' })),
    lines.map(([x1, y1, x2, y2]) => s('line', { x1, y1, x2, y2, class: 'deck' })),
    hung.map(([x1, y1, x2, y2]) => s('line', { x1, y1, x2, y2, class: 'hung' })),
    people.map(([x1, y1, x2, y2]) => s('line', { x1, y1, x2, y2, class: 'person' })),
    paths.map(({ look: n, points }) =>
      s('polyline', {
        points: points.join(' '),
        class: 'path',
        stroke: look(n).color,
        'stroke-dasharray':
          look(n)
            .dash.map(d => 6 * d)
            .join(' ') || null,
      }),
    ),
    paths.map(({ look: n, end }) => end && s('circle', { cx: end[0], cy: end[1], r: 9, fill: look(n).color })),
  );
}
