// Rows for the fields of a part or a block, by what the server says each of them is.

import { tr, trAs, trLater } from '../../state/language.js';
import { choiceWords } from '../../state/choice_words.js';
import { fieldOf } from '../../state/fields.js';
import { createChoiceField, createSelect } from '../shared/choice.js';
import { h } from '../shared/dom.js';
import { createField } from '../shared/field.js';
import { createFieldError } from '../shared/field_error.js';
import { createFigure } from '../shared/figure.js';

const MOST_IN_A_ROW = 4; // words to choose from side by side; more are a list

/** Rows of the fields `names` under `path`: [{element, update}]. */
export function fieldRows({ store, path, names }) {
  return names.map(name => rowOf(store, `${path}.${name}`)).filter(Boolean);
}

function rowOf(store, path) {
  const field = fieldOf(store.fields, path);
  switch (field?.kind) {
    case 'number':
      return createField({ store, path, none: field.nullable ? noneOf(path) : null });
    case 'choice':
      return createPick({ store, path, field });
    case 'vector':
      return createFigures({ store, path, field, count: 3 });
    case 'list':
      return createFigures({ store, path, field, count: store.read(path)?.length ?? 0 });
    default:
      return null;
  }
}

const NONE = { radius_m: trLater('the rim’s'), tube_radius_m: trLater('as drawn'), counter_rpm: trLater('balancing') };

// what a figure is that is left out
function noneOf(path) {
  if (path.startsWith('craft.deploy')) return tr('as it is');
  const words = NONE[path.split('.').at(-1)];
  return words ? tr(words) : trAs('a value left out', 'none');
}

function createPick({ store, path, field }) {
  if (field.choices.length === 1 && !field.nullable) return null; // nothing to choose: the answer names it
  if (field.choices.length <= MOST_IN_A_ROW && !field.nullable) return createChoiceField({ store, path, label: field.label });
  const values = field.nullable ? [null, ...field.choices] : field.choices;
  return createSelect({
    store,
    path,
    label: field.label,
    options: () => values.map(value => [value, choiceWords(value)]),
    chosen: () => store.read(path),
    choose: value => store.set(path, value),
  });
}

const AXES = ['x', 'y', 'z'];

// several figures side by side, each a field of its own
function createFigures({ store, path, field, count }) {
  const figures = Array.from({ length: count }, (_, k) =>
    createFigure({ store, path: `${path}.${k}`, label: `${field.label}, ${nameOf(field, k)}`, step: () => 0.01, keep: value => keep(k, value) }),
  );
  const slot = createFieldError({ store, path, frame: null });
  const element = h(
    'div',
    { class: 'group', role: 'group', 'aria-label': field.label, 'data-row': path },
    h('span', {}, field.label),
    h(
      'span',
      { class: 'abreast' },
      figures.map((figure, k) => h('span', { class: 'one' }, h('em', { 'aria-hidden': true }, nameOf(field, k)), figure.element)),
    ),
    slot.element,
  );

  function keep(k, value) {
    store.set(
      path,
      store.read(path).map((other, i) => (i === k ? value : other)),
    );
  }
  function update() {
    if (!store.read(path)) return;
    figures.forEach(figure => figure.update());
    slot.update();
  }
  return { element, update };
}

function nameOf(field, k) {
  return field.kind === 'vector' ? AXES[k] : [tr('first'), tr('second'), tr('third')][k];
}
