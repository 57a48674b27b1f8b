// What moves: a named body, or one's own mass, size, drag, and how it rebounds, rubs and rolls.

import { fieldOf, isRecord } from '../../state/fields.js';
import { showQuantity } from '../../state/units.js';
import { h, setText } from '../shared/dom.js';
import { createChoice, createSwitch, choiceRow, createChoiceField } from '../shared/choice.js';
import { createField } from '../shared/field.js';

const OWN = '';
const OWN_FIELDS = ['mass_kg', 'diameter_m', 'drag', 'buoyant', 'drag_area_m2', 'shell', 'restitution', 'friction', 'rolling_resistance'];
const CONTACT = [
  ['restitution', 'Bounce'],
  ['friction', 'Friction'],
  ['rolling_resistance', 'Resistance'],
];

export function createBody({ store, path }) {
  const select = h(
    'select',
    { 'aria-label': 'Body', onchange: () => choose(select.value) },
    store.fields.bodies.map(body => h('option', { value: body.name }, body.name)),
    h('option', { value: OWN }, 'your own'),
  );
  const source = h('p', { class: 'small' });
  const own = h('div', {});
  const contacts = h('p', { class: 'small' });
  const mine = h('button', { type: 'button', class: 'link', onclick: () => choose(OWN) }, 'Make these figures your own');
  let rows = [];
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, 'Body'), select), own, contacts, source, mine);

  const body = () => store.read(path);
  const named = name => store.fields.bodies.find(known => known.name === name);

  function choose(name) {
    if (name !== OWN) return store.set(path, name);
    const known = named(body()) ?? store.fields.bodies[0];
    store.set(path, Object.fromEntries(OWN_FIELDS.filter(key => known[key] !== undefined).map(key => [key, known[key]])));
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
    const shell = createChoiceField({ store, path: `${path}.shell`, label: 'Construction' });
    const row = (name, label, none = null) => createField({ store, path: `${path}.${name}`, label, none });
    const light = fieldOf(store.fields, `${path}.buoyant`) ? [floats(), row('drag_area_m2', 'Drag area', 'none')] : [];
    const size = [row('mass_kg'), row('diameter_m')],
      constant = numeric ? [row('drag')] : [],
      contact = CONTACT.map(([name, label]) => row(name, label));
    const elements = of => of.map(part => part.element);
    own.replaceChildren(...elements(size), choiceRow('Drag', curve), ...elements(constant), ...elements(light), shell.element, ...elements(contact));
    rows = [...size, curve, ...constant, ...light, shell, ...contact];
    own.dataset.numeric = String(numeric);
  }

  // the air bears it, as far as it displaces any
  function floats() {
    return createSwitch({
      label: 'Buoyant in the air',
      on: () => store.read(`${path}.buoyant`) ?? false,
      turn: on => store.set(`${path}.buoyant`, on),
    });
  }

  function update() {
    const stated = isRecord(body());
    select.value = stated ? OWN : body();
    own.hidden = !stated;
    mine.hidden = stated;
    if (stated && own.dataset.numeric !== String(typeof body().drag === 'number')) build();
    if (stated) rows.forEach(row => row.update());
    const known = stated ? null : named(body());
    setText(contacts, known?.shell ? contactWords(known) : '');
    setText(source, known?.source ? `Source: ${known.source}` : '');
  }
  return { element, update };
}

/** 'Hollow; restitution 0.76, friction 0.5, rolling resistance 0.02.' */
function contactWords({ shell, restitution, friction, rolling_resistance: rolling }) {
  const wall = shell === 'hollow' ? 'Hollow' : 'Solid';
  return `${wall}; restitution ${restitution}, friction ${friction}, rolling resistance ${rolling}.`;
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
