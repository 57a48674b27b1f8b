// What the craft is made of: a line a part, the chosen one unfolded; and what adds one.

import { tr } from '../../state/language.js';
import { choiceWords } from '../../state/choice_words.js';
import { asSolid, newPart, removePart, rename } from '../../state/ship.js';
import { createChoiceField, createSelect } from '../shared/choice.js';
import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { createFieldError } from '../shared/field_error.js';
import { createEditedName } from '../shared/figure.js';
import { showQuantity } from '../../state/units.js';
import { keepFocus } from './focus.js';
import { fieldRows } from './rows.js';

/** chosen() → the number of the part that is unfolded; choose(number). */
export function createParts({ store, chosen, choose }) {
  const { craft } = store.fields;
  const list = h('ol', { class: 'parts' }),
    slot = createFieldError({ store, path: 'craft.parts', frame: list });
  const adding = createAdding();
  const [counter] = fieldRows({ store, path: 'craft', names: ['counter_rpm'] });
  const element = h('div', {}, list, h('div', { 'data-row': 'craft.parts' }, slot.element), adding.element, counter.element);
  let lines = [],
    builtFor = null;

  function createAdding() {
    let solid = 'box';
    const pick = createSelect({
      store,
      path: 'craft.parts.*.solid',
      label: tr('Add a part'),
      options: () => Object.keys(craft.solids).map(name => [name, choiceWords(name)]),
      chosen: () => solid,
      choose: name => {
        solid = name;
      },
    });
    const add = h('button', { type: 'button', class: 'btn', onclick: () => addPart(solid) }, tr('Add'));
    return { element: h('div', { class: 'part-add' }, pick.element, add), update: pick.update };
  }

  function addPart(solid) {
    store.edit(draft => {
      draft.craft.parts.push(newPart(craft, solid, draft.craft.parts));
    });
    choose(store.document.craft.parts.length - 1);
  }

  function remove(index) {
    const { name } = store.document.craft.parts[index];
    store.edit(draft => removePart(draft.craft, index));
    choose(Math.max(0, index - 1));
    store.tell({ kind: 'told', say: tr('{name} is gone.', { name }), undo: true });
  }

  function update() {
    const { parts } = store.document.craft;
    const wanted = parts.map(part => part.solid).join();
    if (wanted !== builtFor) {
      builtFor = wanted;
      lines = parts.map((_, index) => createPart({ store, index, chosen, choose, remove }));
      const put = () =>
        setChildren(
          list,
          lines.map(line => line.element),
        );
      keepFocus(
        list,
        () => {
          put();
          lines.forEach(line => line.update());
        },
        '.part-line.chosen .unfold',
      );
    }
    lines.forEach(line => line.update());
    setAttribute(
      counter.element,
      'hidden',
      parts.every(part => part.group !== 'counter'),
    );
    counter.update();
    adding.update();
    slot.update();
  }
  return { element, update };
}

function createPart({ store, index, chosen, choose, remove }) {
  const { craft } = store.fields,
    path = `craft.parts.${index}`;
  const part = () => store.document.craft.parts[index];
  const name = createEditedName({
    label: tr('Name of the part'),
    kind: 'who-name',
    read: () => part()?.name ?? '',
    write: typed => store.edit(draft => rename(draft.craft, index, typed)),
  });
  const nameSlot = createFieldError({ store, path: `${path}.name`, frame: null });
  const unfold = h('button', { type: 'button', class: 'unfold', onclick: () => choose(chosen() === index ? null : index) }, h('i', { 'aria-hidden': true })),
    brief = h('span', { class: 'part-brief', onclick: () => unfold.click() }),
    away = h('button', { type: 'button', class: 'quiet', onclick: () => remove(index) }, tr('Remove'));
  const element = h(
    'li',
    { class: 'part-line' },
    h('header', {}, unfold, h('span', { class: 'part-is' }, name.element, brief), away),
    h('div', { 'data-row': `${path}.name` }, nameSlot.element),
  );
  let rows = null;

  function build() {
    const solid = createSelect({
      store,
      path: `${path}.solid`,
      label: tr('Solid'),
      options: () => Object.keys(craft.solids).map(one => [one, choiceWords(one)]),
      chosen: () => part().solid,
      choose: one =>
        store.edit(draft => {
          draft.craft.parts[index] = asSolid(craft, one, draft.craft.parts[index]);
        }),
    });
    const group = createChoiceField({ store, path: `${path}.group`, label: tr('Group') });
    const own = craft.solids[part().solid].fields;
    rows = [group, solid, ...fieldRows({ store, path, names: ['mass_kg', 'place_m', ...own] })];
    element.append(
      h(
        'div',
        { class: 'rows' },
        rows.map(row => row.element),
      ),
    );
  }

  function update() {
    if (!part()) return;
    const open = chosen() === index;
    element.classList.toggle('chosen', open);
    element.dataset.group = part().group ?? 'turning';
    name.update();
    nameSlot.update();
    setText(brief, `${choiceWords(part().group ?? 'turning')}, ${choiceWords(part().solid)}, ${showQuantity(part().mass_kg, 'kg', store.view.units)}`);
    setAttribute(unfold, 'aria-label', tr('{name}: its figures', { name: part().name }));
    setAttribute(unfold, 'aria-expanded', open);
    setAttribute(away, 'aria-label', tr('Remove {name}', { name: part().name }));
    setAttribute(away, 'hidden', store.document.craft.parts.length < 2);
    if (open && !rows) build();
    if (!rows) return;
    element.lastElementChild.hidden = !open;
    if (open) rows.forEach(row => row.update());
  }
  return { element, update };
}
