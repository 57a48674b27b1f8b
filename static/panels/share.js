// Share: the link that carries the whole scene; where it would be too long, the file.

import { LONGEST_LINK, toHash } from '../state/link.js';
import { createCopy } from './shared/copy.js';
import { h, setText } from './shared/dom.js';
import { createSheet } from './shared/sheet.js';

export function createShare({ store, saveScene }) {
  const sheet = createSheet({ title: 'Share' });
  const words = h('p', { class: 'lead' });
  const link = h('input', {
    type: 'text',
    class: 'linkbox',
    readonly: true,
    'aria-label': 'Link to this scene',
    onfocus: () => link.select(),
  });
  const copy = createCopy({ say: 'Copy the link', text: () => link.value, select: () => link.focus(), kind: 'btn strong' });
  const [copyButton, said] = copy.elements;
  const fileButton = h('button', { type: 'button', class: 'btn', onclick: saveScene }, 'Save the scene as a file');
  sheet.content.append(words, link, h('p', { class: 'links' }, copyButton, fileButton, said));

  async function show() {
    copy.clear();
    const url = `${location.origin}${location.pathname}${await toHash(store.document, store.fields)}`;
    const fits = url.length <= LONGEST_LINK;
    link.hidden = copyButton.hidden = !fits;
    fileButton.classList.toggle('strong', !fits);
    link.value = fits ? url : '';
    setText(
      words,
      fits
        ? 'The link carries the whole scene: whoever opens it with a Rimfall at the same address sees what you see.'
        : `As a link this scene would be ${url.length.toLocaleString('en-US')} characters long; over ${LONGEST_LINK.toLocaleString('en-US')} many programs cut it. Send the file instead.`,
    );
    sheet.show();
  }
  return { show };
}
