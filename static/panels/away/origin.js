// What positions are counted from: the axis, the ground under the release, or a place by its own figures.

import { parseFigure, withUnit } from '../../state/units.js';
import { h } from '../shared/dom.js';
import { inlinePick, inlineType, tight } from './controls.js';
import { outside } from '../shared/figure.js';

const WORDS = [
  ['axis', 'the axis of spin'],
  ['release', 'the ground under the release'],
  ['place', 'a place'],
];
const FIRST = { along_m: 0, height_m: 0, axial_m: 0 };
const SAID = { along_m: ' along, ', height_m: ' up, ', axial_m: ' along the axis.' };

export function createOrigin({ fields, read, put, refuse }) {
  const isPlace = () => typeof read('origin') === 'object';
  const kind = inlinePick({
    label: fields.origin.label,
    options: () => WORDS,
    chosen: () => (isPlace() ? 'place' : read('origin')),
    choose: value => put('origin', value === 'place' ? FIRST : value),
  });
  const figures = Object.keys(FIRST).map(name =>
    inlineType({
      label: `Origin: ${fields[`origin.${name}`].label}`,
      text: () => withUnit(String(isPlace() ? read('origin')[name] : 0), fields[`origin.${name}`].unit),
      wide: 4,
      keep(typed) {
        const field = fields[`origin.${name}`];
        const { value } = parseFigure(typed, { unit: field.unit });
        if (value === undefined || outside(field, value)) refuse('origin', `${field.label} was ${typed}; it may be ${field.may_be}.`);
        else put('origin', { ...read('origin'), [name]: value });
      },
    }),
  );
  const stop = h('span', {}, '.');
  const place = h('span', {}, ', ', Object.values(SAID).flatMap((words, k) => [figures[k].element, words])); // prettier-ignore
  const element = h('span', {}, tight(kind.element, stop), place);
  function update() {
    place.hidden = !isPlace();
    stop.hidden = isPlace();
    kind.update();
    for (const figure of figures) figure.update();
  }
  return { element, update };
}
