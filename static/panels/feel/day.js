// A day aboard: a paragraph for each of five moments, with the numbers of this design, to be copied.

import { tr } from '../../state/language.js';
import { h, setText } from '../shared/dom.js';
import { createCopy, selectWords } from '../shared/files.js';
import { premisesWords } from './figure_words.js';
import { createFold } from '../shared/fold.js';

export function createFeelDay({ element, store }) {
  const list = h('div', {}),
    premises = h('p', { class: 'small' }),
    whole = h('div', {}, list, premises);
  const all = createCopy({ say: tr('Copy all'), text: () => dayWords(store.feel, store.view.units), select: () => selectWords(opened()) });
  element.append(h('h3', { class: 'third' }, tr('A day aboard, in words')), whole, h('p', { class: 'links' }, ...all.elements));
  let moments = [];

  // to be selected and copied by hand they must all be there to see
  function opened() {
    moments.forEach(moment => moment.open());
    return whole;
  }
  function update() {
    const { words } = store.feel;
    if (moments.length !== words.length) {
      moments = words.map((_, index) => createMoment({ text: () => store.feel.words[index] }));
      list.replaceChildren(...moments.map(moment => moment.element));
    }
    moments.forEach(moment => moment.update());
    setText(premises, premisesWords(store.feel, store.view.units));
  }
  return { update };
}

/** The whole day with its titles, and last what it is said for. */
function dayWords(feel, units) {
  return [...feel.words.map(({ title, text }) => `${title}\n${text}`), `${premisesWords(feel, units)} Rimfall.`].join('\n\n');
}

function createMoment({ text }) {
  const words = createLiveText(),
    copy = createCopy({ text: () => text().text, select: () => selectWords(words.element) }),
    rounded = createRounded({ text }),
    inner = h('div', {}, words.element, h('p', { class: 'links' }, ...copy.elements), rounded.element);
  const fold = createFold({
    words: () => text().title,
    make: () => [{ element: inner, update: () => (words.set(text().text), rounded.update()) }],
    turned: copy.clear,
  });
  return {
    element: h('section', { class: 'moment' }, h('h4', {}, fold.button), fold.element),
    open: () => fold.element.hidden && fold.toggle(),
    update() {
      fold.update();
      copy.name(text().title);
    },
  };
}

/** The same rounded, as an author would have it, below the exact words. */
function createRounded({ text }) {
  const words = h('p', { class: 'prose' }),
    copy = createCopy({ text: () => text().prose, select: () => selectWords(words), kind: 'link' });
  const inside = {
    element: h('div', {}, words, h('p', { class: 'links' }, ...copy.elements)),
    update() {
      if (words.textContent !== text().prose) copy.clear();
      setText(words, text().prose);
      copy.name(tr('{title}, as prose', { title: text().title }));
    },
  };
  const fold = createFold({ words: () => tr('As prose'), make: () => [inside], inner: h('div', { class: 'as-prose' }) });
  return { element: h('div', {}, fold.button, fold.element), update: fold.update };
}

// A paragraph whose numbers change where they stand: those that have just changed are underlined for a moment.

const SHOWN_MS = 1200;
const NUMBER = /([−-]?\d(?:[\d,.]*\d)?)/; // in the signs of any language

/** ['It takes ', '0.61', ' s.']: words and numbers by turns, beginning with words. */
export function numbersApart(text) {
  return text.split(NUMBER);
}

function createLiveText() {
  const element = h('p', { class: 'lead' });
  let parts = [],
    spans = [],
    calm = null;

  /** Only the numbers are touched where the words are the same. */
  function set(text) {
    const next = numbersApart(text);
    const same = next.length === parts.length && next.every((part, i) => i % 2 || part === parts[i]);
    if (!same) build(next);
    else next.forEach((part, i) => i % 2 && part !== parts[i] && change(spans[i], part));
    parts = next;
  }
  function build(next) {
    spans = next.map((part, i) => (i % 2 ? h('span', { class: 'live' }, part) : part));
    element.replaceChildren(...spans);
  }
  function change(span, figure) {
    setText(span, figure);
    span.classList.add('changed');
    clearTimeout(calm);
    calm = setTimeout(() => element.querySelectorAll('.changed').forEach(one => one.classList.remove('changed')), SHOWN_MS);
  }
  return { element, set };
}
