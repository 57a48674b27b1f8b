// How the spin changes: points of time and spin, straight between them.

import { $ } from '../shared/dom.js';
import { createPoints } from '../shared/points.js';

const SHARE = 0.5; // of what is shown: how long after the last point a new one stands

export function createRamp({ store }) {
  const table = $('#ramp');
  const points = createPoints({
    store,
    path: 'habitat.spin_ramp',
    columns: [
      ['time_s', 'Time', 0.1],
      ['spin_rpm', 'Spin', 0.01],
    ],
    words: 'Let the spin change',
    table,
    body: $('tbody', table),
    next(so_far) {
      const last = so_far.at(-1) ?? { time_s: 0, spin_rpm: store.read('habitat.spin_rpm') };
      return { time_s: last.time_s + later_s(), spin_rpm: last.spin_rpm / 2 };
    },
  });
  $('#ramp-links').append(points.more);

  // inside what is shown, and to a spin that shows
  function later_s() {
    const { count, fps, samples_per_frame: per } = store.answer?.grid ?? { count: 480, fps: [24, 1], samples_per_frame: 2 };
    return Math.max(0.1, Math.round(((SHARE * count * fps[1]) / (fps[0] * per)) * 10) / 10);
  }
  return { update: points.update };
}
