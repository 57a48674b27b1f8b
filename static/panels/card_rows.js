// The rows of the chosen motion: its main figures, and groups that open for body, place and time, and a moving thrower.

import { fieldOf } from '../state/fields.js';
import { showQuantity } from '../state/units.js';
import { headingWords } from '../state/words.js';
import { h, setAttribute, setText } from './dom.js';
import { bodyWords, createBody } from './body.js';
import { createField } from './field.js';
import { createHeadingRow } from './rose.js';

// the order of the rows; what a kind does not have is left out
const MAIN = ['flow_ml_s', 'lip_diameter_mm', 'speed_m_s', 'elevation_deg', 'heading_deg', 'place.height_m', 'duration_s'];
const SHORT = { elevation_deg: 'Up', 'place.height_m': 'From height', 'place.along_m': 'Along', 'place.axial_m': 'Across' };

export function createCardRows({ store, index, kind }) {
  const has = name => store.fields.kinds[kind].fields.includes(name.split('.')[0]);
  const path = name => `motions.${index}.${name}`;
  const known = name => has(name) && fieldOf(store.fields, path(name)) !== null;
  const row = (name, label = SHORT[name]) =>
    name.endsWith('heading_deg')
      ? createHeadingRow({ store, path: path(name) })
      : createField({ store, path: path(name), label, centred: fieldOf(store.fields, path(name)).min < 0 });

  const main = MAIN.filter(known).map(name => row(name));
  const groups = [
    has('body') &&
      group(
        'body',
        () => `Body: ${bodyWords(store, store.read(path('body')))}`,
        () => [createBody({ store, path: path('body') })],
      ),
    has('liquid') &&
      group(
        'liquid',
        () => `Liquid: ${store.read(path('liquid'))}`,
        () => [createLiquid(store, path('liquid'))],
      ),
    group(
      'place',
      () => 'Place and time',
      () => ['place.along_m', 'place.axial_m', 'start_s'].filter(known).map(name => row(name)),
    ),
    has('carried') && group('carried', throwerWords, () => [row('carried.speed_m_s', 'Moves at'), row('carried.heading_deg')]),
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
    if (!speed) return 'Thrower: standing';
    return `Thrower: ${showQuantity(speed, 'm/s', store.view.units)} ${headingWords(store.read(path('carried.heading_deg')) ?? 0)}`;
  }

  // a link that opens its rows; they are made when first wanted
  function group(name, words, make) {
    const id = `motion-${index}-${name}`;
    const inner = h('div', { class: 'rows', id, hidden: true });
    let rows = null;
    const button = h('button', { type: 'button', class: 'link', 'aria-expanded': false, 'aria-controls': id, onclick: toggle });
    function toggle() {
      rows ??= make();
      if (!inner.childElementCount) inner.append(...rows.map(r => r.element));
      inner.hidden = !inner.hidden;
      setAttribute(button, 'aria-expanded', !inner.hidden);
      if (!inner.hidden) rows.forEach(r => r.update());
    }
    return {
      button,
      element: inner,
      update() {
        setText(button, words());
        if (rows && !inner.hidden) rows.forEach(r => r.update());
      },
    };
  }

  function update() {
    main.forEach(r => r.update());
    groups.forEach(g => g.update());
    const assumed = store.answer?.motions[index]?.assumptions ?? [];
    if (left.textContent !== assumed.join('')) left.replaceChildren(...assumed.map(text => h('li', {}, text)));
  }
  return { element, update };
}

function createLiquid(store, path) {
  const select = h(
    'select',
    { 'aria-label': 'Liquid', onchange: () => store.set(path, select.value) },
    store.fields.liquids.map(liquid => h('option', { value: liquid.name }, liquid.name)),
  );
  const source = h('p', { class: 'small' });
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, 'Liquid'), select), source);
  return {
    element,
    update() {
      select.value = store.read(path);
      const known = store.fields.liquids.find(liquid => liquid.name === select.value);
      setText(source, known?.source ? `Source: ${known.source}` : '');
    },
  };
}
