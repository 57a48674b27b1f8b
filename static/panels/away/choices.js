// Choices inside a sentence: a list to pick from and a figure to type, both ruled under like the figures on the cards; what is refused
// of them, and what positions are counted from.

import { inSigns, tr, trLater, trParts } from '../../state/language.js';
import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createList } from '../shared/choice.js';
import { parseFigure, withUnit } from '../../state/units.js';
import { outside } from '../shared/figure.js';

/** options() → [[value, words]], values text or numbers; chosen(); choose(value). */
export function inlinePick({ label, ...list }) {
  return createList({ class: 'in-line', 'aria-label': label }, list);
}

/** text() → what stands there; keep(typed) after Enter or on leaving; `empty`: what an empty one means; `hint`: what else may be typed. */
export function inlineType({ label, text, keep, empty = () => '', wide = 5, list = null, hint = null }) {
  const element = h('input', { type: 'text', class: 'in-line', 'aria-label': label, autocomplete: 'off', spellcheck: 'false', size: wide, list, title: hint });
  element.addEventListener('change', () => keep(element.value.trim()));
  element.addEventListener('focus', () => element.select());
  element.addEventListener('keydown', event => {
    if (event.key === 'Escape' && element.value !== text()) {
      event.preventDefault(); // the sheet stays
      element.value = text();
      keep(element.value);
    }
  });
  function update() {
    if (!element.hasAttribute('aria-invalid')) element.value = text(); // what is refused stays to be mended
    setAttribute(element, 'placeholder', empty());
  }
  return { element, update };
}

/** A control and the mark after it: no line begins with a comma. */
export function tight(control, mark) {
  return h('span', { class: 'tight' }, control, mark);
}

/** Sentences of what may not be, under their controls and as alerts: say({name: sentence}). */
export function createErrors(controls) {
  const element = h('div', { role: 'alert' });
  function say(sentences) {
    for (const [name, control] of Object.entries(controls)) setAttribute(control.element, 'aria-invalid', name in sentences || null);
    setChildren(
      element,
      Object.values(sentences).map(sentence => h('p', { class: 'refusal' }, h('b', {}, sentence))),
    );
  }
  return { element, say };
}

/** A row of dots that fills, what is being made, and Cancel. */
export function createProgress({ cancel }) {
  const bar = h('span', { class: 'dotted', role: 'progressbar', 'aria-valuemin': 0, 'aria-label': tr('Exporting') }, h('span', {}));
  const words = h('span', { class: 'small' });
  const element = h('div', { class: 'progress', hidden: true }, words, bar, h('button', { type: 'button', class: 'btn', onclick: cancel }, tr('Cancel')));
  return {
    element,
    /** done of all; null puts it away. */
    tell(say, done = 0, all = 1) {
      element.hidden = say === null;
      setText(words, say ?? '');
      setAttribute(bar, 'aria-valuemax', all);
      setAttribute(bar, 'aria-valuenow', done);
      setAttribute(bar, 'aria-valuetext', say ?? '');
      bar.firstChild.style.width = `${(100 * done) / all}%`;
    },
  };
}

// What positions are counted from: the axis, the ground under the release, or a place by its own figures.

const WORDS = [
  ['axis', trLater('the axis of spin')],
  ['release', trLater('the ground under the release')],
  ['place', trLater('a place')],
];
const FIRST = { along_m: 0, height_m: 0, axial_m: 0 };
const SAID = trLater('{along_m} along, {height_m} up, {axial_m} along the axis.');

export function createOrigin({ fields, read, put, sayWrong }) {
  const isPlace = () => typeof read('origin') === 'object';
  const kind = inlinePick({
    label: fields.origin.label,
    options: () => WORDS.map(([value, words]) => [value, tr(words)]),
    chosen: () => (isPlace() ? 'place' : read('origin')),
    choose: value => put('origin', value === 'place' ? FIRST : value),
  });
  const figures = Object.keys(FIRST).map(name =>
    inlineType({
      label: tr('Origin: {figure}', { figure: fields[`origin.${name}`].label }),
      text: () => withUnit(inSigns(String(isPlace() ? read('origin')[name] : 0)), fields[`origin.${name}`].unit),
      wide: 4,
      keep(typed) {
        const field = fields[`origin.${name}`];
        const { value } = parseFigure(typed, { unit: field.unit });
        if (value === undefined || outside(field, value))
          sayWrong('origin', tr('{field} was {typed}; it must be {may_be}.', { field: field.label, typed, may_be: field.may_be }));
        else put('origin', { ...read('origin'), [name]: value });
      },
    }),
  );
  const stop = h('span', {}, '.');
  const place = h('span', {}, ', ', trParts(SAID, Object.fromEntries(Object.keys(FIRST).map((name, k) => [name, figures[k].element]))));
  const element = h('span', {}, tight(kind.element, stop), place);
  function update() {
    place.hidden = !isPlace();
    stop.hidden = isPlace();
    kind.update();
    for (const figure of figures) figure.update();
  }
  return { element, update };
}
