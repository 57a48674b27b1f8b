// Figures and choices of the sentences about a path that was seen: each reads the match and writes it anew.

import { tr } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { createList } from '../shared/choice.js';
import { createInline } from '../shared/inline.js';

// a tenth of a metre or a degree for each step: the grid is laid on a floor with them
const FINE_M = { min: -20, max: 20, scale: 'linear' },
  FINE_DEG = { min: -45, max: 45, scale: 'linear' };

/** Of the server's fields those that have a figure here. */
function fieldsOf({ fields }) {
  const field = (path, rest = {}) => ({ ...fieldOf(fields, `match.${path}`), ...rest });
  const camera = (path, rest) => field(`picture.camera.${path}`, rest);
  const place = name => camera(`position.${name}`, { shown: FINE_M });
  return {
    frame_rate: field('picture.fps', { unit: '', may_be: tr('1 to 240'), shown: { min: 1, max: 240, scale: 'linear' } }),
    accuracy_px: field('accuracy_px', { label: tr('How well a mark is set') }),
    accuracy_m: field('accuracy_m', { label: tr('How well a row is known') }),
    distance_m: field('picture.plane.distance_m'),
    field_of_view_deg: camera('field_of_view_deg', { shown: FINE_DEG }),
    roll_deg: camera('roll_deg', { shown: FINE_DEG }),
    along_m: place('along_m'),
    height_m: place('height_m'),
    axial_m: place('axial_m'),
    radius_m: field('known.radius_m'),
    spin_rpm: field('known.spin_rpm'),
  };
}

/** get() → the match; edit(match, live). Those made are brought up to date by update(), as far as they stand in the page. */
export function createFigures({ store, get, edit }) {
  const fields = fieldsOf(store);
  const parts = [];
  const keep = part => (parts.push(part), part.element);
  const put = (patch, live = false) => edit({ ...get(), ...patch }, live);
  const within = (part, patch, live) => put({ [part]: { ...get()[part], ...patch } }, live);
  const wrong = field => typed =>
    store.tell({ kind: 'told', field: null, say: tr('{label} was {typed}; it must be {may_be}.', { label: field.label, typed, may_be: field.may_be }) });
  const figure = (field, read, write) => keep(createInline({ field, units: () => store.view.units, read, write, wrong: wrong(field) }));
  return {
    fields,
    put,
    within,
    figure,
    /** A figure of the match itself. */
    own: name =>
      figure(
        fields[name],
        () => get()[name],
        (value, live) => put({ [name]: value }, live),
      ),
    /** A figure of one of its parts. */
    of: (part, name, field = fields[name]) =>
      figure(
        field,
        () => get()[part][name],
        (value, live) => within(part, { [name]: value }, live),
      ),
    list: (label, options, chosen, choose) => keep(createList({ 'aria-label': label, class: 'pick' }, { options, chosen, choose })),
    update: () => parts.forEach(part => part.element.isConnected && part.update()),
  };
}
