// Out of the page and into it: words on the clipboard, files saved and read.

import { tr, trMany } from '../../state/language.js';
import { h, setAttribute, setText } from './dom.js';

/** text() → what is copied; select() selects what can be copied by hand; kind: the button's class. */
export function createCopy({ say = tr('Copy'), text, select, kind = 'btn' }) {
  const said = h('span', { class: 'small', role: 'status' });
  const button = h('button', { type: 'button', class: kind, onclick: copy }, say);

  async function copy() {
    try {
      await navigator.clipboard.writeText(text());
      setText(said, tr('Copied.'));
    } catch {
      select();
      setText(said, tr('Press Ctrl+C to copy it.'));
    }
  }
  return {
    elements: [button, said],
    clear: () => setText(said, ''),
    /** What a screen reader is told that it copies. */
    name: of => setAttribute(button, 'aria-label', `${say}: ${of}`),
  };
}

export function selectWords(element) {
  getSelection().selectAllChildren(element);
}

// Files out of the page and into it.

/** A short word beside what saves, for eyes and ears, once a file was saved. */
export function createSaved() {
  const element = h('span', { class: 'small', role: 'status' });
  return {
    element,
    clear: () => setText(element, ''),
    tell(...names) {
      setText(element, '');
      if (names.length)
        setText(element, names.length > 1 ? trMany('{count} file saved.', '{count} files saved.', names.length) : tr('Saved as {name}.', { name: names[0] }));
    },
  };
}

/** content: a text with its type, or a Blob. Gives the name. */
export function download(name, content, type) {
  const url = URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type }));
  const link = h('a', { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return name;
}

const SPELT = { ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' }; // as German spells them where they cannot be written

/** A file name from a title: 'The same lob, both ways' → the-same-lob-both-ways */
export function fileName(title) {
  return (
    (title || 'scene')
      .toLowerCase()
      .replace(/[äöüß]/g, letter => SPELT[letter])
      .normalize('NFKD')
      .replace(/\p{M}/gu, '')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'scene'
  );
}
