// What the file is: what becomes of each motion in words, the keys, the caution, and which version of Rimfall wrote it.

import { h, setChildren } from '../shared/dom.js';
import { createSheet } from '../shared/fold.js';
import { keysOf } from './keys.js';

/** `notes`: what the file says of itself; `words`: [{short, words}] of each motion. */
export function createAbout({ notes, words }) {
  const sheet = createSheet({ title: 'About this file' });
  const motions = notes.scene?.motions ?? [];
  setChildren(
    sheet.content,
    notes.talk?.about && h('p', {}, notes.talk.about),
    h('p', {}, `${notes.title || 'Untitled'}. Written by ${notes.program}; it plays without a server or a network, and opens again in Rimfall.`),
    h(
      'dl',
      { class: 'player-words' },
      words.flatMap((of, i) => [h('dt', {}, motions[i].name || `Motion ${i + 1}`), h('dd', {}, of.words.join(' '))]),
    ),
    h(
      'table',
      { class: 'keys' },
      h(
        'tbody',
        {},
        keysOf(Boolean(notes.talk)).map(([, key, say]) => h('tr', {}, h('th', { scope: 'row' }, key), h('td', {}, say))),
      ),
    ),
    h('p', { class: 'caution-line' }, notes.caution),
  );
  const button = h('button', { type: 'button', class: 'player-button', onclick: sheet.show }, 'About');
  return { button, show: sheet.show };
}
