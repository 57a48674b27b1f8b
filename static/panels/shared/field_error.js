// What is wrong with a figure, in words: said at its field and as an alert.

import { locale, tr } from '../../state/language.js';
import { fieldOf, readAt } from '../../state/fields.js';
import { formatFigure, siUnit, withUnit } from '../../state/units.js';
import { h, setAttribute, setChildren } from './dom.js';

/** A typed text that may not be: the document stays as it was. */
export function sayInvalid(store, path, typed) {
  const field = fieldOf(store.fields, path);
  store.tell({
    kind: 'refused',
    field: path,
    say: tr('{field} was {typed}; it must be {may_be}.', { field: field?.label ?? path, typed, may_be: field?.may_be ?? tr('a number') }),
  });
}

/** A slot under a row: shows the error of its own field, and what the stages still show. */
export function createFieldError({ store, path, frame }) {
  const element = h('p', { class: 'refusal', hidden: true });
  function update() {
    const notice = store.notice;
    const mine = notice?.kind === 'refused' && notice.field === path;
    const came = mine && element.hidden;
    setAttribute(element, 'hidden', !mine);
    frame?.classList.toggle('wrong', mine);
    if (mine) setChildren(element, h('b', {}, notice.say), ' ', stillShown(store, path));
    if (came && element.checkVisibility()) element.scrollIntoView({ block: 'nearest' });
  }
  return { element, update };
}

export function stillShown(store, path) {
  const scene = path.startsWith('own_limits.') ? null : store.answer?.scene; // no stage shows a limit
  const value = scene ? readAt(store.fields, scene, path) : null;
  const { unit = '', whole = false } = fieldOf(store.fields, path) ?? {};
  if (path.startsWith('craft.')) return stillAnswered(value, unit);
  if (typeof value !== 'number') return '';
  return tr('The stages still show {figure}.', { figure: withUnit(formatFigure(value, whole ? 1 : 0.1), siUnit(unit)) });
}

// no stage shows a figure of the craft: its answers are what stays
function stillAnswered(value, unit) {
  if (typeof value !== 'number') return tr('The answers are still those from before.');
  const figure = value.toLocaleString(locale, { maximumSignificantDigits: 6 }).replace('-', '−');
  return tr('The answers are still for {figure}.', { figure: withUnit(figure, siUnit(unit)) });
}
