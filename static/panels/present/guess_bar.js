// What the desk says of the room's guesses, and the buttons that place one without a pointer. It names nobody.

import { lengthWords, offWords } from '../../state/guesses.js';
import { h, setText } from '../shared/dom.js';

const STEP_M = 0.1;
const STAGE_DIGITS = 2; // of a landing, as the stage writes its distance

export function createGuessBar({ store }) {
  const { guesses } = store;
  const says = h('p', { class: 'guess-says', 'aria-live': 'polite' });
  const last = () => guesses.own.length - 1;
  const by = step_m => guesses.move(last(), guesses.own[last()] + step_m);
  const button = (say, onclick, title = null, label = null) => h('button', { type: 'button', title, 'aria-label': label, onclick }, say);
  const place = button('Place a guess', () => guesses.place(guesses.from_m), 'On the deck where it is let go; then move it');
  const moves = [
    button('−0.1\u00a0m', () => by(-STEP_M), 'The last guess, 0.1\u00a0m antispinward', '−0.1\u00a0m: the last guess antispinward'),
    button('+0.1\u00a0m', () => by(STEP_M), 'The last guess, 0.1\u00a0m spinward', '+0.1\u00a0m: the last guess spinward'),
    button('Take it back', () => guesses.drop(last())),
  ];
  const element = h('div', { class: 'guess-bar', hidden: true }, says, place, ...moves);

  function update() {
    element.hidden = guesses.motion === null;
    if (element.hidden) return;
    setText(says, guessWords(guesses, store.view.units));
    place.hidden = !guesses.open;
    for (const one of moves) one.hidden = !guesses.open || last() < 0;
  }
  store.on('guesses', update);
  store.on('view', patch => patch && 'units' in patch && update());
  update();
  return { element };
}

/** What is said of them, in sentences: how many, and once the landing has been seen how near. */
export function guessWords(guesses, units) {
  const { motion, marks, landing_m: landing, revealed } = guesses;
  const count = marks.length === 1 ? 'One guess' : `${marks.length} guesses`;
  if (!guesses.open && !revealed) return marks.length ? `${count} ${marks.length === 1 ? 'is' : 'are'} in.` : 'No guess was placed.';
  if (!revealed) return marks.length ? `${motion}: where does it come down? ${count} so far.` : `${motion}: where does it come down? Click on the deck.`;
  if (landing === null) return `${motion}: it does not come down.`;
  const where = along_m => whereWords(guesses.spinward(along_m), units);
  const lands = `${motion}: it comes down ${whereWords(guesses.spinward(landing), units, STAGE_DIGITS)}.`;
  if (!marks.length) return lands;
  const off = offWords(guesses.nearest_m, units);
  if (marks.length === 1) return `${lands} The guess was ${off} off.`;
  const { median_m, from_m, to_m } = guesses.spread;
  const nearest = `${lands} Nearest of ${marks.length} guesses: ${off} off.`;
  if (marks.length < 4) return nearest;
  const ends = [from_m, to_m].map(guesses.spinward);
  if (ends[0] * ends[1] < 0) return `${nearest} The middle one: ${where(median_m)}; half of them from ${where(from_m)} to ${where(to_m)}.`;
  const [near, far] = ends.map(Math.abs).sort((a, b) => a - b);
  return `${nearest} The middle one: ${where(median_m)}; half of them from ${lengthWords(near, units)} to ${whereWords(Math.sign(ends[0] || ends[1]) * far, units)}.`;
}

const whereWords = (way_m, units, digits) => `${lengthWords(Math.abs(way_m), units, digits)} ${way_m < 0 ? 'antispinward' : 'spinward'}`;
