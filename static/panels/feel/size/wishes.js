// What may be wished of a habitat, and a wish as the server takes it: a figure with its bound, or all limits of one study.

import { tr, trLater } from '../../../state/language.js';
import { isLimit } from '../figure_words.js';
import { formatFigure, parseFigure, shownUnit, toShown } from '../../../state/units.js';
import { h, setAttribute, setChildren, setText, icon } from '../../shared/dom.js';
import { createList } from '../../shared/choice.js';

const STUDY = 'study:';

// id → words, the server's quantity and bound, its unit, the value it begins with
export const FIGURES = {
  gravity_exactly: { words: trLater('Gravity exactly'), quantity: 'gravity', bound: 'exactly', unit: 'g', first: 0.5 },
  gravity_least: { words: trLater('Gravity at least'), quantity: 'gravity', bound: 'at_least', unit: 'g', first: 0.3 },
  gravity_most: { words: trLater('Gravity at most'), quantity: 'gravity', bound: 'at_most', unit: 'g', first: 1 },
  spin_most: { words: trLater('Spin at most'), quantity: 'spin', bound: 'at_most', unit: 'rpm', first: 2 },
  spin_least: { words: trLater('Spin at least'), quantity: 'spin', bound: 'at_least', unit: 'rpm', first: 1 },
  gradient_most: { words: trLater('Head to foot at most'), quantity: 'gradient', bound: 'at_most', unit: '%', first: 3 },
  rim_speed_least: { words: trLater('Rim speed at least'), quantity: 'rim_speed', bound: 'at_least', unit: 'm/s', first: 10 },
  rim_speed_most: { words: trLater('Rim speed at most'), quantity: 'rim_speed', bound: 'at_most', unit: 'm/s', first: 100 },
  head_turn_most: { words: trLater('Turning the head at most'), quantity: 'head_turn', bound: 'at_most', unit: 'rad/s²', first: 0.3 },
  coriolis_most: { words: trLater('Coriolis at most'), quantity: 'coriolis', bound: 'at_most', unit: '', first: 0.2 },
  radius_most: { words: trLater('Radius at most (a hull)'), quantity: 'radius', bound: 'at_most', unit: 'm', first: 100 },
  radius_least: { words: trLater('Radius at least'), quantity: 'radius', bound: 'at_least', unit: 'm', first: 20 },
};

export const FIRST_WISHES = [newWish('gravity_exactly'), newWish('spin_most')];
export const MOST_WISHES = 12;

/** A wish as the page keeps it: {id, value}; value null for a study. */
export function newWish(id) {
  return { id, value: FIGURES[id]?.first ?? null };
}

/** What a list of wishes offers: the figures, then each study that sets a limit, by year. */
export function choicesOf(limits) {
  const studies = new Map();
  for (const row of limits) {
    const { id, study, year, mine } = row;
    if (mine || !isLimit(row)) continue;
    studies.set(id.split('.')[0], { year, words: tr('All of {study}', { study: `${study} ${year ?? ''}`.trim() }) });
  }
  const listed = [...studies].sort(([, a], [, b]) => (a.year ?? Infinity) - (b.year ?? Infinity) || a.words.localeCompare(b.words, 'en'));
  return [...Object.entries(FIGURES).map(([id, { words }]) => [id, tr(words)]), ...listed.map(([id, { words }]) => [STUDY + id, words])];
}

/** The next wish offered: the first kind not yet among them. */
export function nextWish(wishes) {
  const free = ['radius_most', 'gradient_most', 'rim_speed_least', 'head_turn_most', 'coriolis_most', 'spin_most', 'gravity_least'];
  return newWish(free.find(id => !wishes.some(wish => wish.id === id)) ?? 'gravity_most');
}

function unitOf({ id }) {
  return FIGURES[id]?.unit ?? null;
}

/** As POST /api/size takes it. */
export function asRequest(wishes, person) {
  const list = wishes.map(({ id, value }) =>
    id.startsWith(STUDY)
      ? { kind: 'study', study: id.slice(STUDY.length) }
      : { kind: 'figure', quantity: FIGURES[id].quantity, bound: FIGURES[id].bound, value },
  );
  return person ? { wishes: list, person } : { wishes: list };
}

// One wish: what is wished, its figure with its unit, and the way to take it back.

/** wish() → the wish as it stands; change(wish); remove(). */
export function createWishRow({ store, number, wish, change, remove }) {
  const wished = { number: number + 1 };
  const list = createList(
    { 'aria-label': tr('Wish {number}: what', wished) },
    { options: () => choicesOf(store.feel.limits), chosen: () => wish().id, choose: id => change(newWish(id)) },
  );
  const input = h('input', {
    type: 'text',
    inputmode: 'decimal',
    autocomplete: 'off',
    spellcheck: 'false',
    'aria-label': tr('Wish {number}: figure', wished),
    onfocus: () => input.select(),
    onblur: commit,
    onkeydown,
  });
  const unit = h('span', { class: 'unit' });
  const value = h('span', { class: 'val' }, input, unit);
  const error = h('p', { class: 'refusal', hidden: true });
  const away = h('button', { type: 'button', class: 'icon-button', 'aria-label': tr('Remove wish {number}', wished), onclick: remove }, icon('close'));
  const element = h('div', { class: 'wish' }, list.element, value, away, error);
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
      setError(null);
      return update();
    }
    if (si === undefined) return setError(wrongWords(said || tr('empty')));
    change({ ...wish(), value: si });
  }

  function wrongWords(was) {
    const measure = unit.textContent;
    return measure
      ? tr('Wish {number} was {typed}; it must be a number in {unit}.', { ...wished, typed: was, unit: measure })
      : tr('Wish {number} was {typed}; it must be a number.', { ...wished, typed: was });
  }

  function onkeydown(event) {
    if (event.key === 'Enter') commit();
    else if (event.key === 'Escape' && typed) {
      typed = false;
      setError(null);
      update();
    } else return;
    event.preventDefault();
    event.stopPropagation();
    input.select();
  }
  input.addEventListener('input', () => {
    typed = true;
  });

  /** What is wrong with this wish, in words; null: none. */
  function setError(say) {
    setAttribute(error, 'hidden', say ? null : true);
    value.classList.toggle('wrong', Boolean(say));
    setAttribute(input, 'aria-invalid', say ? 'true' : null);
    setChildren(error, say ? h('b', {}, say) : null);
  }

  function update() {
    list.update();
    setAttribute(value, 'hidden', unitOf(wish()) === null);
    if (!typed) input.value = text();
    setText(unit, shownUnit(unitOf(wish()) ?? '', store.view.units));
  }
  return { element, update, setError };
}

// as many figures as were typed, four of what was worked out
function rounded(shown) {
  const short = Number(shown.toPrecision(4));
  return formatFigure(Math.abs(short - shown) < 1e-9 * Math.abs(shown) ? shown : short, 0.1).replace(/[.,]0$/, '');
}
