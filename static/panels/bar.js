// The bar: undo, redo, scenes, talk, share, present.

import { $, h, setAttribute, setText, icon } from './shared/dom.js';
import { LONGEST_LINK, toHash } from '../state/persistence.js';
import { withShown } from '../state/shown.js';
import { createCopy } from './shared/files.js';
import { createSheet } from './shared/fold.js';

export function createBar({ store, scenes, share, present, talks }) {
  const undo = h('button', { type: 'button', class: 'icon-button', 'aria-label': 'Undo', title: 'Undo (Ctrl+Z)', onclick: () => store.undo() }, icon('undo'));
  const redo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': 'Redo', title: 'Redo (Ctrl+Shift+Z)', onclick: () => store.redo() },
    icon('redo'),
  );
  $('#bar').append(
    h('span', { class: 'pair' }, undo, redo),
    h('button', { type: 'button', class: 'word', onclick: scenes.show }, 'Scenes'),
    h('button', { type: 'button', class: 'word', onclick: talks.show }, 'Talk'),
    h('button', { type: 'button', class: 'word', onclick: share.show }, 'Share'),
    h('button', { type: 'button', class: 'go', title: 'Present (P)', onclick: present.enter }, 'Present'),
  );
  function update() {
    setAttribute(undo, 'aria-disabled', store.canUndo ? null : true);
    setAttribute(redo, 'aria-disabled', store.canRedo ? null : true);
  }
  for (const topic of ['document', 'shot']) store.on(topic, update);
  update();
}

// Share: the link that carries the whole scene; where it would be too long, the file.

export function createShare({ store, clock, saveScene }) {
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
    const url = `${location.origin}${location.pathname}${withShown(await toHash(store.document, store.fields), store, clock.chosenPace)}`;
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
