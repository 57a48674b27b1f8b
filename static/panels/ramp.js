// How the spin changes: points of time and spin, straight between them.

import { $, h, setAttribute, setText } from './dom.js';
import { createFigure } from './figure.js';
import { icon } from './icons.js';

const SHARE = 0.5; // of what is shown: how long after the last point a new one stands

export function createRamp({ store }) {
  const table = $('#ramp'),
    body = $('tbody', table);
  let rows = [];
  const more = h('button', { type: 'button', class: 'link', onclick: add });
  $('#ramp-links').append(more);

  const points = () => store.read('habitat.spin_ramp') ?? [];

  function add() {
    const last = points().at(-1) ?? { time_s: 0, spin_rpm: store.read('habitat.spin_rpm') };
    store.edit(draft => {
      draft.habitat.spin_ramp = [...points(), { time_s: last.time_s + later_s(), spin_rpm: last.spin_rpm / 2 }];
    });
  }
  // inside what is shown, and to a spin that shows
  function later_s() {
    const { count, fps, samples_per_frame: per } = store.answer?.grid ?? { count: 480, fps: [24, 1], samples_per_frame: 2 };
    return Math.max(0.1, Math.round(((SHARE * count * fps[1]) / (fps[0] * per)) * 10) / 10);
  }
  function remove(index) {
    store.edit(draft => {
      draft.habitat.spin_ramp.splice(index, 1);
    });
  }
  function createRow(index) {
    const path = `habitat.spin_ramp.${index}`;
    const figures = [
      ['time_s', 'Time', 0.1],
      ['spin_rpm', 'Spin', 0.01],
    ].map(([name, label, step]) =>
      createFigure({ store, path: `${path}.${name}`, label: `${label} of point ${index + 1}`, step: () => step }),
    );
    const element = h(
      'tr',
      {},
      h('td', {}, figures[0].element),
      h('td', { class: 'r' }, figures[1].element),
      h(
        'td',
        { class: 'r' },
        h(
          'button',
          { type: 'button', class: 'icon-button', 'aria-label': `Remove point ${index + 1}`, onclick: () => remove(index) },
          icon('close'),
        ),
      ),
    );
    return { element, update: () => figures.forEach(figure => figure.update()) };
  }
  function update() {
    if (rows.length !== points().length) {
      rows = points().map((_, index) => createRow(index));
      body.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(table, 'hidden', rows.length === 0);
    setText(more, rows.length === 0 ? 'Let the spin change' : 'Add a point');
    rows.forEach(row => row.update());
  }
  return { update };
}
