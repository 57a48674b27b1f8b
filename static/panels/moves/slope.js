// The ramp a ball rolls on: none, or its slope, the way it rises, length and width.

import { h, setAttribute } from '../shared/dom.js';
import { createSwitch } from '../shared/choice.js';
import { createField } from '../shared/field.js';
import { createHeadingRow } from './rose.js';

const FIRST_SLOPE_DEG = 10;

export function createSlope({ store, path }) {
  const on = () => (store.read(path) ?? null) !== null;
  const ramp = createSwitch({
    label: 'On a ramp',
    on,
    turn: wanted => store.set(path, wanted ? { slope_deg: FIRST_SLOPE_DEG, heading_deg: 0 } : null),
  });
  const row = (name, label) => createField({ store, path: `${path}.${name}`, label });
  const rows = [
    row('slope_deg', 'Slope'),
    createHeadingRow({ store, path: `${path}.heading_deg`, label: 'Rises' }),
    row('length_m', 'Length'),
    row('width_m', 'Width'),
  ];
  const inner = h(
    'div',
    {},
    rows.map(part => part.element),
  );
  return {
    element: h('div', { class: 'group' }, ramp.element, inner),
    update() {
      ramp.update();
      setAttribute(inner, 'hidden', !on());
      if (on()) rows.forEach(part => part.update());
    },
  };
}
