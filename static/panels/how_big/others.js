// Other habitats: up to three in which the same motions are shown too.

import { tr } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { MOST_OTHERS, NOTHING_HELD, freshHomeName, heldHome, homeFacts } from '../../state/homes.js';
import { keepFloors } from '../../state/shapes.js';
import { threeFigures } from '../../state/units.js';
import { addHome } from '../homes.js';
import { $, h, setAttribute, setText, icon } from '../shared/dom.js';
import { createEditedName } from '../shared/figure.js';
import { createFold } from '../shared/fold.js';
import { createHabitatRows } from './habitat_rows.js';
import { createFieldError } from '../shared/field_error.js';

export function createOthers({ store }) {
  const list = h('div', { class: 'floors' });
  const more = h('button', { type: 'button', class: 'link', onclick: add }, '');
  const say = h('p', { class: 'small' }, tr('The same motions in another habitat too: side by side with this one, or laid over it.'));
  $('#others').append(h('h3', { class: 'third' }, tr('Other habitats')), say, list, h('p', { class: 'links' }, more));
  let rows = [];

  const others = () => store.document.compare ?? [];
  const names = () => others().map(other => other.name);

  function add() {
    addHome(store);
    rows.at(-1).unfold();
  }
  function remove(index) {
    const gone = names()[index];
    store.edit(draft => {
      draft.compare.splice(index, 1);
      if (!draft.compare.length) delete draft.compare;
    });
    store.look({ beside: null, served: 0, ...(heldHome(store) === 0 ? {} : NOTHING_HELD) });
    store.tell({ kind: 'told', say: tr('{name} is gone.', { name: gone }), undo: true });
  }
  function swap(index) {
    const taken = names().filter((_, i) => i !== index);
    store.look(NOTHING_HELD);
    store.edit(draft => {
      const other = draft.compare[index],
        own = draft.habitat;
      draft.habitat = other.habitat;
      draft.compare[index] = { name: freshHomeName(taken), habitat: own };
      keepFloors(draft, floor => floor);
    });
  }

  function update() {
    if (rows.length !== others().length) {
      rows = others().map((_, index) => createOther({ store, index, swap, remove }));
      list.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(more, 'hidden', rows.length >= MOST_OTHERS);
    setText(more, rows.length ? tr('Add another habitat') : tr('Add a second habitat'));
    setAttribute(say, 'hidden', rows.length > 0);
    rows.forEach(row => row.update());
  }
  return { update };
}

function createOther({ store, index, swap, remove }) {
  const path = `compare.${index}`;
  const answered = () => store.answer?.compare?.[index]?.habitat;
  const name = createEditedName({
    label: tr('Name of habitat {number}', { number: index + 2 }),
    read: () => store.document.compare?.[index]?.name ?? '',
    write: typed => store.set(`${path}.name`, typed.slice(0, fieldOf(store.fields, `${path}.name`)?.max ?? 60)),
  });
  const slot = createFieldError({ store, path: `${path}.name` });
  const words = h('p', { class: 'small floor-words' });
  const button = (label, onclick, kind, ...inside) => h('button', { type: 'button', class: kind, 'aria-label': label, onclick }, ...inside);
  const fold = createFold({
    words: () => tr('What it is'),
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
        button(tr('Remove habitat {number}', { number: index + 2 }), () => remove(index), 'icon-button', icon('close')),
      ),
      h('div', { 'data-row': `${path}.name` }, slot.element),
      words,
      h('p', { class: 'links' }, fold.button, h('button', { type: 'button', class: 'link', onclick: () => swap(index) }, tr('Swap with the scene’s own'))),
      fold.element,
    ),
    unfold: fold.toggle,
    update() {
      const other = store.document.compare?.[index];
      if (!other) return;
      name.update();
      slot.update();
      const gravity = answered()?.felt_g;
      setText(words, `${homeFacts(store, store.document.habitat, other.habitat)}${typeof gravity === 'number' ? `: ${threeFigures(gravity)}\u00a0g` : ''}.`);
      fold.update();
    },
  };
}
