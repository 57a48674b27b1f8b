// What a habitat is: its shape, the rows that shape has, and its floors. The scene's own, or one beside it.

import { inSigns, tr, trLater } from '../../state/language.js';
import { fieldOf, getAt } from '../../state/fields.js';
import { reshape, shapeOf, floorName, keepFloors } from '../../state/shapes.js';
import { h, setAttribute, setText, icon } from '../shared/dom.js';
import { createField } from '../shared/field.js';
import { createSelect, createSwitch } from '../shared/choice.js';
import { showQuantity, threeFigures } from '../../state/units.js';
import { createEditedName } from '../shared/figure.js';
import { createFold } from '../shared/fold.js';

// the order of the rows; what a shape does not have is left out
const ROWS = [
  ['radius_m', { label: trLater('Radius') }],
  ['spin_rpm', { label: trLater('Spin') }],
  ['tube_radius_m', { label: trLater('Tube') }],
  ['width_m', { label: trLater('Width'), none: trLater('open') }],
  ['ceiling_m', { label: trLater('Ceiling'), none: trLater('open') }],
  ['hub_radius_m', { label: trLater('Hub radius'), none: trLater('none') }],
  ['outside_gravity_m_s2', { label: trLater('Gravity of the room') }],
  ['axial_thrust_m_s2', { label: trLater('Thrust'), centred: true }],
];

/** `at`: where it is in the document; `dials`: radius and spin among the rows; answered() → its part of the answer. */
export function createHabitatRows({ store, at, dials, answered }) {
  const { shapes } = store.fields;
  const shape = createSelect({
    store,
    path: `${at}.shape`,
    label: tr('Shape'),
    options: () => Object.entries(shapes).map(([key, { label }]) => [key, label]),
    chosen: () => shapeOf(getAt(store.document, at)),
    choose: wanted => store.edit(draft => reshape(draft, at, wanted, store.fields)),
  });
  const inner = h('div', { class: 'rows' });
  const element = h('div', {}, shape.element, inner);
  let builtFor = null,
    parts = [];

  function build(wanted) {
    const known = shapes[wanted].fields;
    const shown = ROWS.filter(([key]) => known.includes(key) && (dials || !['radius_m', 'spin_rpm'].includes(key)));
    parts = shown
      .filter(([key]) => fieldOf(store.fields, `${at}.${key}`))
      .map(([key, options]) => createField({ store, path: `${at}.${key}`, ...options, label: tr(options.label), none: options.none && tr(options.none) }));
    if (known.includes('floors')) parts.push(createFloors({ store, at, answered }));
    inner.replaceChildren(...parts.map(part => part.element));
  }
  function update() {
    const habitat = getAt(store.document, at);
    if (!habitat) return;
    if (shapeOf(habitat) !== builtFor) build((builtFor = shapeOf(habitat)));
    shape.update();
    parts.forEach(part => part.update());
  }
  return { element, update };
}

// The flat floors of pods, cabins and craft: each with what it weighs and how far "down" leans, its figures folded away.

const MOST = 12;

/** `at`: where the habitat is in the document; answered() → the habitat's part of the answer. */
function createFloors({ store, at, answered }) {
  const path = `${at}.floors`;
  const list = h('div', { class: 'floors' });
  const more = h('button', { type: 'button', class: 'link', onclick: add }, tr('Add a floor'));
  const element = h('section', {}, h('h3', { class: 'third' }, tr('Floors')), list, h('p', { class: 'links' }, more));
  let rows = [];

  const floors = () => getAt(store.document, path) ?? [];

  function add() {
    store.edit(draft => {
      const all = getAt(draft, path);
      all.push({ ...structuredClone(all.at(-1)), name: tr('Floor {number}', { number: all.length + 1 }), azimuth_deg: null });
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
  const floorAnswer = () => answered()?.floors?.[index];
  const name = createEditedName({
    label: tr('Name of floor {number}', { number: index + 1 }),
    read: () => floorName(floor(), index),
    write: typed => store.set(`${path}.name`, typed),
  });
  const gone = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Remove floor {number}', { number: index + 1 }), onclick: () => remove(index) },
    icon('close'),
  );
  const words = h('p', { class: 'small floor-words' });
  const fold = createFold({
    words: () => sizeWords(store, path),
    make: () => [
      ...(index ? [shared('radius_m', tr('At the habitat’s radius'), tr('Radius')), shared('azimuth_deg', tr('Evenly spaced'), tr('Azimuth'))] : []),
      createField({ store, path: `${path}.length_m`, label: tr('Length') }),
      createField({ store, path: `${path}.width_m`, label: tr('Width') }),
      createField({ store, path: `${path}.ceiling_m`, label: tr('Ceiling'), none: tr('open') }),
    ],
  });

  // a figure of its own, or the habitat's
  function shared(key, label, short) {
    const at = `${path}.${key}`;
    const own = () => store.read(at) !== null;
    const share = createSwitch({ label, on: () => !own(), turn: on => store.set(at, on ? null : (floorAnswer()?.[key] ?? 0)) });
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
    element: h('article', { class: 'floor' }, h('header', {}, h('h4', {}, name.element), gone), words, h('p', { class: 'links' }, fold.button), fold.element),
    update(count) {
      name.update();
      setAttribute(gone, 'hidden', count < 2);
      setText(words, floorWords(floorAnswer()));
      fold.update();
    },
  };
}

/** '0.429 g in the middle; down leans 14.0° at the ends.' */
function floorWords(floor) {
  if (!floor) return '';
  const lean = Math.max(0, ...(floor.levels ?? []).map(level => level.felt_lean_deg));
  return tr('{gravity} in the middle; “down” leans {lean}° at the ends.', { gravity: `${threeFigures(floor.felt_g)}\u00a0g`, lean: inSigns(lean.toFixed(1)) });
}

function sizeWords(store, path) {
  const read = key => store.read(`${path}.${key}`),
    show = value => showQuantity(value, 'm', store.view.units);
  const ceiling = read('ceiling_m');
  const sides = { length: show(read('length_m')), width: show(read('width_m')) };
  return ceiling === null ? tr('{length} by {width}, no ceiling', sides) : tr('{length} by {width}, ceiling {ceiling}', { ...sides, ceiling: show(ceiling) });
}
