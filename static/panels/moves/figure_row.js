// One row without a slider: for a figure of which more is nothing other than less, such as a seed; its refusal under it.

import { fieldOf } from '../../state/fields.js';
import { h } from '../shared/dom.js';
import { createFigure } from '../shared/figure.js';
import { createRefusalSlot } from '../shared/refusals.js';

/** A whole-number field. */
export function createFigureRow({ store, path }) {
  const { label } = fieldOf(store.fields, path);
  const id = `${path}-no`;
  const keep = value => store.set(path, Math.round(value));
  const figure = createFigure({ store, path, label, step: () => 1, keep, describedBy: id });
  const slot = createRefusalSlot({ store, path, frame: figure.element });
  slot.element.id = id;
  const element = h('div', { class: 'row bare', 'data-row': path }, h('span', { class: 'lab' }, label), figure.element, slot.element);
  function update() {
    figure.update();
    slot.update();
  }
  return { element, update };
}
