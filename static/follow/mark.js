// Where somebody thinks it lands: a slider, a step to either side, and one press that places it; once it has come down, how far off that was.

import { tr } from '../state/language.js';
import { h, setAttribute, setText } from '../panels/shared/dom.js';
import { STAGE_DIGITS, lengthWords, nearestWay, offWords, whereWords } from '../state/guesses.js';

const STEP_M = 0.1;

// among those of others; of two that are equally far off neither is the nearer
function amongWords({ nearer, of }) {
  if (nearer === of) return tr('the nearest of {count}', { count: of + 1 });
  return nearer ? tr('nearer than {nearer} of {of} others', { nearer, of }) : tr('no other is farther off');
}

/** `place(along_m)` → promise of where the mark stands; `moved(along_m)`: it is somewhere else, not placed yet. */
export function createMark({ element, place, moved }) {
  const slider = h('input', { type: 'range', id: 'mark', step: STEP_M, oninput: () => put(Number(slider.value)) });
  const figure = h('output', { for: 'mark' });
  const step = (by, sign, label) => h('button', { type: 'button', 'aria-label': label, onclick: () => put(stands_m() + by) }, sign);
  const send = h('button', { type: 'button', class: 'place', onclick: press });
  const told = h('p', { class: 'mark-told', role: 'status' });
  const row = h('div', { class: 'mark-row' }, step(-STEP_M, '−', tr('A tenth of a metre less')), slider, step(STEP_M, '+', tr('A tenth of a metre more')));
  const ends = h('p', { class: 'mark-ends', 'aria-hidden': true }, h('span'), h('span')); // the slider says its figures itself
  const verdict = h('p', { class: 'verdict', role: 'status' });
  element.append(h('div', { class: 'mark-head' }, h('label', { for: 'mark' }, tr('Where will it land?')), figure), row, ends, send, told, verdict);
  let state = { ask: null, along_m: null, placed_m: null }, // along_m: where the slider stands, null until a hand has moved it
    units = 'si',
    round_m = null;

  const metres = length_m => lengthWords(Math.abs(length_m), units);
  const middle_m = () => (state.ask.low_m + state.ask.high_m) / 2; // where it is let go
  const wayOf = along_m => (Math.abs(along_m - middle_m()) < 0.05 ? '' : along_m < middle_m() ? tr('antispinward') : tr('spinward'));
  const words = along_m => [metres(along_m - middle_m()), wayOf(along_m)].filter(Boolean).join(' ');

  const stands_m = () => state.along_m ?? middle_m();

  function put(along_m) {
    const { low_m, high_m } = state.ask;
    const before_m = state.along_m;
    state.along_m = Math.round(10 * Math.min(high_m, Math.max(low_m, along_m))) / 10;
    say();
    if (state.along_m !== before_m) moved(state.along_m);
  }

  async function press() {
    const asked = state;
    send.disabled = true;
    try {
      put(stands_m());
      asked.placed_m = await place(asked.ask.id, asked.along_m);
      tell('');
    } catch ({ message }) {
      tell(message);
    }
    send.disabled = false;
    say();
  }

  function tell(trouble) {
    state.trouble = trouble;
    told.classList.toggle('trouble', Boolean(trouble));
  }

  function say() {
    const { ask, placed_m, trouble, off } = state,
      along_m = stands_m();
    slider.value = along_m;
    setAttribute(slider, 'aria-valuetext', words(along_m));
    const at_m = ask.revealed && placed_m !== null ? placed_m : along_m;
    figure.replaceChildren(metres(at_m - middle_m()), ' ', h('small', {}, wayOf(at_m)));
    setText(send, placed_m === null ? tr('Place my mark') : tr('Move my mark'));
    setText(told, trouble || toldOf(ask, placed_m));
    row.hidden = ends.hidden = send.hidden = ask.revealed;
    setText(ends.firstChild, whereWords(ask.low_m - middle_m(), units));
    setText(ends.lastChild, whereWords(ask.high_m - middle_m(), units));
    figure.hidden = ask.revealed && placed_m === null;
    verdict.hidden = !off;
    if (!off) return;
    verdict.replaceChildren(
      h('b', {}, tr('{length} off', { length: offWords(Math.abs(off.off_m), units) })),
      ...(off.of ? [h('span', {}, amongWords(off))] : []),
    );
  }

  function toldOf({ revealed, down, landing_m }, placed_m) {
    if (down && landing_m === null) return tr('It does not come down.');
    if (down) return landedWords();
    if (revealed) return placed_m === null ? tr('You placed no mark.') : tr('Now watch.');
    return placed_m === null ? '' : tr('Your mark stands at {place}.', { place: words(placed_m) });
  }

  const landedWords = () => tr('It lands {where}.', { where: whereWords(nearestWay(state.ask.landing_m - middle_m(), round_m), units, STAGE_DIGITS) });

  return {
    /** `ask` as in a now, or null; `off`: as verdictOf has it, once it is known; `round_m`: how long the deck is all round, or null. */
    update(ask, { units: system, off = null, round_m: length_m = null }) {
      units = system;
      round_m = length_m;
      element.hidden = ask === null;
      if (ask === null) return;
      if (state.ask?.id !== ask.id) {
        state = { ask, along_m: null, placed_m: null };
        Object.assign(slider, { min: ask.low_m, max: ask.high_m });
      }
      Object.assign(state, { ask, off });
      setText(element.querySelector('label'), ask.revealed ? tr('Your mark') : tr('Where will “{motion}” land?', { motion: ask.motion }));
      say();
    },
    put: along_m => state.ask && !state.ask.revealed && put(along_m),
    get placed_m() {
      return state.placed_m;
    },
    get along_m() {
      return state.along_m;
    },
  };
}
