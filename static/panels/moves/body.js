// What moves: a named body, or one's own mass, size, drag, and how it rebounds, rubs and rolls.

import { inSigns, tr, trLater } from '../../state/language.js';
import { fieldOf, isRecord } from '../../state/fields.js';
import { showQuantity } from '../../state/units.js';
import { h, setText } from '../shared/dom.js';
import { createChoice, createSwitch, choiceRow, createChoiceField } from '../shared/choice.js';
import { createField } from '../shared/field.js';

const OWN = '';
const OWN_FIELDS = ['mass_kg', 'diameter_m', 'drag', 'buoyant', 'drag_area_m2', 'shell', 'restitution', 'friction', 'rolling_resistance'];
// the bodies that have a name, by what documents call them
const BODIES = {
  handball: trLater('handball'),
  'tennis ball': trLater('tennis ball'),
  'table-tennis ball': trLater('table-tennis ball'),
  baseball: trLater('baseball'),
  'steel ball 20 mm': trLater('steel ball 20 mm'),
  'steel ball 5 mm': trLater('steel ball 5 mm'),
  cup: trLater('cup'),
  'water drop 3 mm': trLater('water drop 3 mm'),
  'helium balloon': trLater('helium balloon'),
  'air balloon': trLater('air balloon'),
  'soap bubble': trLater('soap bubble'),
  'sheet of paper': trLater('sheet of paper'),
  'falling person': trLater('falling person'),
};
/** @param {string} name */
export const bodyName = name => (name in BODIES ? tr(BODIES[name]) : name);
const CONTACT = [
  ['restitution', trLater('Bounce')],
  ['friction', trLater('Friction')],
  ['rolling_resistance', trLater('Resistance')],
];

export function createBody({ store, path }) {
  const select = h(
    'select',
    { 'aria-label': tr('Body'), onchange: () => choose(select.value) },
    store.fields.bodies.map(body => h('option', { value: body.name }, bodyName(body.name))),
    h('option', { value: OWN }, tr('your own')),
  );
  const source = h('p', { class: 'small' });
  const own = h('div', {});
  const contacts = h('p', { class: 'small' });
  const mine = h('button', { type: 'button', class: 'link', onclick: () => choose(OWN) }, tr('Make these figures your own'));
  let rows = [];
  const element = h('div', { class: 'group' }, h('div', { class: 'between' }, h('span', {}, tr('Body')), select), own, contacts, source, mine);

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
      label: tr('Drag'),
      options: [
        { value: true, say: tr('of a sphere') },
        { value: false, say: tr('constant') },
      ],
      chosen: () => typeof drag() !== 'number',
      choose: sphere => store.set(`${path}.drag`, sphere ? 'sphere' : 0.5),
    });
    const shell = createChoiceField({ store, path: `${path}.shell`, label: tr('Construction') });
    const row = (name, label, none = null) => createField({ store, path: `${path}.${name}`, label, none });
    const light = fieldOf(store.fields, `${path}.buoyant`) ? [floats(), row('drag_area_m2', tr('Drag area'), tr('none'))] : [];
    const size = [row('mass_kg'), row('diameter_m')],
      constant = numeric ? [row('drag')] : [],
      contact = CONTACT.map(([name, label]) => row(name, tr(label)));
    const elements = of => of.map(part => part.element);
    own.replaceChildren(...elements(size), choiceRow(tr('Drag'), curve), ...elements(constant), ...elements(light), shell.element, ...elements(contact));
    rows = [...size, curve, ...constant, ...light, shell, ...contact];
    own.dataset.numeric = String(numeric);
  }

  // the air bears it, as far as it displaces any
  function floats() {
    return createSwitch({
      label: tr('Buoyant in the air'),
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
    setText(source, known?.source ? tr('Source: {source}', { source: known.source }) : '');
  }
  return { element, update };
}

/** 'Hollow; restitution 0.76, friction 0.5, rolling resistance 0.02.' */
function contactWords({ shell, restitution, friction, rolling_resistance: rolling }) {
  const places = { restitution: figure(restitution), friction: figure(friction), rolling: figure(rolling) };
  return shell === 'hollow'
    ? tr('Hollow; restitution {restitution}, friction {friction}, rolling resistance {rolling}.', places)
    : tr('Solid; restitution {restitution}, friction {friction}, rolling resistance {rolling}.', places);
}

const figure = value => inSigns(String(value));

/** '0.45 kg' for '0.450 kg'. */
function withoutZeros(text) {
  const point = inSigns('.'),
    [whole, parts] = text.split(point);
  return parts === undefined ? text : whole + parts.replace(/^(\d*?)0*(?!\d)/, (_, kept) => (kept ? point + kept : ''));
}

/** 'handball, 0.45 kg' */
export function bodyWords(store, body) {
  const known = isRecord(body) ? body : store.fields.bodies.find(item => item.name === body);
  const unit = fieldOf(store.fields, 'motions.0.body.mass_kg')?.unit ?? 'kg';
  const mass = typeof known?.mass_kg === 'number' ? withoutZeros(showQuantity(known.mass_kg, unit, store.view.units)) : null;
  return [isRecord(body) ? tr('your own') : bodyName(body), mass].filter(Boolean).join(', ');
}
