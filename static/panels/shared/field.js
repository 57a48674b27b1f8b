// One row: label, slider, figure, unit; the refusal of its field under it.

import { tr } from '../../state/language.js';
import { fieldOf, shownOf } from '../../state/fields.js';
import { clamp, makeScale } from '../../state/scale.js';
import { formatFigure, fromShown, shownStep, shownUnit, toShown, withUnit } from '../../state/units.js';
import { h } from './dom.js';
import { createFigure } from './figure.js';
import { createFieldError } from './field_error.js';
import { createSliderTrack } from './slider_track.js';

let count = 0;

/** `none`: the word shown for null ('open'); `label` where the row's own word is shorter than the field's; `whole`: no parts
 *  of one; `put` where a value is written otherwise than at its path. */
export function createField({
  store,
  path,
  label,
  none = null,
  ticks = false,
  inset = 5,
  centred = false,
  locked = () => false,
  lockSign = null,
  solve = null,
  scale: given = null,
  put = (value, live) => store.set(path, value, { live }),
}) {
  const field = fieldOf(store.fields, path);
  const { whole } = field; // no parts of one
  const scale = whole ? wholeSteps(makeScale(shownOf(field))) : (given ?? makeScale(shownOf(field)));
  const words = label ?? field.label;
  const id = `field-${(count += 1)}`;
  const read = () => {
    const value = store.read(path);
    return typeof value === 'number' ? value : null;
  };

  const track = createSliderTrack({
    label: words,
    name: path,
    scale,
    inset,
    ticks,
    centred,
    locked,
    value: read,
    say,
    unit: {
      to: value => toShown(value, field.unit ?? '', store.view.units),
      from: value => fromShown(value, field.unit ?? '', store.view.units),
      step: step => shownStep(step, field.unit ?? '', store.view.units),
      name: () => shownUnit(field.unit ?? '', store.view.units),
    },
    write: (value, live) => put(value === null ? null : clamp(whole ? Math.round(value) : value, field.min, field.max), live),
  });
  const keep = value => put(whole && value !== null ? Math.round(value) : value, false);
  const figure = createFigure({ store, path, label: words, step: scale.step, none, solve, keep, describedBy: `${id}-no` });
  const name = h('span', { class: 'lab', title: tr('Double-click: the default'), ondblclick: toDefault }, h('span', {}, words), lockSign);
  const slot = createFieldError({ store, path, frame: figure.element });
  slot.element.id = `${id}-no`;
  const element = h('div', { class: `row${ticks ? ' dial' : ''}`, 'data-row': path }, name, track.element, figure.element, track.vernier, slot.element);

  function say(value) {
    if (value === null) return none ?? tr('not set');
    const { units } = store.view,
      unit = field.unit ?? '';
    return withUnit(formatFigure(toShown(value, unit, units), shownStep(scale.step(value), unit, units)), shownUnit(unit, units));
  }

  function toDefault() {
    if (!field.required && field.default !== undefined) store.set(path, field.default);
    else if (store.answer) store.tell({ kind: 'told', say: tr('{field} has no default: every scene sets it.', { field: words }) });
  }

  function update() {
    track.update();
    figure.update();
    slot.update();
  }
  return { element, update, track, figure };
}

/** A scale whose fine step is one. */
export function wholeSteps(scale) {
  return { ...scale, step: () => 1 };
}
