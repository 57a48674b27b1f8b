// The figures of one question: rows for its fields, and for each thing in its list where it has one; built anew when what it holds changes.

import { inSentence, tr } from '../../state/language.js';
import { choiceWords } from '../../state/choice_words.js';
import { RADIUS, fieldOf, getAt } from '../../state/fields.js';
import { atRim, givenOf, partNow } from '../../state/ship.js';
import { freshName } from '../../state/words.js';
import { choiceRow, createChoice, createSelect } from '../shared/choice.js';
import { h, setChildren } from '../shared/dom.js';
import { createEditedName } from '../shared/figure.js';
import { keepFocus } from './focus.js';
import { fieldRows } from './rows.js';

export function blockRows({ store, block }) {
  const path = `craft.${block.name}`,
    element = h('div', { class: 'rows' });
  let rows = [],
    builtFor = null;

  const value = () => getAt(store.document, path);
  const items = () => block.items && (getAt(store.document, `${path}${block.items.path}`) ?? []);
  // what rows there are depends on these
  const shape = () =>
    JSON.stringify([
      value()?.by,
      block.one_of && givenOf(value(), Object.keys(block.one_of)),
      items()?.map(item => block.items.of_parts && item.name),
      block.inside.map(part => Boolean(value()?.[part.name])),
      block.beside.map(part => Boolean(getAt(store.document, `craft.${part.name}`))),
    ]);

  function build() {
    const names = block.variants ? block.variants[value().by].fields : block.fields;
    rows = [
      block.variants && createBy({ store, block, path }),
      ...fieldRows({ store, path, names }),
      ...(block.one_of ? oneOfRows({ store, block, path }) : []),
      ...block.inside.flatMap(part => partRows({ store, own: `${path}.${part.name}`, part })),
      ...(items() ?? []).flatMap((_, k) => itemRows({ store, block, path, k })),
      block.items && createAdd({ store, block, path }),
      ...block.beside.flatMap(part => partRows({ store, own: `craft.${part.name}`, part })),
    ].filter(Boolean);
    setChildren(
      element,
      rows.map(row => row.element),
    );
  }

  function update() {
    if (!value()) return;
    if (shape() !== builtFor) {
      builtFor = shape();
      keepFocus(element, build, '.btn');
    }
    rows.forEach(row => row.update());
  }
  return [{ element, update }];
}

// which of two kinds it is: another comes with figures of its own
function createBy({ store, block, path }) {
  const names = Object.keys(block.variants);
  const choice = createChoice({
    label: fieldOf(store.fields, `${path}.by`).label,
    options: names.map(value => ({ value, say: choiceWords(value) })),
    chosen: () => store.read(`${path}.by`),
    choose: by => store.set(path, atRim(block.variants[by].new, block.at_rim, store.read(RADIUS))),
  });
  return { element: choiceRow(fieldOf(store.fields, `${path}.by`).label, choice), update: choice.update };
}

// of some fields the one that is given, and which it is
function oneOfRows({ store, block, path }) {
  const names = Object.keys(block.one_of),
    given = () => givenOf(getAt(store.document, path), names);
  const choice = createChoice({
    label: tr('Given'),
    options: names.map(value => ({ value, say: inSentence(fieldOf(store.fields, `${path}.${value}`).label) })),
    chosen: given,
    choose: name =>
      name === given() ||
      store.set(path, { ...getAt(store.document, path), ...Object.fromEntries(names.map(one => [one, one === name ? block.one_of[one] : null])) }),
  });
  return [{ element: choiceRow(tr('Given'), choice), update: choice.update }, ...fieldRows({ store, path, names: [given()] })];
}

// a part that may be absent: a switch, and its rows
function partRows({ store, own, part }) {
  const choice = createChoice({
    label: part.asks,
    options: [
      { value: false, say: tr('off') },
      { value: true, say: tr('on') },
    ],
    chosen: () => Boolean(getAt(store.document, own)),
    choose: on => store.set(own, on ? structuredClone(part.new) : null),
  });
  const rows = getAt(store.document, own) ? fieldRows({ store, path: own, names: part.fields }) : [];
  return [{ element: choiceRow(part.asks, choice), update: choice.update }, ...rows];
}

function itemRows({ store, block, path, k }) {
  const list = `${path}${block.items.path}`,
    own = `${list}.${k}`;
  const remove = () =>
    store.set(
      list,
      getAt(store.document, list).filter((_, i) => i !== k),
    );
  const away = h('button', { type: 'button', class: 'quiet', onclick: remove }, tr('Remove'));
  const name = block.items.of_parts ? pickPart({ store, path: own }) : named({ store, path: own });
  const least = block.items.least ?? 0;
  const head = h('div', { class: 'between item-head' }, name.element, away);
  return [
    {
      element: head,
      update() {
        name.update();
        away.hidden = getAt(store.document, list).length <= least;
      },
    },
    ...fieldRows({ store, path: own, names: block.items.fields.filter(field => hasRow({ store, block, own, field })) }),
  ];
}

// of what may be left out: what is told, and figures that the part has
function hasRow({ store, block, own, field }) {
  const item = getAt(store.document, own);
  if (item[field] != null || !block.items.of_parts) return item[field] != null;
  const { parts } = store.document.craft,
    part = parts.find(({ name }) => name === item.name);
  return fieldOf(store.fields, `${own}.${field}`).kind === 'number' && store.fields.craft.solids[part?.solid]?.fields.includes(field);
}

function named({ store, path }) {
  return createEditedName({
    label: fieldOf(store.fields, `${path}.name`).label,
    kind: 'who-name',
    read: () => getAt(store.document, `${path}.name`) ?? '',
    write: typed => store.set(`${path}.name`, typed),
  });
}

function pickPart({ store, path }) {
  return createSelect({
    store,
    path: `${path}.name`,
    label: fieldOf(store.fields, `${path}.name`).label,
    options: () => store.document.craft.parts.map(part => [part.name, part.name]),
    chosen: () => getAt(store.document, `${path}.name`),
    choose: name =>
      store.set(
        path,
        partNow(
          store.fields.craft.solids,
          store.document.craft.parts.find(part => part.name === name),
        ),
      ),
  });
}

function createAdd({ store, block, path }) {
  const list = `${path}${block.items.path}`;
  function add() {
    const there = getAt(store.document, list) ?? [],
      taken = there.map(item => item.name),
      fresh = block.items.of_parts ? nextPart(taken) : atRim(block.items.new, block.items.at_rim, store.read(RADIUS));
    store.set(list, [...there, block.items.of_parts ? fresh : { ...fresh, name: freshName(fresh.name, taken) }]);
  }
  function nextPart(taken) {
    const { parts } = store.document.craft;
    return partNow(store.fields.craft.solids, parts.find(({ name }) => !taken.includes(name)) ?? parts[0]);
  }
  const button = h('button', { type: 'button', class: 'btn', onclick: add }, block.items.adds);
  return { element: h('p', { class: 'links' }, button), update() {} };
}
