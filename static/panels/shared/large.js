// A drawing of the page laid large over the stages by one press; Esc, its own button or another place brings it back. It is the drawing
// itself that moves, so that whatever can be dragged there still can.

import { tr } from '../../state/language.js';
import { $, h, setText, icon } from './dom.js';

/** → {button(offer), toggle(place)}. An offer: {place, title(), part}: the number of its place, words for its head, and the element. */
export function createLarge({ store }) {
  const home = $('#large'),
    stages = $('#stages');
  const title = h('h2', { id: 'large-title' }),
    back = h('button', { type: 'button', class: 'btn', title: tr('Back (Esc)'), onclick: close }, icon('close'), tr('Back to the stages')),
    body = h('div', { class: 'large-body' });
  home.append(h('header', {}, title, back), body);
  const stand = h('p', { class: 'small stand' }, tr('Shown large over the stages.'));
  let offers = [],
    shown = null;

  function button(offer) {
    const element = h(
      'button',
      { type: 'button', class: 'link enlarge', title: tr('Large over the stages (E)'), onclick: () => show({ ...offer, element }) },
      tr('Enlarge'),
    );
    offers = [...offers, { ...offer, element }];
    return element;
  }

  function show(offer) {
    if (shown) close();
    shown = offer;
    setText(title, offer.title());
    offer.part.replaceWith(stand);
    body.replaceChildren(offer.part);
    home.hidden = false;
    stages.inert = true;
    back.focus({ preventScroll: true });
  }

  function close() {
    if (!shown) return;
    const { part, element } = shown,
      focused = home.contains(document.activeElement);
    shown = null;
    home.hidden = true;
    stages.inert = false;
    if (stand.isConnected) stand.replaceWith(part);
    body.replaceChildren();
    if (focused && element.isConnected) element.focus({ preventScroll: true });
  }

  // the one of a place that is in sight there, or back
  function toggle(place) {
    if (shown) return close();
    offers = offers.filter(({ element }) => element.isConnected);
    const offer = offers.find(one => one.place === place && one.element.checkVisibility());
    if (offer) show(offer);
  }

  addEventListener('keydown', event => {
    if (!shown || event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open], :popover-open')) return;
    event.preventDefault();
    close();
  });
  // what it stood in may have been made anew, or another place be open
  store.on('view', () => {
    if (shown && store.view.place !== shown.place) close();
  });
  for (const topic of ['document', 'answer', 'view'])
    store.on(topic, () => {
      if (shown && !stand.isConnected) close();
      else if (shown) setText(title, shown.title());
    });
  return { button, toggle };
}

/** How many px of the window one of a drawing is to be: as its place says (`--drawn`), in type that suits the room. */
export function drawnScale(element) {
  return Number(getComputedStyle(element).getPropertyValue('--drawn')) || 1;
}
