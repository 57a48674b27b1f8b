// The flat floors of pods, cabins and craft: each with what it weighs and how far "down" leans, its figures folded away.

import { floorName, keepFloors } from '../../state/shapes.js';
import { getAt } from '../../state/paths.js';
import { showQuantity, threeFigures } from '../../state/units.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { createSwitch } from '../shared/choice.js';
import { createEditedName } from '../shared/edited_name.js';
import { createField } from '../shared/field.js';
import { createFold } from '../shared/fold.js';
import { icon } from '../shared/icons.js';

const MOST = 12;

/** `at`: where the habitat is in the document; answered() → the habitat's part of the answer. */
export function createFloors({ store, at, answered }) {
  const path = `${at}.floors`;
  const list = h('div', { class: 'floors' });
  const more = h('button', { type: 'button', class: 'link', onclick: add }, 'Add a floor');
  const element = h('section', {}, h('h3', { class: 'third' }, 'Floors'), list, h('p', { class: 'links' }, more));
  let rows = [];

  const floors = () => getAt(store.document, path) ?? [];

  function add() {
    store.edit(draft => {
      const all = getAt(draft, path);
      all.push({ ...structuredClone(all.at(-1)), name: `Floor ${all.length + 1}`, azimuth_deg: null });
    });
  }
  function remove(index) {
    store.edit(draft => {
      getAt(draft, path).splice(index, 1);
      if (index === 0) Object.assign(getAt(draft, path)[0], { radius_m: null, azimuth_deg: null });
      if (at === 'habitat') keepFloors(draft, floor => (floor === index ? 0 : floor > index ? floor - 1 : floor));
    });
  }
  function update() {
    if (rows.length !== floors().length) {
      rows = floors().map((_, index) => createFloor({ store, path: `${path}.${index}`, index, answered, remove }));
      list.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(more, 'hidden', rows.length >= MOST);
    rows.forEach(row => row.update(rows.length));
  }
  return { element, update };
}

function createFloor({ store, path, index, answered, remove }) {
  const floor = () => getAt(store.document, path);
  const here = () => answered()?.floors?.[index];
  const name = createEditedName({
    label: `Name of floor ${index + 1}`,
    read: () => floorName(floor(), index),
    write: typed => store.set(`${path}.name`, typed),
  });
  const gone = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': `Remove floor ${index + 1}`, onclick: () => remove(index) },
    icon('close'),
  );
  const words = h('p', { class: 'small floor-words' });
  const fold = createFold({
    words: () => sizeWords(store, path),
    make: () => [
      ...(index ? [shared('radius_m', 'At the habitat’s radius', 'Radius'), shared('azimuth_deg', 'Evenly spaced', 'Azimuth')] : []),
      createField({ store, path: `${path}.length_m`, label: 'Length' }),
      createField({ store, path: `${path}.width_m`, label: 'Width' }),
      createField({ store, path: `${path}.ceiling_m`, label: 'Ceiling', none: 'open' }),
    ],
  });

  // a figure of its own, or the habitat's
  function shared(key, label, short) {
    const at = `${path}.${key}`;
    const own = () => store.read(at) !== null;
    const share = createSwitch({ label, on: () => !own(), turn: on => store.set(at, on ? null : (here()?.[key] ?? 0)) });
    const row = createField({ store, path: at, label: short, centred: key === 'azimuth_deg' });
    return {
      element: h('div', {}, share.element, row.element),
      update() {
        share.update();
        setAttribute(row.element, 'hidden', !own());
        if (own()) row.update();
      },
    };
  }
  return {
    element: h(
      'article',
      { class: 'floor' },
      h('header', {}, h('h4', {}, name.element), gone),
      words,
      h('p', { class: 'links' }, fold.button),
      fold.element,
    ),
    update(count) {
      name.update();
      setAttribute(gone, 'hidden', count < 2);
      setText(words, floorWords(here()));
      fold.update();
    },
  };
}

/** '0.429 g in the middle; down leans 14.0° at the ends.' */
export function floorWords(floor) {
  if (!floor) return '';
  const lean = Math.max(0, ...(floor.levels ?? []).map(level => Math.abs(level.lean_deg)));
  return `${threeFigures(floor.gravity_g)}\u00a0g in the middle; “down” leans ${lean.toFixed(1)}° at the ends.`;
}

function sizeWords(store, path) {
  const read = key => store.read(`${path}.${key}`),
    show = value => showQuantity(value, 'm', store.view.units);
  const ceiling = read('ceiling_m');
  return `${show(read('length_m'))} by ${show(read('width_m'))}, ${ceiling === null ? 'no ceiling' : `ceiling ${show(ceiling)}`}`;
}
