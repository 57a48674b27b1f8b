// What a habitat is: its shape, the rows that shape has, and its floors. The scene's own, or one beside it.

import { fieldOf } from '../../state/fields.js';
import { reshape, shapeOf } from '../../state/shapes.js';
import { getAt } from '../../state/paths.js';
import { h } from '../shared/dom.js';
import { createField } from '../shared/field.js';
import { createFloors } from './floors.js';
import { createSelect } from '../shared/select.js';

// the order of the rows; what a shape does not have is left out
const ROWS = [
  ['radius_m', { label: 'Radius' }],
  ['spin_rpm', { label: 'Spin' }],
  ['tube_radius_m', { label: 'Tube' }],
  ['width_m', { label: 'Width', none: 'open' }],
  ['ceiling_m', { label: 'Ceiling', none: 'open' }],
  ['hub_radius_m', { label: 'Hub radius', none: 'none' }],
  ['outside_gravity_m_s2', { label: 'Room pulls' }],
  ['axial_thrust_m_s2', { label: 'Thrust', centred: true }],
];

/** `at`: where it is in the document; `dials`: radius and spin among the rows; answered() → its part of the answer. */
export function createHabitatRows({ store, at, dials, answered }) {
  const { shapes } = store.fields;
  const shape = createSelect({
    store,
    path: `${at}.shape`,
    label: 'Shape',
    options: () => Object.entries(shapes).map(([key, { label }]) => [key, label]),
    chosen: () => shapeOf(getAt(store.document, at)),
    choose: wanted => store.edit(draft => reshape(draft, at, wanted, store.fields)),
  });
  const inner = h('div', { class: 'rows' });
  const element = h('div', {}, shape.element, inner);
  let made = null,
    parts = [];

  function build(wanted) {
    const known = shapes[wanted].fields;
    const shown = ROWS.filter(([key]) => known.includes(key) && (dials || !['radius_m', 'spin_rpm'].includes(key)));
    parts = shown
      .filter(([key]) => fieldOf(store.fields, `${at}.${key}`))
      .map(([key, options]) => createField({ store, path: `${at}.${key}`, ...options }));
    if (known.includes('floors')) parts.push(createFloors({ store, at, answered }));
    inner.replaceChildren(...parts.map(part => part.element));
  }
  function update() {
    const habitat = getAt(store.document, at);
    if (!habitat) return;
    if (shapeOf(habitat) !== made) build((made = shapeOf(habitat)));
    shape.update();
    parts.forEach(part => part.update());
  }
  return { element, update };
}
