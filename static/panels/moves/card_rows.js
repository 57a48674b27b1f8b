// The rows of the chosen motion: its main figures, and groups that open for body, place and time, and a moving thrower.

import { tr, trAs, trLater } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { floorName, groundOf } from '../../state/shapes.js';
import { axisOf, axisWords } from '../../state/motions.js';
import { formatFigure, showQuantity } from '../../state/units.js';
import { countWords, headingWords, timesWords } from '../../state/words.js';
import { h } from '../shared/dom.js';
import { createSpinAxis } from './spin_axis.js';
import { bodyWords, createBody } from './body.js';
import { createChoiceField, createSelect } from '../shared/choice.js';
import { createCup, createLiquid, createTilt, liquidName } from './pour.js';
import { createField } from '../shared/field.js';
import { createFold } from '../shared/fold.js';
import { createHeadingRow, createSlope } from './rose.js';
import { createFigure } from '../shared/figure.js';
import { createFieldError } from '../shared/field_error.js';

const ON_A_DECK = { 'place.along_m': trLater('Along'), 'place.axial_m': trLater('Across') };
const ON_A_TABLE = { 'place.along_m': trLater('Round'), 'place.axial_m': trLater('Outward') };

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
    return createField({ store, path: path(name), label: label ?? field.label, centred: min < 0, none: nullable ? tr('none') : null });
  };
  const rowsOf = labels => Object.entries(labels).map(([name, label]) => row(name, label && tr(label)));

  const main = rowsOf(rows);
  const placed = { 'place.floor': null, ...(ground.level ? ON_A_TABLE : ON_A_DECK), start_s: null };
  const groups = [
    has('body') &&
      createFold({
        words: () => tr('Body: {body}', { body: bodyWords(store, store.read(path('body'))) }),
        make: () => [createBody({ store, path: path('body') })],
      }),
    has('bounces') && createFold({ words: spinWords, make: spinRows }),
    has('ramp') && createFold({ words: rampWords, make: () => [createSlope({ store, path: path('ramp') })] }),
    has('liquid') &&
      createFold({
        words: () => tr('Liquid: {liquid}', { liquid: liquidName(store.read(path('liquid'))) }),
        make: () => [createLiquid(store, path('liquid'))],
      }),
    more && createFold({ words: () => more[0], make: () => rowsOf(more[1]) }),
    has('tilt') && createFold({ words: tiltWords, make: () => [createTilt({ store, index })] }),
    has('target') && createFold({ words: cupWords, make: () => [createCup({ store, index })] }),
    has('jitter') && createFold({ words: jitterWords, make: () => ['jitter', 'seed'].map(name => row(name)) }),
    createFold({ words: () => tr('Place and time'), make: () => rowsOf(placed) }),
    has('carried') && createFold({ words: throwerWords, make: () => [row('carried.speed_m_s', tr('Moves at')), row('carried.heading_deg')] }),
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
    return count ? tr('Lip: tilts over {points}', { points: countWords(count, 'point') }) : tr('Lip: steady');
  }
  function cupWords() {
    return motion()?.target
      ? tr('Cup: {length} wide', { length: showQuantity(store.read(path('target.diameter_m')) ?? 0, 'm', store.view.units) })
      : tr('Cup: none');
  }
  function jitterWords() {
    const jitter = store.read(path('jitter'));
    return jitter ? tr('Drops: scatter {figure}', { figure: formatFigure(jitter, 0.01) }) : tr('Drops: even');
  }
  function spinWords() {
    const spin = store.read(path('ball_spin_rpm')),
      count = store.read(path('bounces'));
    const turns = spin
      ? `${formatFigure(spin, 1)}\u00a0rpm ${has('ball_spin_axis') ? axisWords(motion().ball_spin_axis, motion().heading_deg ?? 0) : tr('about the upright')}`
      : null;
    const said = [turns, count ? tr('bounces {times} at most', { times: timesWords(count) }) : null].filter(Boolean);
    return said.length ? tr('Spin and bounce: {words}', { words: said.join(', ') }) : tr('Spin and bounce');
  }
  function spinRows() {
    const bounces = row('bounces', tr('Bounces'));
    if (!has('ball_spin_axis')) return [row('ball_spin_rpm', tr('Its spin')), bounces];
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
      createField({ store, path: path('ball_spin_rpm'), label: tr('Its spin'), centred: true, put }),
      createSpinAxis({ store, path: path('ball_spin_axis'), heading }),
    ];
  }
  function rampWords() {
    const slope = motion()?.ramp?.slope_deg;
    return typeof slope === 'number' ? tr('Ramp: {angle}', { angle: `${formatFigure(slope, 0.1)}°` }) : tr('Ramp: none');
  }

  function update() {
    main.forEach(r => r.update());
    groups.forEach(g => g.update());
    const assumed = store.answer?.motions[index]?.assumptions ?? [];
    if (left.textContent !== assumed.join('')) left.replaceChildren(...assumed.map(text => h('li', { 'data-says': tr('Left out or assumed:') }, text)));
  }
  return { element, update };
}

// shown where there is more than one floor
function createFloorChoice(store, path) {
  const floors = () => store.document.habitat.floors ?? [];
  const select = createSelect({
    store,
    path,
    label: trAs('a floor', 'On'),
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
