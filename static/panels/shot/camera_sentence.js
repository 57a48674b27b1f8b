// A camera by hand, as a sentence whose figures are fields: where it stands, what it looks at, how it banks, and its lens.

import { fieldOf } from '../../state/fields.js';
import { h, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { createInline } from '../shared/inline.js';

const ranged = (label, unit, min, max, scale, may_be) => ({ label, unit, min, max, shown: { min, max, scale }, may_be });
const LENS = ranged('Focal length', 'mm', 0.1, 10_000, 'log', '0.1 to 10,000\u00a0mm'),
  FIELD = ranged('Field of view across', '°', 0.1, 175, 'linear', '0.1 to 175°'),
  WIDE = ranged('Film width', 'mm', 0.1, 1000, 'log', '0.1 to 1,000\u00a0mm'),
  HIGH = ranged('Film height', 'mm', 0.1, 1000, 'log', '0.1 to 1,000\u00a0mm'),
  BANK = ranged('Bank', '°', -360, 360, 'linear', '−360 to 360°');
const PLACES = [
  ['along_m', ' along the deck, '],
  ['height_m', ' up, '],
  ['axial_m', ' along the axis'],
];

/** get() → what is typed; put(typed). */
export function createCameraSentence({ store, get, put }) {
  const parts = [];
  const figure = (field, read, write, words = null) => {
    const wrong = typed => store.tell({ kind: 'told', field: null, say: `${field.label} was ${typed}; it must be ${field.may_be}.` });
    const one = createInline({ field, units: () => store.view.units, read, write, wrong, words });
    parts.push(one);
    return one.element;
  };
  const own = (field, name, words = null) =>
    figure(
      field,
      () => get()[name],
      value => put({ ...get(), [name]: value }),
      words,
    );
  const film = (field, name) =>
    figure(
      field,
      () => get().film_back[name],
      value => put({ ...get(), film_back: { ...get().film_back, [name]: value } }),
    );
  const place = (part, word) =>
    PLACES.flatMap(([name, words]) => {
      const field = fieldOf(store.fields, `motions.*.place.${name}`);
      const element = figure(
        { ...field, label: `${word}, ${field.label.toLowerCase()}` },
        () => get()[part][name],
        value => put({ ...get(), [part]: { ...get()[part], [name]: value } }),
      );
      return [element, words];
    });
  const list = (label, options, name) => {
    const one = createList(
      { 'aria-label': label, class: 'pick' },
      { options: () => options, chosen: () => get()[name], choose: value => put({ ...get(), [name]: value }) },
    );
    parts.push(one);
    return one.element;
  };
  const degrees = value => `${Number(value.toFixed(1))}°`;
  const view = list(
    'The camera',
    [
      ['aboard', 'It rides with the deck'],
      ['outside', 'It stands among the stars'],
    ],
    'view',
  );
  const by = list(
    'Its lens is told by',
    [
      ['lens', 'a lens of'],
      ['field', 'a field of view of'],
    ],
    'by',
  );
  const from = place('place', 'Camera'),
    at = place('look_at', 'Aim'),
    bank = own(BANK, 'roll_deg', degrees),
    lens = own(LENS, 'focal_length_mm'),
    field = own(FIELD, 'field_of_view_deg', degrees),
    wide = film(WIDE, 'width_mm'),
    high = film(HIGH, 'height_mm');
  const element = h('p', { class: 'words aim-sentence' });
  let builtFor = null;

  function update() {
    if (builtFor !== get().by) {
      builtFor = get().by;
      setChildren(
        element,
        view,
        ', at ',
        ...from,
        ', looks at ',
        ...at,
        ', and banks ',
        bank,
        '. It has ',
        by,
        ' ',
        builtFor === 'lens' ? lens : field,
        builtFor === 'lens' ? ', its film is ' : ' across, its picture is ',
        wide,
        ' by ',
        high,
        '.',
      );
    }
    parts.forEach(part => part.element.isConnected && part.update());
  }
  return { element, update };
}
