// A camera by hand, as a sentence whose figures are fields: where it stands, what it looks at, how it banks, and its lens.

import { inSentence, inSigns, tr, trParts } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { h, setChildren } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { filmBack } from '../../state/camera_request.js';
import { createInline } from '../shared/inline.js';

const PLACES = ['along_m', 'height_m', 'axial_m'];

/** get() → what is typed; put(typed). */
export function createCameraSentence({ store, get, put }) {
  const parts = [];
  const ofCamera = path => fieldOf(store.fields, `camera.${path}`);
  const figure = (field, read, write, words = null) => {
    const wrong = typed =>
      store.tell({ kind: 'told', field: null, say: tr('{label} was {typed}; it must be {may_be}.', { label: field.label, typed, may_be: field.may_be }) });
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
  const place = (part, labelled) =>
    PLACES.map(name => {
      const field = ofCamera(`rows.*.${part}.${name}`);
      return figure(
        { ...field, label: labelled(inSentence(field.label)) },
        () => get()[part][name],
        value => put({ ...get(), [part]: { ...get()[part], [name]: value } }),
      );
    });
  const list = (label, options, name) => {
    const one = createList(
      { 'aria-label': label, class: 'pick' },
      { options: () => options, chosen: () => get()[name], choose: value => put({ ...get(), [name]: value }) },
    );
    parts.push(one);
    return one.element;
  };
  const degrees = value => inSigns(`${Number(value.toFixed(1))}°`);
  const view = list(
    tr('The camera'),
    [
      ['aboard', tr('It rides with the deck')],
      ['outside', tr('It stands among the stars')],
    ],
    'view',
  );
  const by = list(
    tr('Its lens is told by'),
    [
      ['lens', tr('a lens of')],
      ['field', tr('a field of view of')],
    ],
    'by',
  );
  const [along, up, axial] = place('place', coordinate => tr('Camera, {coordinate}', { coordinate })),
    [aim_along, aim_up, aim_axial] = place('look_at', coordinate => tr('Aim, {coordinate}', { coordinate })),
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
        trParts(
          '{view}, at {along} along the deck, {up} up, {axial} along the axis, looks at {aim_along} along the deck, {aim_up} up, {aim_axial} along the axis, and banks {bank}.',
          { view, along, up, axial, aim_along, aim_up, aim_axial, bank },
        ),
        ' ',
        builtFor === 'lens'
          ? trParts('It has {by} {lens}, its film is {wide} by {high}.', { by, lens, wide, high })
          : trParts('It has {by} {field} across, its picture is {wide} by {high}.', { by, field, wide, high }),
      );
    }
    parts.forEach(part => part.element.isConnected && part.update());
  }
  return { element, update };
}
