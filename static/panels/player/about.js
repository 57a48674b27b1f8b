// What the file is: what becomes of each motion in words, the keys, the caution, and which version of Rimfall wrote it.

import { tr } from '../../state/language.js';
import { h, setChildren } from '../shared/dom.js';
import { createSheet } from '../shared/fold.js';
import { keysOf } from './keys.js';

/** `notes`: what the file says of itself; `words`: [{short, words}] of each motion. */
export function createAbout({ notes, words }) {
  const sheet = createSheet({ title: tr('About this file') });
  const motions = notes.scene?.motions ?? [];
  setChildren(
    sheet.content,
    notes.talk?.about && h('p', {}, notes.talk.about),
    h(
      'p',
      {},
      tr('{title}. Written by {program}; it plays without a server or a network, and opens again in Rimfall.', {
        title: notes.title || tr('Untitled'),
        program: notes.program,
      }),
    ),
    h(
      'dl',
      { class: 'player-words' },
      words.flatMap((of, i) => [h('dt', {}, motions[i].name || tr('Motion {number}', { number: i + 1 })), h('dd', {}, of.words.join(' '))]),
    ),
    h(
      'table',
      { class: 'keys' },
      h(
        'tbody',
        {},
        keysOf(Boolean(notes.talk)).map(([, key, say]) => h('tr', {}, h('th', { scope: 'row' }, tr(key)), h('td', {}, tr(say)))),
      ),
    ),
    h('p', { class: 'caution-line' }, notes.caution),
  );
  const button = h('button', { type: 'button', class: 'player-button', onclick: sheet.show }, tr('About'));
  return { button, show: sheet.show };
}
