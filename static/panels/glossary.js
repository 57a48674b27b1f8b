// "Glossary": a sheet of every term the page uses, and the entry of one where that is pressed. The entries are fetched when they are
// first wanted.

import { tr } from '../state/language.js';
import { $, h, s } from './shared/dom.js';
import { createSheet } from './shared/fold.js';

const GAP_PX = 6;

export function createGlossary({ kinds }) {
  const sheet = createSheet({ title: tr('Glossary') });
  const list = h('dl', { class: 'glossary' });
  sheet.content.append(list);
  const entry = h('div', { popover: 'auto', class: 'explained', role: 'dialog', tabindex: -1 });
  document.body.append(entry);
  let loading = null,
    filled = false;

  const load = () => (loading ??= Promise.all([import('./glossary_words.js'), import('./glossary_more.js')]));

  async function words() {
    const [{ glossaryOf }] = await load();
    return glossaryOf(kinds);
  }

  /** Opens it; at a term where one is given. */
  async function show(term = null) {
    sheet.show();
    const all = await words();
    if (!filled) list.append(...all.flatMap(([one, says]) => [h('dt', { tabindex: -1, id: idOf(one) }, tr(one)), h('dd', {}, tr(says))]));
    filled = true;
    const found = term && document.getElementById(idOf(term));
    if (!found) return;
    found.scrollIntoView({ block: 'start' });
    found.focus({ preventScroll: true });
  }

  /** The entry of a term beside the element that was pressed, with how it is worked out; the sheet where it has none. */
  async function explain(term, from) {
    const found = (await words()).find(([one]) => idOf(one) === idOf(term));
    if (!found || !from?.isConnected) return show(term);
    const [name, says] = found;
    const [, { moreOf }] = await load();
    entry.setAttribute('aria-label', tr(name));
    entry.replaceChildren(...parts(name, says, moreOf(name)));
    entry.showPopover();
    place(entry, from.getBoundingClientRect());
    entry.focus({ preventScroll: true });
  }

  function parts(term, says, more) {
    const whole = h('button', { type: 'button', class: 'link', onclick: () => (entry.hidePopover(), show(term)) }, tr('All words')),
      close = h('button', { type: 'button', class: 'link', onclick: () => entry.hidePopover() }, tr('Close'));
    return [
      h('p', { class: 'explained-term' }, tr(term)),
      more && drawing(more.sketch),
      h('p', {}, tr(says)),
      more && h('p', { class: 'formula' }, more.formula),
      more && h('p', { class: 'small' }, tr('Source: {source}', { source: more.source })),
      h('p', { class: 'links' }, whole, close),
    ].filter(Boolean);
  }

  $('#glossary-link').addEventListener('click', () => show());
  return { show, explain, sheet };
}

function drawing(lines) {
  const line = ([d, dashed]) => s('path', { d, 'stroke-dasharray': dashed ? '3 3' : null });
  return s('svg', { class: 'sketch', viewBox: '0 0 96 64', width: 96, height: 64, 'aria-hidden': true }, lines.map(line));
}

// Under what was pressed, or over it where there is no room; within the window.
function place(element, box) {
  const { offsetWidth: wide, offsetHeight: high } = element;
  const under = box.bottom + GAP_PX,
    fits = under + high <= innerHeight - GAP_PX;
  element.style.left = `${Math.max(GAP_PX, Math.min(box.left, innerWidth - wide - GAP_PX))}px`;
  element.style.top = `${Math.max(GAP_PX, fits ? under : Math.min(box.top - high - GAP_PX, innerHeight - high - GAP_PX))}px`;
}

// of a term as the code has it, or as the page or the server says it
function idOf(term) {
  return `word-${tr(term).toLowerCase().replace(/\W+/g, '-')}`;
}
