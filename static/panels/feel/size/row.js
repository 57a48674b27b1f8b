// One wish: what is wished, its figure with its unit, and the way to take it back.

import { formatFigure, parseFigure, shownUnit, toShown } from '../../../state/units.js';
import { h, setAttribute, setChildren, setText, icon } from '../../shared/dom.js';
import { choicesOf, newWish, unitOf } from './wishes.js';
import { createList } from '../../shared/choice.js';

/** wish() → the wish as it stands; change(wish); remove(). */
export function createWishRow({ store, number, wish, change, remove }) {
  const name = `Wish ${number + 1}`;
  const list = createList(
    { 'aria-label': `${name}: what` },
    { options: () => choicesOf(store.feel.limits), chosen: () => wish().id, choose: id => change(newWish(id)) },
  );
  const input = h('input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
    'aria-label': `${name}: figure`,
    onfocus: () => input.select(),
    onblur: commit,
    onkeydown,
  });
  const unit = h('span', { class: 'unit' });
  const value = h('span', { class: 'val' }, input, unit);
  const refusal = h('p', { class: 'refusal', hidden: true });
  const away = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': `Remove wish ${number + 1}`, onclick: remove },
    icon('close'),
  );
  const element = h('div', { class: 'wish' }, list.element, value, away, refusal);
  let typed = false;

  function text() {
    const { value: si } = wish();
    return si === null ? '' : rounded(toShown(si, unitOf(wish()), store.view.units));
  }

  function commit() {
    if (!typed) return;
    typed = false;
    const said = input.value.trim(),
      { value: si } = parseFigure(said, { unit: unitOf(wish()), system: store.view.units });
    if (said === text()) {
      refuse(null);
      return update();
    }
    const measure = unit.textContent ? ` in ${unit.textContent}` : '';
    if (si === undefined) return refuse(`${name} was ${said || 'empty'}; it may be a number${measure}.`);
    change({ ...wish(), value: si });
  }

  function onkeydown(event) {
    if (event.key === 'Enter') commit();
    else if (event.key === 'Escape' && typed) {
      typed = false;
      refuse(null);
      update();
    } else return;
    event.preventDefault();
    event.stopPropagation();
    input.select();
  }
  input.addEventListener('input', () => {
    typed = true;
  });

  /** A refusal of this wish, in words; null: none. */
  function refuse(say) {
    setAttribute(refusal, 'hidden', say ? null : true);
    value.classList.toggle('wrong', Boolean(say));
    setAttribute(input, 'aria-invalid', say ? 'true' : null);
    setChildren(refusal, say ? h('b', {}, say) : null);
  }

  function update() {
    list.update();
    setAttribute(value, 'hidden', unitOf(wish()) === null);
    if (!typed) input.value = text();
    setText(unit, shownUnit(unitOf(wish()) ?? '', store.view.units));
  }
  return { element, update, refuse };
}

// as many figures as were typed, four of what was worked out
function rounded(shown) {
  const short = Number(shown.toPrecision(4));
  return formatFigure(Math.abs(short - shown) < 1e-9 * Math.abs(shown) ? shown : short, 0.1).replace(/\.0$/, '');
}
