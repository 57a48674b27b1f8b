// The scene's title, edited where it stands, and the stage direction that follows from the answer.

import { tr, trLater } from '../state/language.js';
import { fieldOf } from '../state/fields.js';
import { stageDirection } from '../state/habitat_words.js';
import { $, h, setText } from './shared/dom.js';

const UNTITLED = trLater('Untitled scene');

/** After another scene was opened: its name has the focus, or where that is out of sight a stage, so that what follows is about it.
 *  A reader who went on to something else meanwhile stays there. */
export function focusScene() {
  const now = document.activeElement;
  // what was in a sheet that has closed has the focus until the page is drawn again
  if (now && now !== document.body && now.checkVisibility() && !now.closest('#bar, #strip')) return;
  const title = $('#title');
  title.tabIndex = -1;
  (title.checkVisibility() ? title : $('.stage-view')).focus({ preventScroll: true });
}

export function createTitle({ store }) {
  const text = h('span', {
    contenteditable: 'plaintext-only',
    role: 'textbox',
    'aria-label': tr('Scene title'),
    spellcheck: 'false',
    title: tr('Click to rename the scene'),
    onblur: keep,
    onkeydown,
  });
  text.dataset.untitled = tr(UNTITLED);
  $('#title').replaceChildren(text);

  function keep() {
    const longest = fieldOf(store.fields, 'title')?.max ?? 200;
    const title = text.textContent.replace(/\s+/g, ' ').trim().slice(0, longest);
    if (title !== store.read('title')) store.set('title', title);
    update();
  }
  function onkeydown(event) {
    if (event.key === 'Escape') setText(text, store.read('title') ?? '');
    if (event.key === 'Enter' || event.key === 'Escape') {
      event.preventDefault();
      text.blur();
    }
  }
  function update() {
    if (document.activeElement !== text) setText(text, store.read('title') ?? '');
    const title = `${store.read('title') || tr(UNTITLED)} · Rimfall`;
    if (document.title !== title) document.title = title;
    setText($('#direction'), stageDirection(store));
  }
  store.on('document', update);
  store.on('answer', update);
  store.on('view', update);
  store.on('document', ({ path }) => {
    if (path?.startsWith('habitat.')) $('#hint').hidden = true;
  });
  update();
}
