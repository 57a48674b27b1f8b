// Limits of the user's own, of one quantity: those there are, each with its figure to change or to be removed, and a row to set another.

import { tr } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { parseFigure, shownUnit } from '../../state/units.js';
import { createChoice } from '../shared/choice.js';
import { h, setAttribute, setChildren, icon } from '../shared/dom.js';
import { BOUNDS, boundWords } from './figure_words.js';
import { createFigure, outside } from '../shared/figure.js';
import { createFold } from '../shared/fold.js';
import { createFieldError } from '../shared/field_error.js';

const MOST = 12; // that a scene may have, of all quantities together

/** `quantity` {name, in_text, unit}. */
export function createOwnLimits({ store, quantity }) {
  const list = h('ul', { class: 'own' });
  const form = createForm({ store, quantity, keep: add });
  const fold = createFold({ words: () => tr('Set a limit of your own'), make: () => [form], turned: open => open && form.focus() });
  fold.button.setAttribute('aria-label', tr('Set a limit of your own: {quantity}', { quantity: quantity.in_text }));
  const full = h('span', { class: 'small' }, tr('A scene has room for {count} limits of your own.', { count: MOST }));
  let lines = [],
    builtFrom = '';

  const all = () => store.document.own_limits ?? [];

  function add(limit) {
    store.edit(draft => {
      draft.own_limits = [...(draft.own_limits ?? []), limit];
    });
    fold.toggle();
    fold.button.focus();
  }
  function remove(index) {
    store.edit(draft => {
      draft.own_limits.splice(index, 1);
      if (!draft.own_limits.length) delete draft.own_limits;
    });
    store.tell({ kind: 'told', say: tr('Your limit on {quantity} was removed.', { quantity: quantity.in_text }), undo: true });
  }

  // a line stays the same while its figure changes, so that the figure keeps the focus
  function update() {
    const mine = all().flatMap(({ quantity: of, bound, name }, index) => (of === quantity.name ? [{ bound, name, index }] : []));
    const key = JSON.stringify(mine);
    if (key !== builtFrom) {
      builtFrom = key;
      lines = mine.map(one => createLine({ store, quantity, ...one, remove: () => remove(one.index) }));
      setChildren(
        list,
        lines.map(line => line.element),
      );
    }
    lines.forEach(line => line.update());
    const isFull = all().length >= MOST;
    setAttribute(full, 'hidden', !isFull);
    setAttribute(fold.button, 'hidden', isFull);
    fold.update();
  }
  return { element: h('div', {}, list, h('p', { class: 'links' }, fold.button, full), fold.element), update };
}

function createLine({ store, quantity, bound, name, index, remove }) {
  const path = `own_limits.${index}.value`,
    side = tr(BOUNDS[bound]),
    said = name ? tr('{name}, yours: {side}', { name, side }) : tr('Yours: {side}', { side });
  const figure = createFigure({ store, path, label: `${said}, ${quantity.in_text}`, step: thirdFigure, measure: quantity.unit });
  const slot = createFieldError({ store, path, frame: figure.element });
  const away = h('button', { type: 'button', class: 'icon-button', onclick: remove }, icon('close'));
  return {
    element: h('li', { 'data-row': path }, h('span', {}, said), figure.element, away, slot.element),
    update() {
      const { units } = store.view;
      setAttribute(away, 'aria-label', tr('Remove your limit: {limit}', { limit: boundWords({ bound, limit: store.read(path), unit: quantity.unit }, units) }));
      figure.update();
      slot.update();
    },
  };
}

// a step in the third figure of a value above 0
function thirdFigure(value) {
  return 10 ** (Math.floor(Math.log10(value)) - 2);
}

// bound, value and name; Enter keeps
function createForm({ store, quantity, keep }) {
  const path = 'own_limits.0.value', // its field is the same for every one of them
    formField = `own_limits.${quantity.name}`; // where an error of this form is said
  let bound = quantity.name === 'gravity' || quantity.name === 'rim_speed' ? 'at_least' : 'at_most';
  const choice = createChoice({
    label: tr('Which side'),
    options: [
      { value: 'at_least', say: tr('at least') },
      { value: 'at_most', say: tr('at most') },
    ],
    chosen: () => bound,
    choose(next) {
      bound = next;
      choice.update();
    },
  });
  const typed = { type: 'text', autocomplete: 'off', spellcheck: 'false', onkeydown };
  const value = h('input', { ...typed, inputmode: 'decimal', 'aria-label': tr('Your limit on {quantity}', { quantity: quantity.in_text }) });
  const unit = h('span', { class: 'unit' });
  const box = h('span', { class: 'val' }, value, unit);
  const name = h('input', {
    ...typed,
    class: 'linkbox',
    maxlength: fieldOf(store.fields, 'own_limits.0.name').max ?? 60,
    placeholder: tr('what it is for'),
    'aria-label': tr('Name, or leave empty'),
  });
  const slot = createFieldError({ store, path: formField, frame: box });
  const set = h('button', { type: 'button', class: 'btn strong', onclick: take }, tr('Set it'));
  const element = h(
    'div',
    { class: 'own-form', 'data-row': formField, role: 'group', 'aria-label': tr('A limit of your own on {quantity}', { quantity: quantity.in_text }) },
    choice.element,
    box,
    name,
    set,
    slot.element,
  );

  function onkeydown(event) {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    take();
  }
  function take() {
    const { value: number } = parseFigure(value.value, { unit: quantity.unit, system: store.view.units });
    if (number === undefined || outside(fieldOf(store.fields, path), number)) return sayWrong(value.value.trim() || tr('empty'));
    store.tell(null);
    keep({ ...(name.value.trim() && { name: name.value.trim() }), quantity: quantity.name, bound, value: number });
    value.value = name.value = '';
  }
  function sayWrong(was) {
    const { may_be: may } = fieldOf(store.fields, path);
    store.tell({
      kind: 'refused',
      field: formField,
      say: tr('{label} was {typed}; a limit must be {may_be}.', { label: quantity.label, typed: was, may_be: may }),
    });
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
