// Place 1: what the habitat is, besides the two dials: its shape and rows, air, decks, how the spin changes, and what is beside it.

import { tr } from '../../state/language.js';
import { heldHome } from '../../state/homes.js';
import { sizeWords } from '../../state/habitat_words.js';
import { shapeFacts } from '../../state/shapes.js';
import { showQuantity, threeFigures } from '../../state/units.js';
import { $, setAttribute, setText, icon } from '../shared/dom.js';
import { choiceRow, createChoice } from '../shared/choice.js';
import { createDecks } from './decks.js';
import { toggleHold } from '../dials.js';
import { createField } from '../shared/field.js';
import { createHabitatRows } from './habitat_rows.js';
import { createOthers } from './others.js';
import { createPoints } from '../shared/points.js';

export function createHowBig({ store }) {
  const rows = createHabitatRows({ store, at: 'habitat', dials: false, answered: () => store.answer?.habitat });
  const air = [
    createField({ store, path: 'air.pressure_kpa', label: tr('Pressure') }),
    createField({ store, path: 'air.temperature_c', label: tr('Temperature'), centred: true }),
  ];
  const airOrNot = createChoice({
    label: tr('Air'),
    options: [
      { value: false, say: tr('none') },
      { value: true, say: tr('air') },
    ],
    chosen: () => store.document.air !== null,
    choose: on =>
      store.edit(draft => {
        if (on) delete draft.air;
        else draft.air = null;
      }),
  });
  const held = () => (heldHome(store) === 0 ? store.view.hold : null);
  const hold = createChoice({
    label: tr('Hold'),
    options: [
      { value: null, say: tr('nothing') },
      { value: 'gravity', say: tr('gravity') },
      { value: 'rim_speed', say: tr('rim speed') },
      { value: 'spin', say: tr('spin') },
    ],
    chosen: held,
    choose: what => {
      if (what !== held()) toggleHold(store, what, 0);
    },
  });
  $('#size-rows').append(rows.element);
  $('#hold-row').append(hold.element);
  $('#air-row').replaceWith(choiceRow(tr('Air'), airOrNot));
  $('#air-rows').append(...air.map(r => r.element));
  $('#size-caution').prepend(icon('caution'));
  const parts = [rows, ...air, airOrNot, hold, createDecks({ store }), createRamp({ store }), createOthers({ store })];

  function update() {
    if (store.view.place !== 1) return;
    setText($('#size-words'), sizeWords(store));
    setAttribute($('#air-rows'), 'hidden', store.document.air === null);
    setAttribute($('#deck-part'), 'hidden', !shapeFacts(store.fields, store.document.habitat).fields.includes('decks'));
    for (const part of parts) part.update();
  }
  for (const topic of ['document', 'answer', 'view', 'notice']) store.on(topic, update);
  update();
}

/** 56.0 m, 3.00 rpm */
export function sizeAnswer({ document, view }) {
  const { radius_m: radius, spin_rpm: spin } = document.habitat;
  if (typeof radius !== 'number' || typeof spin !== 'number') return '';
  return `${showQuantity(radius, 'm', view.units)}, ${threeFigures(spin)}\u00a0rpm`;
}

// How the spin changes: points of time and spin, straight between them.

const SHARE = 0.5; // of what is shown: how long after the last point a new one stands

function createRamp({ store }) {
  const table = $('#ramp');
  const points = createPoints({
    store,
    path: 'habitat.spin_ramp',
    columns: [
      ['time_s', tr('Time'), 0.1],
      ['spin_rpm', tr('Spin'), 0.01],
    ],
    words: tr('Let the spin change'),
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
