// What flies: a named body, or one's own mass, diameter and drag.

import { fieldOf } from '../state/fields.js';
import { isRecord } from '../state/paths.js';
import { showQuantity } from '../state/units.js';
import { h, setText } from './dom.js';
import { createChoice, choiceRow } from './choice.js';
import { createField } from './field.js';

const OWN = '';

export function createBody({ store, path }) {
  const select = h(
    'select',
    { 'aria-label': 'Body', onchange: () => choose(select.value) },
    store.fields.bodies.map(body => h('option', { value: body.name }, body.name)),
    h('option', { value: OWN }, 'your own'),
  );
  const source = h('p', { class: 'small' });
  const own = h('div', {});
  let rows = [];
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, 'Body'), select), own, source);

  const body = () => store.read(path);
  const named = name => store.fields.bodies.find(known => known.name === name);

  function choose(name) {
    if (name !== OWN) return store.set(path, name);
    const known = named(body()) ?? store.fields.bodies[0];
    store.set(path, { mass_kg: known.mass_kg, diameter_m: known.diameter_m, drag: known.drag });
  }

  function build() {
    const drag = () => store.read(`${path}.drag`) ?? 'sphere';
    const numeric = isRecord(body()) && typeof body().drag === 'number';
    const curve = createChoice({
      label: 'Drag',
      options: [
        { value: true, say: 'of a sphere' },
        { value: false, say: 'constant' },
      ],
      chosen: () => typeof drag() !== 'number',
      choose: sphere => store.set(`${path}.drag`, sphere ? 'sphere' : 0.5),
    });
    rows = ['mass_kg', 'diameter_m', ...(numeric ? ['drag'] : [])].map(name => createField({ store, path: `${path}.${name}` }));
    own.replaceChildren(
      ...rows.slice(0, 2).map(row => row.element),
      choiceRow('Drag', curve),
      ...rows.slice(2).map(row => row.element),
    );
    rows.push(curve);
    own.dataset.numeric = String(numeric);
  }

  function update() {
    const mine = isRecord(body());
    select.value = mine ? OWN : body();
    own.hidden = !mine;
    if (mine && own.dataset.numeric !== String(typeof body().drag === 'number')) build();
    if (mine) rows.forEach(row => row.update());
    const known = mine ? null : named(body());
    setText(source, known?.source ? `Source: ${known.source}` : '');
  }
  return { element, update };
}

/** 'handball, 0.45 kg' */
export function bodyWords(store, body) {
  const known = isRecord(body) ? body : store.fields.bodies.find(item => item.name === body);
  const unit = fieldOf(store.fields, 'motions.0.body.mass_kg')?.unit ?? 'kg';
  const mass =
    typeof known?.mass_kg === 'number'
      ? showQuantity(known.mass_kg, unit, store.view.units)
          .replace(/(\.\d*?)0+(?=\D|$)/, '$1')
          .replace(/\.(?=\D)/, '')
      : null;
  return [isRecord(body) ? 'your own' : body, mass].filter(Boolean).join(', ');
}
