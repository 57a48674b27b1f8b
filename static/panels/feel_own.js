// Limits of the user's own, of one quantity: those there are, each to be removed, and a row to set another.

import { fieldOf } from '../state/fields.js';
import { fromShown, parseFigure, shownUnit } from '../state/units.js';
import { createChoice } from './choice.js';
import { h, setAttribute, setChildren } from './dom.js';
import { boundWords } from './feel_say.js';
import { outside } from './figure.js';
import { icon } from './icons.js';
import { createRefusalSlot } from './refusals.js';

const MOST = 12; // that a scene may have, of all quantities together

/** `quantity` {name, label, unit}. */
export function createOwnLimits({ store, quantity }) {
  const list = h('ul', { class: 'own' });
  const opens = h('button', { type: 'button', class: 'link', 'aria-expanded': false, onclick: toggle }, 'Set a limit of your own');
  opens.setAttribute('aria-label', `Set a limit of your own: ${quantity.label.toLowerCase()}`);
  const full = h('span', { class: 'small' }, `A scene has room for ${MOST} limits of your own.`);
  const form = createForm({ store, quantity, keep: add });
  form.element.hidden = true;
  let drawn = '';

  const all = () => store.document.own_limits ?? [];

  function toggle() {
    form.element.hidden = !form.element.hidden;
    setAttribute(opens, 'aria-expanded', !form.element.hidden);
    if (!form.element.hidden) form.focus();
  }
  function add(limit) {
    store.edit(draft => {
      draft.own_limits = [...(draft.own_limits ?? []), limit];
    });
    toggle();
    opens.focus();
  }
  function remove(index) {
    store.edit(draft => {
      draft.own_limits.splice(index, 1);
      if (!draft.own_limits.length) delete draft.own_limits;
    });
    store.tell({ kind: 'told', say: `Your limit on ${quantity.label.toLowerCase()} is gone.`, undo: true });
  }

  function update() {
    const mine = all().flatMap((limit, index) => (limit.quantity === quantity.name ? [{ limit, index }] : []));
    const key = JSON.stringify([mine, store.view.units]);
    if (key !== drawn) {
      drawn = key;
      setChildren(list, mine.map(({ limit, index }) => line(store, quantity, limit, () => remove(index))));
    }
    const isFull = all().length >= MOST;
    setAttribute(full, 'hidden', !isFull);
    setAttribute(opens, 'hidden', isFull);
    form.update();
  }
  return { element: h('div', {}, list, h('p', { class: 'links' }, opens, full), form.element), update };
}

function line(store, quantity, limit, remove) {
  const words = boundWords({ ...limit, limit: limit.value, unit: quantity.unit }, store.view.units);
  const say = limit.name ? `${limit.name}, yours: ${words}` : `Yours: ${words}`;
  return h(
    'li',
    {},
    h('span', {}, say),
    h('button', { type: 'button', class: 'icon-button', 'aria-label': `Remove your limit: ${words}`, onclick: remove }, icon('close')),
  );
}

// bound, value and name; Enter keeps
function createForm({ store, quantity, keep }) {
  const path = 'own_limits.0.value', // its field is the same for every one of them
    here = `own_limits.${quantity.name}`; // where a refusal of this form is said
  let bound = quantity.name === 'gravity' || quantity.name === 'rim_speed' ? 'at_least' : 'at_most';
  const choice = createChoice({
    label: 'Which side',
    options: [
      { value: 'at_least', say: 'at least' },
      { value: 'at_most', say: 'at most' },
    ],
    chosen: () => bound,
    choose(next) {
      bound = next;
      choice.update();
    },
  });
  const typed = { type: 'text', autocomplete: 'off', spellcheck: 'false', onkeydown };
  const value = h('input', { ...typed, inputmode: 'decimal', 'aria-label': `Your limit on ${quantity.label.toLowerCase()}` });
  const unit = h('span', { class: 'unit' });
  const box = h('span', { class: 'val' }, value, unit);
  const name = h('input', { ...typed, class: 'linkbox', maxlength: fieldOf(store.fields, 'own_limits.0.name').max ?? 60, placeholder: 'what it is for', 'aria-label': 'Its name, or nothing' });
  const slot = createRefusalSlot({ store, path: here, frame: box });
  const set = h('button', { type: 'button', class: 'btn strong', onclick: take }, 'Set it');
  const element = h('div', { class: 'own-form', 'data-row': here, role: 'group', 'aria-label': `A limit of your own on ${quantity.label.toLowerCase()}` }, choice.element, box, name, set, slot.element);

  function onkeydown(event) {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    take();
  }
  function take() {
    const number = readFigure(value.value, quantity.unit, store.view.units);
    if (number === null || outside(fieldOf(store.fields, path), number)) return refuseHere(value.value.trim() || 'empty');
    store.tell(null);
    keep({ ...(name.value.trim() && { name: name.value.trim() }), quantity: quantity.name, bound, value: number });
    value.value = name.value = '';
  }
  function refuseHere(was) {
    const { may_be: may } = fieldOf(store.fields, path);
    store.tell({ kind: 'refused', field: here, here: true, say: `${quantity.label} was ${was}; a limit may be ${may}.` });
  }
  return {
    element,
    focus: () => value.focus(),
    update() {
      unit.textContent = shownUnit(quantity.unit, store.view.units);
      choice.update();
      slot.update();
    },
  };
}

// a number in the unit shown, with or without that unit's word behind it; units that the page converts may be others
function readFigure(text, unit, units) {
  const shown = shownUnit(unit, units),
    plain = text.trim();
  if (shown && plain.endsWith(shown)) {
    const { value } = parseFigure(plain.slice(0, -shown.length), { unit: '' });
    return value === undefined ? null : fromShown(value, unit, units);
  }
  const { value } = parseFigure(plain, { unit, system: units });
  return value ?? null;
}
