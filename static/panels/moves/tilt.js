// How the lip tilts while it pours: points of time, direction and flow, straight between them.

import { h } from '../shared/dom.js';
import { createPoints } from '../shared/points.js';

const DOWN_DEG = -90;
const STEP_DEG = 30; // a new point tips the lip so much further

export function createTilt({ store, index }) {
  const at = name => `motions.${index}.${name}`;
  const body = h('tbody', {});
  const head = ['At', 'lip', 'flow'].map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word));
  const table = h(
    'table',
    { class: 'points' },
    h('thead', {}, h('tr', {}, head, h('th', { scope: 'col' }, h('span', { class: 'unseen' }, 'Remove')))),
    body,
  );
  const points = createPoints({
    store,
    path: at('tilt'),
    columns: [
      ['time_s', 'Time', 0.1],
      ['elevation_deg', 'Direction', 1],
      ['flow_ml_s', 'Flow', 0.1],
    ],
    words: 'Let the lip tilt',
    table,
    body,
    next(so_far) {
      const first = { time_s: 0, elevation_deg: store.read(at('elevation_deg')), flow_ml_s: store.read(at('flow_ml_s')) };
      const { time_s, elevation_deg, flow_ml_s } = so_far.at(-1) ?? first;
      const later_s = Math.max(0.1, Number((store.read(at('duration_s')) / 2).toFixed(1)));
      return { time_s: time_s + later_s, elevation_deg: Math.max(DOWN_DEG, elevation_deg - STEP_DEG), flow_ml_s };
    },
  });
  return { element: h('div', { class: 'group' }, table, h('p', { class: 'links' }, points.more)), update: points.update };
}
