// The bar: undo, redo, scenes, share.

import { $, h, setAttribute } from './shared/dom.js';
import { icon } from './shared/icons.js';

export function createBar({ store, scenes, share }) {
  const undo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': 'Undo', title: 'Undo (Ctrl+Z)', onclick: () => store.undo() },
    icon('undo'),
  );
  const redo = h(
    'button',
    { type: 'button', class: 'icon-button', 'aria-label': 'Redo', title: 'Redo (Ctrl+Shift+Z)', onclick: () => store.redo() },
    icon('redo'),
  );
  $('#bar').append(
    h('span', { class: 'pair' }, undo, redo),
    h('button', { type: 'button', class: 'word', onclick: scenes.show }, 'Scenes'),
    h('button', { type: 'button', class: 'go', onclick: share.show }, 'Share'),
  );
  function update() {
    setAttribute(undo, 'aria-disabled', store.canUndo ? null : true);
    setAttribute(redo, 'aria-disabled', store.canRedo ? null : true);
  }
  store.on('document', update);
  update();
}
