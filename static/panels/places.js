// The contents list: one place open at a time, each closed one showing its answer; the strip of numerals on a phone.

import { tr, trLater } from '../state/language.js';
import { $, $$, setAttribute, setText } from './shared/dom.js';

const HEIGHTS = ['low', 'middle', 'high'];
const GRIP_WORDS = [trLater('Height of the page: low'), trLater('Height of the page: middle'), trLater('Height of the page: high')];

export function createPlaces({ store, clock, answers }) {
  const page = $('#page'),
    frame = $('#frame');
  const places = $$('.place').map(element => ({
    number: Number(element.dataset.place),
    element,
    button: $('.head', element),
    body: $('.body', element),
    answer: $('.answer', element),
  }));
  for (const place of places) {
    place.button.addEventListener('click', () => open(store.view.place === place.number && !store.view.folded ? null : place.number));
  }
  for (const button of $$('#strip [data-place]')) {
    button.addEventListener('click', () => (button.dataset.place === 'away' ? away(true) : open(Number(button.dataset.place))));
  }
  createGrip();

  function open(number) {
    away(false);
    store.look({ place: number, folded: false });
  }

  // on a phone the last of the strip shows title, scenes, share and what to take away
  function away(on) {
    page.classList.toggle('away', on);
    drawStrip();
  }

  function drawStrip() {
    const on = page.classList.contains('away');
    for (const button of $$('#strip [data-place]')) {
      const mine = button.dataset.place === 'away' ? on : !on && Number(button.dataset.place) === store.view.place;
      setAttribute(button, 'aria-current', mine ? 'true' : null);
    }
  }

  function update() {
    const { place: number, folded } = store.view;
    frame.classList.toggle('folded', folded);
    page.classList.toggle('has-open', number !== null && number > 1);
    for (const place of places) {
      const opened = place.number === number && !folded;
      place.element.classList.toggle('open', opened);
      setAttribute(place.button, 'aria-expanded', opened);
      setAttribute(place.body, 'hidden', !opened);
    }
    drawStrip();
    updateAnswers();
  }

  function updateAnswers() {
    for (const place of places) setText(place.answer, answers[place.number]());
  }

  // three heights of the page on a phone: a tap goes to the next, a drag to the nearest
  function createGrip() {
    const grip = $('#grip');
    let height = 1;
    const set = next => {
      height = Math.min(2, Math.max(0, next));
      frame.dataset.page = HEIGHTS[height];
      setAttribute(grip, 'aria-label', tr(GRIP_WORDS[height]));
    };
    let from = null;
    grip.addEventListener('pointerdown', event => {
      from = event.clientY;
      grip.setPointerCapture(event.pointerId);
    });
    grip.addEventListener('pointerup', event => {
      const gone = from === null ? 0 : from - event.clientY;
      if (Math.abs(gone) > 24) set(height + Math.sign(gone));
      else set((height + 1) % 3);
      from = null;
    });
    grip.addEventListener('keydown', event => {
      const step = { ArrowUp: 1, ArrowDown: -1, Enter: 1, ' ': 1 }[event.key];
      if (!step) return;
      event.preventDefault();
      set(event.key.startsWith('Arrow') ? height + step : (height + 1) % 3);
    });
    set(1);
  }

  let pace = clock.pace;
  clock.on(() => {
    if (clock.pace !== pace) {
      pace = clock.pace;
      updateAnswers();
    }
  });
  store.on('view', update);
  store.on('document', updateAnswers);
  store.on('answer', updateAnswers);
  store.on('feel', updateAnswers);
  store.on('shot', updateAnswers);
  store.on('ship', updateAnswers);
  update();
}
