// Words with the terms among them made buttons that explain them, each where it first stands. A line may break beside a button whatever
// follows: signs that touch the term stay with it.

import { tr } from '../../state/language.js';
import { h, setChildren } from './dom.js';

export const TERMS = [
  ...['Coriolis', 'Centrifugal', 'Drag', 'Plain gravity', 'Antispinward', 'Spinward'],
  ...['Angular momentum', 'Hoop stress', 'Gyroscopic torque', 'Gravity gradient', 'Apparent gravity', 'Principal axis', 'Counter group', 'Flat spin'],
  ...['Nutation', 'Precession', 'Inertia', 'Rim speed', 'Spin', 'Tether', 'Residual'],
];
const ENTRY = new Map(TERMS.map(term => [tr(term).toLowerCase(), term]));
const FOUND = new RegExp(`(?<![\\p{L}\\d_])(${[...ENTRY.keys()].join('|')})(?![\\p{L}\\d_])`, 'iu');

/** A list of nodes and strings for a text; `told`: the terms explained so far, added to. explain(term, element). */
export function worded(text, explain, told = new Set()) {
  const [before, word, ...rest] = text.split(FOUND);
  if (!word) return [text];
  const after = rest.join(''),
    term = ENTRY.get(word.toLowerCase());
  if (told.has(term)) return [before + word, ...worded(after, explain, told)];
  told.add(term);
  const button = h('button', { type: 'button', class: 'word', title: tr('What {word} is', { word }), onclick: () => explain(term, button) }, word);
  const [, apart, opening] = /^(.*?)([^\s\p{L}\p{N}]*)$/su.exec(before),
    [, closing, more] = /^([^\s\p{L}\p{N}]*)(.*)$/su.exec(after);
  const kept = opening || closing ? h('span', { class: 'tight' }, opening, button, closing) : button;
  return [apart, kept, ...worded(more, explain, told)];
}

/** The words of an element, their terms to be pressed; made anew only where they are others. */
export function setWorded(element, text, explain) {
  if (element.textContent !== text) setChildren(element, worded(text, explain));
}
