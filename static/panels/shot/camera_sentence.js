// A camera by hand, as a sentence whose figures are fields: where it stands, what it looks at, how it banks, and its lens.

import { fieldOf } from '../../state/fields.js';
import { h, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { filmBack } from '../../state/camera_request.js';
import { createInline } from '../shared/inline.js';

const PLACES = [
  ['along_m', ' along the deck, '],
  ['height_m', ' up, '],
  ['axial_m', ' along the axis'],
];

/** get() → what is typed; put(typed). */
export function createCameraSentence({ store, get, put }) {
  const parts = [];
  const ofCamera = path => fieldOf(store.fields, `camera.${path}`);
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
      value => put({ ...get(), film_back: filmBack(get().film_back, name, value) }),
    );
  const place = (part, word) =>
    PLACES.flatMap(([name, words]) => {
      const field = ofCamera(`rows.*.${part}.${name}`);
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
    bank = own(ofCamera('rows.*.roll_deg'), 'roll_deg', degrees),
    lens = own(ofCamera('rows.*.focal_length_mm'), 'focal_length_mm'),
    field = own(ofCamera('rows.*.field_of_view_deg'), 'field_of_view_deg', degrees),
    wide = film(ofCamera('film_back.width_mm'), 'width_mm'),
    high = film(ofCamera('film_back.height_mm'), 'height_mm');
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
