// Place 1: what the habitat is, besides the two dials: its rows, air, decks and how the spin changes.

import { showQuantity, threeFigures } from '../state/units.js';
import { $, h, setAttribute, setText } from './dom.js';
import { choiceRow, createChoice } from './choice.js';
import { createDecks } from './decks.js';
import { toggleHold } from './dials.js';
import { createField } from './field.js';
import { icon } from './icons.js';
import { createRamp } from './ramp.js';

export function createHowBig({ store }) {
  const row = (name, none, options) => createField({ store, path: `habitat.${name}`, none, ...options });
  const rows = [
    row('width_m', 'open', { label: 'Width' }),
    row('ceiling_m', 'open', { label: 'Ceiling' }),
    row('hub_radius_m', 'none', { label: 'Hub radius' }),
    row('axial_thrust_m_s2', null, { label: 'Thrust', centred: true }),
  ];
  const air = [
    createField({ store, path: 'air.pressure_kpa', label: 'Pressure' }),
    createField({ store, path: 'air.temperature_c', label: 'Temperature', centred: true }),
  ];
  const airOrNot = createChoice({
    label: 'Air',
    options: [
      { value: false, say: 'none' },
      { value: true, say: 'air' },
    ],
    chosen: () => store.document.air !== null,
    choose: on =>
      store.edit(draft => {
        if (on) delete draft.air;
        else draft.air = null;
      }),
  });
  const hold = createChoice({
    label: 'Hold',
    options: [
      { value: null, say: 'nothing' },
      { value: 'gravity', say: 'gravity' },
      { value: 'rim_speed', say: 'rim speed' },
      { value: 'spin', say: 'spin' },
    ],
    chosen: () => store.view.hold,
    choose: what => {
      if (what !== store.view.hold) toggleHold(store, what);
    },
  });
  $('#size-rows').append(...rows.map(r => r.element));
  $('#hold-row').append(hold.element);
  $('#air-row').replaceWith(choiceRow('Air', airOrNot));
  $('#air-rows').append(...air.map(r => r.element));
  $('#size-caution').prepend(icon('caution'));
  const tables = [createDecks({ store }), createRamp({ store })];

  function update() {
    if (store.view.place !== 1) return;
    setText($('#size-words'), sizeWords(store));
    setAttribute($('#air-rows'), 'hidden', store.document.air === null);
    for (const part of [...rows, ...air, airOrNot, hold, ...tables]) part.update();
  }
  for (const topic of ['document', 'answer', 'view', 'notice']) store.on(topic, update);
  update();
}

function sizeWords({ answer, view }) {
  if (!answer) return '';
  const { habitat, scene } = answer,
    show = (v, unit) => showQuantity(v, unit, view.units);
  if (!habitat.period_s)
    return `A drum of ${show(scene.habitat.radius_m, 'm')} that does not turn gives no gravity: what is let go stays.`;
  const start = scene.habitat.spin_ramp?.length ? 'At the start, a' : 'A';
  return `${start} deck at ${show(scene.habitat.radius_m, 'm')} gives ${threeFigures(habitat.deck_gravity_g)}\u00a0g; the rim moves at ${show(habitat.rim_speed_m_s, 'm/s')} and a turn takes ${threeFigures(habitat.period_s)}\u00a0s. Climb to the hub and it fades evenly to nothing.`;
}

/** 56.0 m, 3.00 rpm */
export function sizeAnswer({ document, view }) {
  const { radius_m: radius, spin_rpm: spin } = document.habitat;
  if (typeof radius !== 'number' || typeof spin !== 'number') return '';
  return `${showQuantity(radius, 'm', view.units)}, ${threeFigures(spin)}\u00a0rpm`;
}
