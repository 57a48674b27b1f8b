// Where things stand on the sheet: what on the left, how on the right, Save at the foot and always in sight.

import { h } from '../shared/dom.js';

/** `drawable`: the stages can be drawn into pictures. `caution`: what stands at the foot. Gives {page, how, pictures}: the link to the page to print, and the two sections. */
export function layOut({ sheet, rows, how, facts, pictures, trouble, progress, save, drawable, caution }) {
  const page = h('a', { class: 'link', href: 'brief', target: '_blank', rel: 'noopener' }, 'The page to print');
  const third = words => h('h3', { class: 'third' }, words);
  const parts = {
    page,
    how: h('section', {}, third('How'), how.element, facts),
    pictures: h('section', {}, third('Pictures'), pictures.element),
  };
  const none = h('p', { class: 'small' }, 'Pictures and clips need WebGL, which this browser does not give.');
  sheet.element.classList.add('away-sheet');
  sheet.content.append(
    h('div', {}, rows.element, h('p', { class: 'links' }, page, h('span', { class: 'small' }, 'opens in a new tab'))),
    h('div', { class: 'how-side' }, parts.how, parts.pictures, drawable ? null : none),
    h('div', { class: 'away-foot' }, trouble, h('p', { class: 'small caution-line' }, caution), h('div', { class: 'between' }, progress.element, save)), // prettier-ignore
  );
  return parts;
}
