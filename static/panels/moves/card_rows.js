// The rows of the chosen motion: its main figures, and groups that open for body, place and time, and a moving thrower.

import { fieldOf } from '../../state/fields.js';
import { floorName, groundOf } from '../../state/shapes.js';
import { axisOf, axisWords } from '../../state/motions.js';
import { formatFigure, showQuantity } from '../../state/units.js';
import { countWords, headingWords, timesWords } from '../../state/words.js';
import { h } from '../shared/dom.js';
import { createSpinAxis } from './spin_axis.js';
import { bodyWords, createBody } from './body.js';
import { createChoiceField, createSelect } from '../shared/choice.js';
import { createCup, createLiquid, createTilt } from './pour.js';
import { createField } from '../shared/field.js';
import { createFold } from '../shared/fold.js';
import { createHeadingRow, createSlope } from './rose.js';
import { createFigure } from '../shared/figure.js';
import { createFieldError } from '../shared/field_error.js';

const ON_A_DECK = { 'place.along_m': 'Along', 'place.axial_m': 'Across' };
const ON_A_TABLE = { 'place.along_m': 'Round', 'place.axial_m': 'Outward' };

export function createCardRows({ store, index, kind }) {
  const { fields, rows, more, carried } = store.fields.kinds[kind];
  const has = name => fields.includes(name);
  const path = name => `motions.${index}.${name}`;
  const motion = () => store.document.motions[index];
  const ground = groundOf(store.fields, store.document.habitat);
  const row = (name, label = null) => {
    const { min, nullable, ...field } = fieldOf(store.fields, path(name));
    if (name.endsWith('heading_deg')) return createHeadingRow({ store, path: path(name), ...(label && { label }) });
    if (field.kind === 'choice') return createChoiceField({ store, path: path(name), label: label ?? field.label });
    if (name === 'place.floor') return createFloorChoice(store, path(name));
    if (name === 'seed') return createFigureRow({ store, path: path(name) });
    return createField({ store, path: path(name), label: label ?? field.label, centred: min < 0, none: nullable ? 'none' : null });
  };
  const rowsOf = labels => Object.entries(labels).map(([name, label]) => row(name, label));

  const main = rowsOf(rows);
  const placed = { 'place.floor': null, ...(ground.level ? ON_A_TABLE : ON_A_DECK), start_s: null };
  const groups = [
    has('body') &&
      createFold({
        words: () => `Body: ${bodyWords(store, store.read(path('body')))}`,
        make: () => [createBody({ store, path: path('body') })],
      }),
    has('bounces') && createFold({ words: spinWords, make: spinRows }),
    has('ramp') && createFold({ words: rampWords, make: () => [createSlope({ store, path: path('ramp') })] }),
    has('liquid') && createFold({ words: () => `Liquid: ${store.read(path('liquid'))}`, make: () => [createLiquid(store, path('liquid'))] }),
    more && createFold({ words: () => more[0], make: () => rowsOf(more[1]) }),
    has('tilt') && createFold({ words: tiltWords, make: () => [createTilt({ store, index })] }),
    has('target') && createFold({ words: cupWords, make: () => [createCup({ store, index })] }),
    has('jitter') && createFold({ words: jitterWords, make: () => ['jitter', 'seed'].map(name => row(name)) }),
    createFold({ words: () => 'Place and time', make: () => rowsOf(placed) }),
    has('carried') && createFold({ words: throwerWords, make: () => [row('carried.speed_m_s', 'Moves at'), row('carried.heading_deg')] }),
  ].filter(Boolean);
  const left = h('ul', { class: 'small assumptions' });
  const element = h(
    'div',
    { class: 'rows' },
    main.map(r => r.element),
    h(
      'p',
      { class: 'links' },
      groups.map(g => g.button),
    ),
    groups.map(g => g.element),
    left,
  );

  function throwerWords() {
    const speed = store.read(path('carried.speed_m_s')) ?? 0;
    const [who, still] = carried;
    if (!speed) return `${who}: ${still}`;
    return `${who}: ${showQuantity(speed, 'm/s', store.view.units)} ${headingWords(store.read(path('carried.heading_deg')) ?? 0, ground.across)}`;
  }

  function tiltWords() {
    const count = (store.read(path('tilt')) ?? []).length;
    return count ? `Lip: tilts over ${countWords(count, 'point')}` : 'Lip: steady';
  }
  function cupWords() {
    return motion()?.target ? `Cup: ${showQuantity(store.read(path('target.diameter_m')) ?? 0, 'm', store.view.units)} wide` : 'Cup: none';
  }
  function jitterWords() {
    const jitter = store.read(path('jitter'));
    return jitter ? `Drops: scatter ${formatFigure(jitter, 0.01)}` : 'Drops: even';
  }
  function spinWords() {
    const spin = store.read(path('ball_spin_rpm')),
      count = store.read(path('bounces'));
    const turns = spin
      ? `${formatFigure(spin, 1)}\u00a0rpm ${has('ball_spin_axis') ? axisWords(motion().ball_spin_axis, motion().heading_deg ?? 0) : 'about the upright'}`
      : null;
    const said = [turns, count ? `bounces ${timesWords(count)} at most` : null].filter(Boolean);
    return said.length ? `Spin and bounce: ${said.join(', ')}` : 'Spin and bounce';
  }
  function spinRows() {
    const bounces = row('bounces', 'Bounces');
    if (!has('ball_spin_axis')) return [row('ball_spin_rpm', 'Its spin'), bounces];
    const heading = () => motion()?.heading_deg ?? 0;
    // a spin needs an axis to be about: the first one is the forward roll, in the same step
    const put = (value, live) =>
      store.edit(
        draft => {
          const mine = draft.motions[index];
          mine.ball_spin_rpm = value;
          if (value && !mine.ball_spin_axis) mine.ball_spin_axis = axisOf('forward', heading());
        },
        { live },
      );
    return [
      bounces,
      createField({ store, path: path('ball_spin_rpm'), label: 'Its spin', centred: true, put }),
      createSpinAxis({ store, path: path('ball_spin_axis'), heading }),
    ];
  }
  function rampWords() {
    const slope = motion()?.ramp?.slope_deg;
    return typeof slope === 'number' ? `Ramp: ${formatFigure(slope, 0.1)}°` : 'Ramp: none';
  }

  function update() {
    main.forEach(r => r.update());
    groups.forEach(g => g.update());
    const assumed = store.answer?.motions[index]?.assumptions ?? [];
    if (left.textContent !== assumed.join('')) left.replaceChildren(...assumed.map(text => h('li', {}, text)));
  }
  return { element, update };
}

// shown where there is more than one floor
function createFloorChoice(store, path) {
  const floors = () => store.document.habitat.floors ?? [];
  const select = createSelect({
    store,
    path,
    label: 'On',
    options: () => floors().map((floor, i) => [i, floorName(floor, i)]),
    chosen: () => store.read(path) ?? 0,
    choose: value => store.set(path, value),
  });
  return {
    element: select.element,
    update() {
      select.element.hidden = floors().length < 2;
      select.update();
    },
  };
}

// One row without a slider: for a figure of which more is nothing other than less, such as a seed; its refusal under it.

/** A whole-number field. */
function createFigureRow({ store, path }) {
  const { label } = fieldOf(store.fields, path);
  const id = `${path}-no`;
  const keep = value => store.set(path, Math.round(value));
  const figure = createFigure({ store, path, label, step: () => 1, keep, describedBy: id });
  const slot = createFieldError({ store, path, frame: figure.element });
  slot.element.id = id;
  const element = h('div', { class: 'row bare', 'data-row': path }, h('span', { class: 'lab' }, label), figure.element, slot.element);
  function update() {
    figure.update();
    slot.update();
  }
  return { element, update };
}
