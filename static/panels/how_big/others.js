// Other habitats: up to three other habitats in which the same motions are shown.

import { fieldOf } from '../../state/fields.js';
import { habitatName, keepFloors } from '../../state/shapes.js';
import { threeFigures } from '../../state/units.js';
import { freshName } from '../../state/words.js';
import { $, h, setAttribute, setText, icon } from '../shared/dom.js';
import { createEditedName } from '../shared/figure.js';
import { createFold } from '../shared/fold.js';
import { createHabitatRows } from './habitat_rows.js';
import { createFieldError } from '../shared/field_error.js';

const MOST = 3;

export function createOthers({ store }) {
  const list = h('div', { class: 'floors' });
  const more = h('button', { type: 'button', class: 'link', onclick: add }, 'Set another habitat beside it');
  const say = h('p', { class: 'small' }, 'The same motions, shown in another habitat too: over this one, or beside it.');
  $('#others').append(h('h3', { class: 'third' }, 'Other habitats'), say, list, h('p', { class: 'links' }, more));
  let rows = [];

  const others = () => store.document.compare ?? [];
  const names = () => others().map(other => other.name);

  function add() {
    store.edit(draft => {
      draft.compare = [...(draft.compare ?? []), { name: freshName('Another habitat', names()), habitat: structuredClone(draft.habitat) }];
    });
    rows.at(-1).unfold();
  }
  function remove(index) {
    const gone = names()[index];
    store.edit(draft => {
      draft.compare.splice(index, 1);
      if (!draft.compare.length) delete draft.compare;
    });
    store.look({ beside: null });
    store.tell({ kind: 'told', say: `${gone} is gone.`, undo: true });
  }
  // the habitat that goes beside is named for what it is
  function swap(index) {
    const taken = names().filter((_, i) => i !== index);
    store.edit(draft => {
      const other = draft.compare[index],
        own = draft.habitat;
      draft.habitat = other.habitat;
      draft.compare[index] = { name: freshName(habitatName(store.fields, own), taken), habitat: own };
      keepFloors(draft, floor => floor);
    });
  }

  function update() {
    if (rows.length !== others().length) {
      rows = others().map((_, index) => createOther({ store, index, swap, remove }));
      list.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(more, 'hidden', rows.length >= MOST);
    setAttribute(say, 'hidden', rows.length > 0);
    rows.forEach(row => row.update());
  }
  return { update };
}

function createOther({ store, index, swap, remove }) {
  const path = `compare.${index}`;
  const answered = () => store.answer?.compare?.[index]?.habitat;
  const name = createEditedName({
    label: `Name of habitat ${index + 1} beside it`,
    read: () => store.document.compare?.[index]?.name ?? '',
    write: typed => store.set(`${path}.name`, typed.slice(0, fieldOf(store.fields, `${path}.name`)?.max ?? 60)),
  });
  const slot = createFieldError({ store, path: `${path}.name` });
  const words = h('p', { class: 'small floor-words' });
  const button = (label, onclick, kind, ...inside) => h('button', { type: 'button', class: kind, 'aria-label': label, onclick }, ...inside);
  const fold = createFold({
    words: () => 'What it is',
    make: () => [createHabitatRows({ store, at: `${path}.habitat`, dials: true, answered })],
  });
  return {
    element: h(
      'article',
      { class: 'floor other' },
      h(
        'header',
        {},
        h('h4', {}, name.element),
        button(`Remove habitat ${index + 1} beside it`, () => remove(index), 'icon-button', icon('close')),
      ),
      h('div', { 'data-row': `${path}.name` }, slot.element),
      words,
      h('p', { class: 'links' }, fold.button, h('button', { type: 'button', class: 'link', onclick: () => swap(index) }, 'Swap with the scene’s own')),
      fold.element,
    ),
    unfold: fold.toggle,
    update() {
      const other = store.document.compare?.[index];
      if (!other) return;
      name.update();
      slot.update();
      const gravity = answered()?.felt_g;
      setText(words, `${habitatName(store.fields, other.habitat)}${typeof gravity === 'number' ? `: ${threeFigures(gravity)}\u00a0g` : ''}.`);
      fold.update();
    },
  };
}
