// Figures and choices of the sentences about a path that was seen: each reads the match and writes it anew.

import { createList } from '../shared/choice.js';
import { createInline } from '../shared/inline.js';

const figureField = (label, unit, min, max, scale = 'linear') => ({ label, unit, min, max, shown: { min, max, scale }, may_be: rangeWords(min, max, unit) });
const rangeWords = (min, max, unit) => `${min.toLocaleString('en')} to ${max.toLocaleString('en')}${unit ? `\u00a0${unit}` : ''}`;
export const FIELDS = {
  frame_rate: figureField('Frames a second', '', 1, 240),
  accuracy_px: figureField('How well a mark is set', 'px', 0.1, 100, 'log'),
  accuracy_m: figureField('How well a row is known', 'm', 0.0001, 100, 'log'),
  distance_m: figureField('How long the line is', 'm', 0.01, 10_000, 'log'),
  field_of_view_deg: figureField('Field of view across', '°', 0.1, 175),
  roll_deg: figureField('Bank', '°', -360, 360),
  along_m: figureField('Along the deck', 'm', -10_000, 10_000, 'fine_low'),
  height_m: figureField('Height', 'm', -10_000, 10_000, 'fine_low'),
  axial_m: figureField('Along the axis', 'm', -10_000, 10_000, 'fine_low'),
  radius_m: figureField('Radius', 'm', 0.1, 100_000, 'log'),
  spin_rpm: figureField('Spin', 'rpm', 0, 600, 'fine_low'),
};

/** get() → the match; edit(match, live). Those made are brought up to date by update(), as far as they stand in the page. */
export function createFigures({ store, get, edit }) {
  const parts = [];
  const keep = part => (parts.push(part), part.element);
  const put = (patch, live = false) => edit({ ...get(), ...patch }, live);
  const within = (part, patch, live) => put({ [part]: { ...get()[part], ...patch } }, live);
  const wrong = field => typed => store.tell({ kind: 'told', field: null, say: `${field.label} was ${typed}; it must be ${field.may_be}.` });
  const figure = (field, read, write) => keep(createInline({ field, units: () => store.view.units, read, write, wrong: wrong(field) }));
  return {
    put,
    within,
    figure,
    /** A figure of the match itself. */
    own: name =>
      figure(
        FIELDS[name],
        () => get()[name],
        (value, live) => put({ [name]: value }, live),
      ),
    /** A figure of one of its parts. */
    of: (part, name, field = FIELDS[name]) =>
      figure(
        field,
        () => get()[part][name],
        (value, live) => within(part, { [name]: value }, live),
      ),
    list: (label, options, chosen, choose) => keep(createList({ 'aria-label': label, class: 'pick' }, { options, chosen, choose })),
    update: () => parts.forEach(part => part.element.isConnected && part.update()),
  };
}
