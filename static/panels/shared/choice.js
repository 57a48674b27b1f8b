// A few words side by side of which one is chosen.

import { h, setAttribute } from './dom.js';

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
  const element = h(
    'button',
    { type: 'button', class: 'switch', onclick: () => turn(!on()) },
    h('span', { class: 'box', 'aria-hidden': true }),
    label,
  );
  function update() {
    setAttribute(element, 'aria-pressed', Boolean(on()));
  }
  update();
  return { element, update };
}
