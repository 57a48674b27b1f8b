// The same motions in the scene's habitat and in the others: where each lands, how far off, and when; and how they are shown.

import { tr, trAs } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { homeWords } from '../../state/homes.js';
import { showQuantity } from '../../state/units.js';
import { whichWay } from '../../state/ways.js';
import { $, $$, h, setAttribute } from '../shared/dom.js';
import { choiceRow, createChoice, createSelect } from '../shared/choice.js';
import { lastSeen, pathKey } from '../shared/path_key.js';

export function createCompared({ store }) {
  const how = createChoice({
    label: tr('Other habitats'),
    options: [
      { value: 'over', say: tr('laid over') },
      { value: 'beside', say: tr('side by side') },
      { value: 'off', say: tr('off') },
    ],
    chosen: () => store.view.compare,
    choose: compare => store.look({ compare }),
  });
  const which = createSelect({
    store,
    path: 'view.beside',
    label: tr('At its side'),
    options: () => (store.document.compare ?? []).map((other, i) => [i, other.name]),
    chosen: () => store.view.beside ?? 0,
    choose: beside => store.look({ beside }),
  });
  const element = $('#compared');
  element.append(
    h('h3', { class: 'third' }, tr('In each habitat')),
    choiceRow(tr('Others'), how),
    which.element,
    h(
      'table',
      { class: 'compared' },
      h(
        'thead',
        {},
        h(
          'tr',
          {},
          h('th', { scope: 'col' }, tr('Motion and habitat')),
          ...[trAs('how it', 'ends'), tr('how far off'), tr('time')].map(word => h('th', { scope: 'col', class: 'r' }, word)),
        ),
      ),
    ),
  );
  const table = $('table', element);
  let drawn = [];

  function update() {
    const others = store.document.compare ?? [];
    setAttribute(element, 'hidden', others.length === 0);
    if (!others.length) return;
    how.update();
    setAttribute(which.element, 'hidden', store.view.compare !== 'beside' || others.length < 2);
    which.update();
    const key = [store.answer, store.view.units, store.view.hidden];
    if (key.every((part, i) => part === drawn[i])) return;
    drawn = key;
    $$('tbody', table).forEach(part => part.remove());
    table.append(...groups(store));
  }
  return { update };
}

// a group of rows a motion, a row a habitat
function groups(store) {
  const { answer, view } = store;
  const homes = [answer, ...(answer.compare ?? [])].map(({ motions }, index) => ({ name: homeWords(store, index), motions }));
  return answer.motions
    .map((_, index) => index)
    .filter(index => !view.hidden.includes(motionName(store, index)))
    .map(index =>
      h(
        'tbody',
        {},
        h('tr', {}, h('th', { scope: 'rowgroup', colspan: 4, class: 'whose' }, pathKey(index), motionName(store, index))),
        homes.map(home => row(home.name, home.motions[index], view.units)),
      ),
    );
}

function row(name, motion, units) {
  const seen = motion && lastSeen(motion);
  const show = (value, unit = 'm') => (typeof value === 'number' ? showQuantity(value, unit, units) : '');
  const cells = !seen
    ? [h('td', { colspan: 3, class: 'r' }, tr('does not begin'))]
    : [h('td', { class: 'r' }, seen.say), h('td', { class: 'r' }, whichWay(seen.way, units)), h('td', { class: 'r' }, show(seen.time_s, 's'))];
  return h('tr', {}, h('th', { scope: 'row' }, name), cells);
}
