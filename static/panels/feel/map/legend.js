// Round the map of limits: which of them it draws, its key and its table in words, and the map as a file.

import { tr, trAs, trMany } from '../../../state/language.js';
import { isLimit, stateWord } from '../figure_words.js';
import { h, setChildren } from '../../shared/dom.js';
import { createSaved, download, fileName } from '../../shared/files.js';

const BOTH = ['gravity', 'spin']; // what the map's two axes are chosen for; few enough lines to read from afar
export const FIRST_GROUP = 'both';

/** What may be chosen: [[group, words]]; a quantity only where there is a limit on it. */
export function groupsOf({ map, quantities }) {
  const drawn = new Set(map.limits.map(limit => limit.quantity));
  return [
    [FIRST_GROUP, tr('gravity and spin')],
    ['all', tr('all of them')],
    ...quantities.filter(({ name }) => drawn.has(name)).map(({ name, in_text: words }) => [name, words]),
    ...(map.limits.some(limit => limit.mine) ? [['mine', trAs('limits', 'your own')]] : []),
  ];
}

function inGroup(row, group) {
  if (group === FIRST_GROUP) return BOTH.includes(row.quantity);
  return group === 'all' || (group === 'mine' ? row.mine === true : row.quantity === group);
}

/** How this habitat lies to the limits of a group, and to all of them: "Inside 14 of the 17 limits on gravity and spin, and 21 of all 25". */
export function insideWords(feel, group) {
  const [counted, every] = [group, 'all'].map(one => feel.limits.filter(row => inGroup(row, one) && isLimit(row)));
  if (!counted.some(row => typeof row.inside === 'boolean')) return tr('There is no limit to compare this habitat with');
  const kept = rows => rows.filter(row => row.inside).length,
    all = { kept: kept(every), all: every.length };
  if (group === 'all' || counted.length === every.length)
    return trMany('Inside {kept} of all {count} limit', 'Inside {kept} of all {count} limits', every.length, all);
  const said = { ...all, inside: kept(counted), of: counted.length, quantity: groupsOf(feel).find(([one]) => one === group)?.[1] },
    isMine = group === 'mine';
  if (counted.length > 1)
    return isMine
      ? tr('Inside {inside} of the {of} limits of your own, and {kept} of all {all}', said)
      : tr('Inside {inside} of the {of} limits on {quantity}, and {kept} of all {all}', said);
  if (kept(counted))
    return isMine
      ? tr('Inside the one limit of your own, and inside {kept} of all {all}', said)
      : tr('Inside the one limit on {quantity}, and inside {kept} of all {all}', said);
  return isMine
    ? tr('Beyond the one limit of your own, and inside {kept} of all {all}', said)
    : tr('Beyond the one limit on {quantity}, and inside {kept} of all {all}', said);
}

/** A group as the server is asked for it: quantities, or `mine`; none of them is all. */
export function drawnOf(group) {
  return { [FIRST_GROUP]: BOTH, all: [] }[group] ?? [group];
}

// The lines of the map in words: the key under it, what each says and which study says so; and its table, with how this habitat
// lies to each.

/** drawing() → the server's drawing of the map. */
export function createMapKey(drawing) {
  const element = h('ul', { class: 'map-key', 'aria-label': tr('Whose line is which') });
  let shown = null;

  function update() {
    const { limits } = drawing();
    if (limits === shown) return;
    shown = limits;
    setChildren(
      element,
      limits.map(({ short, who }) => h('li', {}, h('b', {}, short), ` ${who}`)),
    );
  }
  return { element, update };
}

export function createMapTable({ store, drawing }) {
  const body = h('tbody', {}),
    equal = h('p', { class: 'small' });
  const element = h(
    'div',
    {},
    h('table', { class: 'map-table' }, h('thead', {}, h('tr', {}, head(tr('Limit')), head(tr('who says so')), head(tr('here'), 'r'))), body),
    equal,
  );
  let shown = null;

  function update() {
    const { limits, gravity } = drawing(),
      rows = limits.map(({ says, on_map: isOnMap, who, ids }) => [isOnMap ? says : tr('{limit}, off the map', { limit: says }), who, stateOf(store.feel, ids)]),
      key = JSON.stringify(rows);
    if (key === shown) return;
    shown = key;
    setChildren(
      body,
      rows.map(([says, who, here]) => h('tr', {}, h('th', { scope: 'row' }, says), h('td', {}, who), h('td', { class: 'r' }, here))),
    );
    equal.textContent = tr('Lines of equal gravity: {list}.', { list: gravity.join(', ') });
  }
  return { element, update };
}

// rows that say the same lie the same
function stateOf({ limits }, ids) {
  return stateWord(limits.find(({ id }) => ids.includes(id))?.state ?? '');
}

function head(word, kind = null) {
  return h('th', { scope: 'col', class: kind }, word);
}

// The map as a file, drawn by the server: as lines for a picture, or as a page.

const FILES = [
  ['map-svg', 'svg', 'SVG'],
  ['map-pdf', 'pdf', 'PDF'],
];

export function createMapSaving({ store, exported }) {
  const saved = createSaved();
  async function save(format, ending) {
    try {
      const blob = await exported(format, { scene: store.document, export: {} });
      saved.tell(download(`${fileName(store.read('title'))}-map.${ending}`, blob));
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: tr('The map could not be saved: {why}', { why: problem.message }) });
    }
  }
  return h(
    'span',
    { class: 'saving' },
    tr('Save the map:'),
    ' ',
    FILES.flatMap(([format, ending, say], i) => [
      i > 0 && ', ',
      h('button', { type: 'button', class: 'link', 'aria-label': tr('Save the map as {format}', { format: say }), onclick: () => save(format, ending) }, say),
    ]),
    ' ',
    saved.element,
  );
}
