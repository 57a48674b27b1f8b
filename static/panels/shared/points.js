// Points in time, a row each, straight between them: of a spin that changes, of a lip that tilts.

import { tr } from '../../state/language.js';
import { h, setAttribute, setText, icon } from './dom.js';
import { createFigure } from './figure.js';

/** path: the list in the document; columns [[field, label, fine step]]; next(points) → the point that is added; words for the
 *  button while there are none; into: the table's body, and the table. */
export function createPoints({ store, path, columns, next, words, table, body }) {
  let rows = [];
  const more = h('button', { type: 'button', class: 'link', onclick: add });
  const points = () => store.read(path) ?? [];

  function add() {
    store.set(path, [...points(), next(points())]);
  }
  function remove(index) {
    store.set(
      path,
      points().filter((_, i) => i !== index),
    );
  }
  function createRow(index) {
    const figures = columns.map(([name, label, step]) =>
      createFigure({
        store,
        path: `${path}.${index}.${name}`,
        label: tr('{figure} of point {number}', { figure: label, number: index + 1 }),
        step: () => step,
      }),
    );
    const away = h(
      'button',
      { type: 'button', class: 'icon-button', 'aria-label': tr('Remove point {number}', { number: index + 1 }), onclick: () => remove(index) },
      icon('close'),
    );
    const element = h(
      'tr',
      {},
      figures.map((figure, i) => h('td', { class: i ? 'r' : null }, figure.element)),
      h('td', { class: 'r' }, away),
    );
    return { element, update: () => figures.forEach(figure => figure.update()) };
  }
  function update() {
    if (rows.length !== points().length) {
      rows = points().map((_, index) => createRow(index));
      body.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(table, 'hidden', rows.length === 0);
    setText(more, rows.length === 0 ? words : tr('Add a point'));
    rows.forEach(row => row.update());
  }
  return { more, update };
}
