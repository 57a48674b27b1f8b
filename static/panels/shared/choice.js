// One of several: a few words side by side, or a list to choose from.

import { h, setAttribute, setChildren } from './dom.js';
import { choiceWords } from '../../state/choice_words.js';
import { fieldOf } from '../../state/fields.js';
import { createFieldError } from './field_error.js';

/** options: [{value, say, label}]; chosen() → value; choose(value). */
export function createChoice({ label, options, chosen, choose }) {
  const buttons = options.map(option =>
    h(
      'button',
      {
        type: 'button',
        class: option.fraction ? 'fraction' : null,
        title: option.label ?? null,
        onclick: () => choose(option.value),
      },
      option.say,
      option.label && h('span', { class: 'unseen' }, `, ${option.label}`),
    ),
  );
  const element = h('span', { class: 'choice', role: 'group', 'aria-label': label }, buttons);
  function update() {
    buttons.forEach((button, i) => setAttribute(button, 'aria-pressed', chosen() === options[i].value));
  }
  update();
  return { element, update };
}

/** Its word on the left, the choice on the right. */
export function choiceRow(label, choice) {
  return h('div', { class: 'between' }, h('span', {}, label), choice.element);
}

/** On or off, as a button that says which. */
export function createSwitch({ label, on, turn }) {
  const element = h('button', { type: 'button', class: 'switch', onclick: () => turn(!on()) }, h('span', { class: 'box', 'aria-hidden': true }), label);
  function update() {
    setAttribute(element, 'aria-pressed', Boolean(on()));
  }
  update();
  return { element, update };
}

// A field that is one of a few words: they are the catalogue's.

export function createChoiceField({ store, path, label }) {
  const options = (fieldOf(store.fields, path)?.choices ?? []).map(value => ({ value, say: choiceWords(value) }));
  const choice = createChoice({
    label,
    options,
    chosen: () => store.read(path),
    choose: value => store.set(path, value),
  });
  return { element: choiceRow(label, choice), update: choice.update };
}

// A row of a word and a list to choose from, with the refusal of its field under it.

/** A list alone, its options set anew when they change: options() → [[value, words]]; chosen() → value; choose(value). Values are
 * text or numbers; attributes are the list's own. */
export function createList(attributes, { options, chosen, choose }) {
  const element = h('select', { ...attributes, onchange: () => choose(listed[element.selectedIndex][0]) });
  let listed = [];
  function update() {
    const wanted = options();
    if (JSON.stringify(wanted) !== JSON.stringify(listed)) {
      listed = wanted;
      setChildren(
        element,
        listed.map(([value, words]) => h('option', { value: String(value) }, words)),
      );
    }
    element.selectedIndex = listed.findIndex(([value]) => value === chosen());
  }
  return { element, update };
}

/** The same in a row under its label. */
export function createSelect({ store, path, label, options, chosen, choose }) {
  const list = createList({ 'aria-label': label }, { options, chosen, choose });
  const slot = createFieldError({ store, path, frame: list.element });
  const element = h('div', { class: 'group', 'data-row': path }, h('div', { class: 'between' }, h('span', {}, label), list.element), slot.element);
  function update() {
    list.update();
    slot.update();
  }
  return { element, update };
}
