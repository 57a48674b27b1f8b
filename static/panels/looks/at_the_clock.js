// What each motion's kind tells at the clock: weight at the feet, sideways push, the length of a line, tension, swing; and apart
// from these what it tells once of all of it, such as how long a ride takes.

import { tr } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { showFinding } from '../../state/motions.js';
import { findingAt } from '../../time/findings.js';
import { $, h, setAttribute, setText } from '../shared/dom.js';
import { pathKey } from '../shared/path_key.js';

export function createAtTheClock({ store, clock, explain }) {
  const element = $('#at-the-clock'),
    tables = [createTable(tr('At this instant'), value => !isOnce(value)), createTable(tr('In all'), isOnce)];
  element.append(...tables.map(table => table.element));
  let builtFrom = null,
    rows = [];

  // made anew for another answer; at another time only the figures are
  function update() {
    const key = [store.answer, store.view.hidden];
    if (!builtFrom || key.some((part, i) => part !== builtFrom[i])) build((builtFrom = key));
    move();
  }
  function build() {
    const shown = (store.answer?.motions ?? []).map((motion, index) => ({ motion, index }));
    const seen = shown.filter(({ index }) => !store.view.hidden.includes(motionName(store, index)));
    rows = tables.flatMap(table => table.fill(seen.flatMap(({ motion, index }) => rowsOf(motion, index, table.holds))));
    setAttribute(element, 'hidden', rows.length === 0);
  }
  function rowsOf(motion, index, holds) {
    const findings = findingsOf(motion).filter(({ name }) => holds(motion.findings[name]));
    return findings.length ? [head(index), ...findings.map(one => row(motion, one))] : [];
  }
  function findingsOf(motion) {
    return store.fields.kinds[motion.kind].findings.filter(({ name }) => (motion.findings?.[name] ?? null) !== null);
  }
  function head(index) {
    return { element: h('tr', {}, h('th', { scope: 'rowgroup', colspan: 2, class: 'whose' }, pathKey(index), motionName(store, index))) };
  }
  function row(motion, finding) {
    const { name, say, term } = finding;
    const figure = h('td', { class: 'r' });
    const word = h('button', { type: 'button', class: 'term', title: tr('What {word} is', { word: tr(term) }), onclick: () => explain(term, word) }, say);
    const at = () => {
      const value = findingAt(motion, store.answer.grid, name, clock.time_s);
      return value === null ? '' : showFinding(finding, value, store.view.units);
    };
    return { element: h('tr', { 'data-found': name }, h('th', { scope: 'row' }, word), figure), move: () => setText(figure, at()) };
  }
  function move() {
    rows.forEach(one => one.move?.());
  }
  return { update, move };
}

// a heading and its rows; not there while it has none
function createTable(words, holds) {
  const body = h('tbody', {});
  const element = h('div', {}, h('h3', { class: 'third' }, words), h('table', { class: 'instant' }, body));
  function fill(rows) {
    body.replaceChildren(...rows.map(one => one.element));
    setAttribute(element, 'hidden', rows.length === 0);
    return rows;
  }
  return { element, holds, fill };
}

const isOnce = value => typeof value === 'number';
