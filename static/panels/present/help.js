// The list of keys while presenting; each is a button too, for a hand that has no keys.

import { tr } from '../../state/language.js';
import { PRESSES } from '../../state/presenting.js';
import { h } from '../shared/dom.js';
import { createSheet } from '../shared/fold.js';

/** `offered`: which of the presses there are. */
export function createHelp({ press, offered = () => true }) {
  const sheet = createSheet({ title: tr('Keys while presenting') });
  const row = ({ what, listed, say }) =>
    h(
      'tr',
      {},
      h('th', { scope: 'row' }, tr(listed)),
      h('td', {}, h('button', { type: 'button', class: 'link', onclick: () => (sheet.close(), press(what)) }, tr(say))),
    );
  sheet.content.append(
    h('table', { class: 'keys' }, h('tbody', {}, PRESSES.filter(({ what }) => what !== 'help' && offered(what)).map(row))),
    h(
      'p',
      { class: 'small' },
      tr('A swipe to the left goes on, to the right back. With Shift the arrows look round on a stage, and move a slider that was reached with Tab.'),
    ),
  );
  return sheet;
}
