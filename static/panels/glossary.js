// "Glossary": a sheet of every term the page uses. Its entries are fetched when they are first wanted.

import { $, h } from './shared/dom.js';
import { createSheet } from './shared/fold.js';

export function createGlossary({ kinds }) {
  const sheet = createSheet({ title: 'Glossary' });
  const list = h('dl', { class: 'glossary' });
  sheet.content.append(list);
  let filling = null;

  const fill = () =>
    (filling ??= import('./glossary_words.js').then(({ glossaryOf }) =>
      list.append(...glossaryOf(kinds).flatMap(([term, words]) => [h('dt', { tabindex: -1, id: idOf(term) }, term), h('dd', {}, words)])),
    ));

  /** Opens it; at a term where one is given. */
  async function show(term = null) {
    sheet.show();
    await fill();
    const entry = term && document.getElementById(idOf(term));
    if (!entry) return;
    entry.scrollIntoView({ block: 'start' });
    entry.focus({ preventScroll: true });
  }
  $('#glossary-link').addEventListener('click', () => show());
  return { show };
}

function idOf(term) {
  return `word-${term.toLowerCase().replace(/\W+/g, '-')}`;
}
