// The table of what can be taken away: tick, name, kind of file, size.

import { h, setAttribute, setText } from '../shared/dom.js';
import { inlinePick } from './controls.js';

/** `groups` as export_list gives them; `kinds` {row: value} as remembered; changed() after a tick, chose(row, value) after a kind. */
export function createRows({ groups, kinds, changed, chose }) {
  const rows = groups.flatMap(group => group.rows).map(row => createRow(row, kinds[row.key], { changed, chose }));
  const by = new Map(rows.map(row => [row.key, row]));
  const element = h(
    'table',
    { class: 'takings' },
    h('colgroup', {}, ['tick', 'w', '', 'size'].map(name => h('col', { class: name || null }))), // prettier-ignore
    groups.map(group =>
      h(
        'tbody',
        {},
        h('tr', {}, h('th', { colspan: 4, scope: 'rowgroup' }, group.say)),
        group.rows.map(row => by.get(row.key).element),
      ),
    ),
  );
  return {
    element,
    /** Only these are ticked. */
    tick(keys) {
      for (const row of rows) row.box.checked = keys.includes(row.key) && !row.box.disabled;
    },
    ticked: () => rows.filter(row => row.box.checked),
    all: rows,
    of: key => by.get(key),
  };
}

function createRow(row, remembered, { changed, chose }) {
  const id = `take-${row.key}`;
  const box = h('input', { type: 'checkbox', id, onchange: changed, 'aria-describedby': `${id}-why` });
  const size = h('td', { class: 'r size' });
  const why = h('span', { class: 'small why', id: `${id}-why`, hidden: true });
  let kind = row.kinds.find(one => one.value === remembered) ?? row.kinds[0];
  const pick =
    row.kinds.length > 1 &&
    inlinePick({
      label: `${row.say}: kind of file`,
      options: () => row.kinds.map(one => [one.value, one.say]),
      chosen: () => kind.value,
      choose(value) {
        kind = row.kinds.find(one => one.value === value);
        box.checked = true;
        chose(row.key, value);
      },
    });
  const element = h(
    'tr',
    {},
    h('td', { class: 'tick' }, box),
    h('td', { class: 'w' }, h('label', { for: id }, row.say)),
    h('td', { class: 'format' }, pick ? pick.element : row.kinds[0].say, why),
    size,
  );
  if (pick) pick.update();
  return {
    key: row.key,
    say: row.say,
    element,
    box,
    get kind() {
      return kind;
    },
    tell: words => setText(size, words),
    /** Why it cannot be had here, in a sentence; '' where it can. */
    bar(words) {
      setText(why, words);
      why.hidden = !words;
      setAttribute(box, 'disabled', Boolean(words));
      if (words) box.checked = false;
    },
  };
}
