// A figure that can be typed (number box with its unit: Enter keeps, Esc restores, the unit switches SI and US), and a name changed
// where it stands.

import { tr } from '../../state/language.js';
import { RADIUS, SPIN, fieldOf } from '../../state/fields.js';
import { formatFigure, parseFigure, shownStep, shownUnit, toShown } from '../../state/units.js';
import { h, setText } from './dom.js';
import { sayInvalid } from './field_error.js';

const DIALS = [RADIUS, SPIN];

/** `none`: the word for null where the field may be null. `step(value)`: a fine step there. `solve`: a dial set by what it gives.
 *  `measure`: the unit, where it is not the field's own. */
export function createFigure({ store, path, label, step, none = null, solve = null, keep = null, describedBy = null, measure = null }) {
  const field = () => fieldOf(store.fields, path);
  const unit = () => measure ?? field()?.unit ?? '';
  const input = h('input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
    name: path,
    'aria-label': label,
    'aria-describedby': describedBy,
    onkeydown,
    onblur: () => commit(),
    onfocus: () => input.select(),
  });
  const unitName = h('span', {});
  const unitButton = h(
    'button',
    { type: 'button', class: 'unit', title: tr('SI or US customary (U)'), onclick: switchUnits },
    unitName,
    h('span', { class: 'unseen' }, ` ${tr('switch units')}`),
  );
  const element = h('span', { class: 'val' }, input, unitButton);

  function text() {
    const value = store.read(path);
    if (value === null) return none ?? '';
    if (typeof value !== 'number') return String(value);
    return formatFigure(toShown(value, unit(), store.view.units), shownStep(step(value), unit(), store.view.units));
  }

  function update() {
    if (document.activeElement !== input || input.dataset.typed === undefined) input.value = text();
    const shown = shownUnit(unit(), store.view.units);
    setText(unitName, shown);
    unitButton.hidden = !shown || (none !== null && store.read(path) === null);
  }

  /** Begins to type, with this text chosen. */
  function type(first) {
    input.focus();
    input.value = first;
    input.dataset.typed = first; // left as it is, it changes nothing
    input.select();
  }

  function commit() {
    if (input.dataset.typed === undefined) return;
    const opened = input.dataset.typed;
    delete input.dataset.typed;
    const typed = input.value.trim();
    if (typed !== text() && (typed !== opened || !opened)) take(typed);
    update();
  }

  function take(typed) {
    if (none !== null && (typed === '' || typed.toLowerCase() === none.toLowerCase())) return write(null);
    const parsed = parseFigure(typed, { unit: unit(), system: store.view.units, dial: DIALS.includes(path) });
    if (parsed.solve && solve) return solve({ ...parsed.solve, follower: path });
    if (parsed.error) return sayInvalid(store, path, typed);
    if (outside(field(), parsed.value)) return sayInvalid(store, path, typed);
    write(parsed.value);
  }

  function write(value) {
    if (keep) keep(value);
    else store.set(path, value);
  }

  function onkeydown(event) {
    const undoes = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z';
    if (undoes && input.dataset.typed === undefined) {
      // the browser's own undo would change the figure and not the scene
      event.preventDefault();
      event.stopPropagation();
      if (event.shiftKey) store.redo();
      else store.undo();
    } else if (event.key === 'Enter') {
      commit();
      input.select();
      event.preventDefault();
    } else if (event.key === 'Escape' && input.dataset.typed !== undefined) {
      delete input.dataset.typed;
      update();
      input.select();
      event.stopPropagation();
      event.preventDefault();
    }
  }
  input.addEventListener('input', () => {
    input.dataset.typed = '';
  });

  function switchUnits() {
    store.look({ units: store.view.units === 'si' ? 'us' : 'si' });
  }
  return { element, input, update, type };
}

/** Whether a value lies out of a field's range, as the server gave it. */
export function outside({ min, max, above_min: above }, value) {
  return (min !== null && (value < min || (above && value === min))) || (max !== null && value > max);
}

// A name that is changed where it stands: Enter keeps, Esc restores.

/** read() → the name; write(typed) is called with a new one that is not empty. */
export function createEditedName({ label, read, write, kind = null }) {
  const element = h('span', {
    contenteditable: 'plaintext-only',
    role: 'textbox',
    'aria-label': label,
    spellcheck: 'false',
    class: kind,
    title: tr('Click to rename'),
    onblur() {
      const typed = element.textContent.replace(/\s+/g, ' ').trim();
      if (typed && typed !== read()) write(typed);
      setText(element, read());
    },
    onkeydown(event) {
      if (event.key === 'Escape') setText(element, read());
      if (event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      element.blur();
    },
  });
  return {
    element,
    update() {
      if (document.activeElement !== element) setText(element, read());
    },
  };
}
