// The bar: undo, redo, scenes, talk, share, present.

import { tr } from '../state/language.js';
import { written } from '../state/units.js';
import { $, h, setAttribute, setText, icon } from './shared/dom.js';
import { LONGEST_LINK, toHash } from '../state/persistence.js';
import { withShown } from '../state/shown.js';
import { createCopy, createSaved } from './shared/files.js';
import { createSheet } from './shared/fold.js';

export function createBar({ store, scenes, share, present, talks }) {
  const undo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Undo'), title: tr('Undo (Ctrl+Z)'), onclick: () => store.undo() },
    icon('undo'),
  );
  const redo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': tr('Redo'), title: tr('Redo (Ctrl+Shift+Z)'), onclick: () => store.redo() },
    icon('redo'),
  );
  $('#bar').append(
    h('span', { class: 'pair' }, undo, redo),
    h('button', { type: 'button', class: 'word', onclick: scenes.show }, tr('Scenes')),
    h('button', { type: 'button', class: 'word', onclick: talks.show }, tr('Talk')),
    h('button', { type: 'button', class: 'word', onclick: share.show }, tr('Share')),
    h('button', { type: 'button', class: 'go', title: tr('Present (P)'), onclick: present.enter }, tr('Present')),
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
  const sheet = createSheet({ title: tr('Share') });
  const words = h('p', { class: 'lead' });
  const link = h('input', {
    type: 'text',
    class: 'linkbox',
    readonly: true,
    'aria-label': tr('Link to this scene'),
    onfocus: () => link.select(),
  });
  const copy = createCopy({ say: tr('Copy the link'), text: () => link.value, select: () => link.focus(), kind: 'btn strong' });
  const [copyButton, said] = copy.elements;
  const fileButton = h('button', { type: 'button', class: 'btn', onclick: () => saved.tell(saveScene()) }, tr('Save the scene as a file'));
  const saved = createSaved();
  sheet.content.append(words, link, h('p', { class: 'links' }, copyButton, fileButton, said, saved.element));

  async function show() {
    copy.clear();
    saved.clear();
    const url = `${location.origin}${location.pathname}${withShown(await toHash(store.document, store.fields), store, clock.chosenPace)}`;
    const fits = url.length <= LONGEST_LINK;
    link.hidden = copyButton.hidden = !fits;
    fileButton.classList.toggle('strong', !fits);
    link.value = fits ? url : '';
    setText(
      words,
      fits
        ? tr('The link carries the whole scene: whoever opens it with a Rimfall at the same address sees what you see.')
        : tr('As a link this scene would be {long} characters long; over {most} many programs cut it. Send the file instead.', {
            long: written(url.length, 0),
            most: written(LONGEST_LINK, 0),
          }),
    );
    sheet.show();
  }
  return { show };
}
