// A track as a table: typed, or pasted from a sheet into any of its cells. Only so many rows are shown at once. What the server refuses stands at the
// row that it names.

import { inSigns, tr, trLater } from '../../state/language.js';
import { figureOf, pastedRows } from '../../state/match_rows.js';
import { h, icon, setAttribute, setChildren, setText } from '../shared/dom.js';

const PAGE = 20; // rows shown at once
const HEADS = {
  time_s: trLater('Time, s'),
  along_m: trLater('Along, m'),
  height_m: trLater('Up, m'),
  axial_m: trLater('Axis, m'),
  x_m: trLater('X, m'),
  y_m: trLater('Y, m'),
  z_m: trLater('Z, m'),
};
const LABELS = {
  time_s: trLater('Time'),
  along_m: trLater('Along the deck'),
  height_m: trLater('Height'),
  axial_m: trLater('Along the axis'),
  x_m: trLater('X'),
  y_m: trLater('Y'),
  z_m: trLater('Z'),
};

/** get() → {match, refusal: {row, say} or null}; edit(match, live); tell(say). */
export function createRows({ get, edit, tell }) {
  const head = h('tr', {}),
    body = h('tbody', {}),
    table = h('table', { class: 'match-table', 'aria-label': tr('Rows of the track') }, h('thead', {}, head), body);
  const before = h('button', { type: 'button', class: 'link', onclick: () => turn(-1) }, tr('Rows before')),
    after = h('button', { type: 'button', class: 'link', onclick: () => turn(1) }, tr('Rows after')),
    where = h('span', { class: 'small' }),
    more = h('button', { type: 'button', class: 'link', onclick: add }, tr('Add a row'));
  const element = h(
    'div',
    { class: 'match-rows' },
    table,
    h('p', { class: 'links' }, more, before, after, where),
    h('p', { class: 'small' }, tr('Rows can be pasted from a sheet. Leave the axis empty where it keeps to the plane of rotation.')),
  );
  let page = 0,
    refused = null, // the row that was turned to
    shown = null;

  const rows = () => get().match.rows;
  const write = (items, live = false) => edit({ ...get().match, rows: { ...rows(), items } }, live);

  function add() {
    const { items, columns } = rows();
    write([...items, Object.fromEntries(columns.map(name => [name, null]))]);
    page = Math.floor(items.length / PAGE);
    update();
    body.lastElementChild?.querySelector('input')?.focus();
  }
  function turn(by) {
    page += by;
    update();
  }
  function remove(row) {
    write(rows().items.filter((_, i) => i !== row));
  }

  function commit(input, row, name) {
    const { items } = rows(),
      value = figureOf(input.value.replace(',', '.'));
    if (input.value.trim() && value === null) {
      tell(tr('{label} of row {row} was {typed}; it must be a number.', { label: tr(LABELS[name]), row: row + 1, typed: input.value }));
      input.value = shownAs(items[row][name]);
      return;
    }
    if (value !== items[row][name]) write(items.map((item, i) => (i === row ? { ...item, [name]: value } : item)));
  }

  function paste(event, row, name) {
    const text = event.clipboardData?.getData('text') ?? '';
    if (!/[\n\t;]/.test(text.trim())) return;
    event.preventDefault();
    const { items, columns } = rows(),
      fresh = pastedRows(text, columns.slice(columns.indexOf(name)));
    if (!fresh) return tell(tr('What was pasted holds no rows of figures.'));
    const empty = Object.fromEntries(columns.map(column => [column, null]));
    const next = [...items];
    fresh.forEach((item, k) => {
      next[row + k] = { ...empty, ...next[row + k], ...item };
    });
    write(next);
  }

  const shownAs = value => (value === null || value === undefined ? '' : inSigns(String(Number(value.toPrecision(7)))));

  function rowOf(item, row) {
    const { columns } = rows(),
      { refusal } = get(),
      bad = refusal?.row === row;
    const cells = columns.map(name => {
      const input = h('input', {
        type: 'text',
        inputmode: 'decimal',
        autocomplete: 'off',
        'aria-label': tr('{label}, row {row}', { label: tr(LABELS[name]), row: row + 1 }),
        'aria-invalid': bad || null,
        onchange: () => commit(input, row, name),
        onpaste: event => paste(event, row, name),
      });
      input.value = shownAs(item[name]);
      return h('td', {}, input);
    });
    const away = h(
      'button',
      { type: 'button', class: 'icon-button', 'aria-label': tr('Remove row {row}', { row: row + 1 }), onclick: () => remove(row) },
      icon('close'),
    );
    const line = h('tr', { class: bad ? 'wrong' : null }, h('th', { scope: 'row' }, `${row + 1}`), cells, h('td', {}, away));
    return bad ? [line, h('tr', {}, h('td', { colspan: columns.length + 2 }, h('p', { class: 'refusal' }, h('b', {}, refusal.say))))] : line;
  }

  function update() {
    const { refusal } = get();
    setAttribute(element, 'hidden', !rows());
    if (!rows()) return;
    const { items, columns } = rows();
    if (refusal !== refused) {
      refused = refusal;
      if (refusal?.row !== null && refusal) page = Math.floor(refusal.row / PAGE);
    }
    const pages = Math.max(1, Math.ceil(items.length / PAGE));
    page = Math.min(Math.max(page, 0), pages - 1);
    const key = [items, columns, page, refusal];
    if (!shown?.every((part, i) => part === key[i])) {
      shown = key;
      const label = document.activeElement?.closest('.match-table') && document.activeElement.getAttribute('aria-label');
      setChildren(
        head,
        h('td', {}),
        columns.map(name => h('th', { scope: 'col' }, tr(HEADS[name]))),
        h('td', {}),
      );
      setChildren(
        body,
        items.slice(page * PAGE, (page + 1) * PAGE).flatMap((item, k) => rowOf(item, page * PAGE + k)),
      );
      if (label) body.querySelector(`[aria-label="${label}"]`)?.focus({ preventScroll: true });
    }
    setAttribute(before, 'hidden', page === 0);
    setAttribute(after, 'hidden', page === pages - 1);
    const rowsShown = { first: page * PAGE + 1, last: Math.min(items.length, (page + 1) * PAGE), all: items.length };
    setText(where, pages > 1 ? tr('rows {first} to {last} of {all}', rowsShown) : '');
  }
  return { element, update };
}
