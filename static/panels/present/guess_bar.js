// What the desk says of the room's guesses, and the buttons that place one without a pointer. It names nobody.

import { tr, trMany } from '../../state/language.js';
import { STAGE_DIGITS, lengthWords, offWords, whereWords } from '../../state/guesses.js';
import { h, setText } from '../shared/dom.js';

const STEP_M = 0.1;

export function createGuessBar({ store }) {
  const { guesses } = store;
  const says = h('p', { class: 'guess-says', 'aria-live': 'polite' });
  const last = () => guesses.own.length - 1;
  const by = step_m => guesses.move(last(), guesses.own[last()] + step_m);
  const button = (say, onclick, title = null, label = null) => h('button', { type: 'button', title, 'aria-label': label, onclick }, say);
  const place = button(tr('Place a guess'), () => guesses.place(guesses.from_m), tr('On the deck where it is let go; then move it'));
  const moves = [
    button(tr('−0.1\u00a0m'), () => by(-STEP_M), tr('The last guess, 0.1\u00a0m antispinward'), tr('−0.1\u00a0m: the last guess antispinward')),
    button(tr('+0.1\u00a0m'), () => by(STEP_M), tr('The last guess, 0.1\u00a0m spinward'), tr('+0.1\u00a0m: the last guess spinward')),
    button(tr('Take it back'), () => guesses.drop(last())),
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
  const count = marks.length;
  if (!guesses.open && !revealed) return count ? trMany('One guess is in.', '{count} guesses are in.', count) : tr('No guess was placed.');
  if (!revealed)
    return count
      ? trMany('{motion}: where does it come down? One guess so far.', '{motion}: where does it come down? {count} guesses so far.', count, { motion })
      : tr('{motion}: where does it come down? Click on the deck.', { motion });
  if (landing === null) return tr('{motion}: it does not come down.', { motion });
  const where = along_m => whereWords(guesses.spinward(along_m), units);
  const lands = tr('{motion}: it comes down {where}.', { motion, where: whereWords(guesses.spinward(landing), units, STAGE_DIGITS) });
  if (!count) return lands;
  const off = offWords(guesses.nearest_m, units);
  if (count === 1) return `${lands} ${tr('The guess was {off} off.', { off })}`;
  const { median_m, from_m, to_m } = guesses.spread;
  const nearest = `${lands} ${tr('Nearest of {count} guesses: {off} off.', { count, off })}`;
  if (count < 4) return nearest;
  return `${nearest} ${tr('The middle one: {middle}; half of them from {from} to {to}.', { middle: where(median_m), ...halfWords(from_m, to_m) })}`;

  // on one side the way is said once
  function halfWords(...ends) {
    const ways = ends.map(guesses.spinward);
    if (ways[0] * ways[1] < 0) return { from: where(from_m), to: where(to_m) };
    const [near, far] = ways.map(Math.abs).sort((one, other) => one - other);
    return { from: lengthWords(near, units), to: whereWords(Math.sign(ways[0] || ways[1]) * far, units) };
  }
}
