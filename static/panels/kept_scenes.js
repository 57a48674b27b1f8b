// The scenes kept in this browser: newest first, each with its drawing, to open, to remove, and to bring back.

import { tr, trLater } from '../state/language.js';
import { whenWords } from '../state/words.js';
import { h, setChildren, setText } from './shared/dom.js';
import { createSaved } from './shared/files.js';
import { smallDrawing } from './shared/small_drawing.js';
import { unkeptNotice } from './unkept.js';

const OF_SCENES = {
  heading: trLater('Kept in this browser'),
  untitled: trLater('Untitled scene'),
  none: trLater('Nothing is kept yet. A scene is kept here from its first change on, in this browser alone.'),
};
/** The same list of talks. */
export const OF_TALKS = { heading: trLater('Other talks kept in this browser'), untitled: trLater('Untitled talk'), none: trLater('No other talk is kept.') };
const UNREADABLE = { why: 'refused', say: trLater('What is kept in this browser cannot be read.') };

/** `kept`: list() → records newest first, each with `here` and `elsewhere` (open in this tab, in another); open(id);
 *  openCopy(document); remove(id) → the record; restore(record); save(record) as a file; trouble: why nothing is being kept, or null; on(hear): when
 *  any of it changes. opened(): before one is; saveScene(): the scene at hand as a file; `words`: of what they are; drawn: each with its drawing. */
export function createKeptScenes({ kept, opened, saveScene, words: { heading, untitled, none } = OF_SCENES, drawn = true }) {
  const list = h('ul', { class: 'kept-list' });
  const words = h('p', { class: 'kept-none' }, tr(none));
  const trouble = h('div', {});
  const said = h('p', { class: 'unseen', role: 'status' });
  const element = h('section', { class: 'kept' }, h('h3', { class: 'third' }, tr(heading)), trouble, list, words, said);
  const removed = new Map(); // by id, until the list is left: each can be brought back

  async function update() {
    const records = await kept.list().catch(() => null);
    const rows = [...(records ?? []), ...removed.values()].sort((a, b) => b.changed_ms - a.changed_ms);
    const focused = focusIn(list);
    setChildren(
      list,
      rows.map(record => (removed.has(record.id) ? removedRow(record) : keptRow(record))),
    );
    words.hidden = rows.length > 0 || records === null;
    const wrong = kept.trouble ?? (records === null ? { ...UNREADABLE, say: tr(UNREADABLE.say) } : null);
    setChildren(trouble, wrong && unkeptNotice(wrong, saveScene));
    if (focused) focus(list, focused);
  }

  function keptRow(record) {
    const title = record.title || tr(untitled);
    const when = whenWords(record.changed_ms, Date.now());
    const saved = createSaved();
    const where = record.here ? tr('open here') : record.elsewhere ? tr('open in another tab') : null;
    return h(
      'li',
      { 'data-kept': record.id },
      h(
        'button',
        { type: 'button', class: 'kept-open', onclick: () => open(record) },
        drawn && smallDrawing(record.drawing),
        h('span', { class: 'kept-words' }, h('b', {}, title), h('span', { class: 'kept-when' }, [when, where].filter(Boolean).join(' · '))),
      ),
      h(
        'span',
        { class: 'kept-does' },
        record.refused &&
          h(
            'button',
            { type: 'button', class: 'link', 'aria-label': tr('Save as a file: {title}', { title }), onclick: () => saved.tell(kept.save(record)) },
            tr('Save as a file'),
          ),
        record.refused && saved.element,
        h(
          'button',
          {
            type: 'button',
            class: 'link',
            'aria-label': tr('Remove {title}, {when}', { title, when }),
            'aria-disabled': record.elsewhere,
            onclick: () => remove(record),
          },
          tr('Remove'),
        ),
      ),
      record.refused && refusedWords(record),
    );
  }

  function refusedWords(record) {
    const before = record.stood && h('button', { type: 'button', class: 'link', onclick: () => openBefore(record) }, tr('Open it as it was before'));
    return h('p', { class: 'kept-refused' }, `${tr('Kept as it was left, but refused: {say}', { say: record.refused.say })} `, before);
  }

  function removedRow(record) {
    const title = record.title || tr(untitled);
    return h(
      'li',
      { 'data-kept': record.id, class: 'removed' },
      h('span', {}, tr('{title} was removed.', { title })),
      h('button', { type: 'button', class: 'link', 'aria-label': tr('Undo: bring back {title}', { title }), onclick: () => restore(record) }, tr('Undo')),
    );
  }

  function open(record) {
    opened();
    if (!record.here) kept.open(record.id);
  }

  function openBefore(record) {
    opened();
    kept.openCopy(record.stood);
  }

  async function remove(record) {
    if (record.elsewhere) return setText(said, tr('It is open in another tab: remove it there, or close that tab.'));
    const gone = await kept.remove(record.id).catch(() => null);
    if (!gone) return setText(said, tr('It could not be removed.'));
    removed.set(gone.id, gone);
    await update();
    focus(list, { id: record.id, index: 0 });
    setText(said, tr('{title} was removed. Undo brings it back.', { title: record.title || tr(untitled) }));
  }

  async function restore(record) {
    removed.delete(record.id);
    const back = await kept.restore(record);
    await update();
    focus(list, { id: back.id, index: 0 });
    setText(said, tr('{title} is back.', { title: record.title || tr(untitled) }));
  }

  return {
    element,
    update,
    /** Those that hold every one of these words stay: the buttons that open them. */
    sift(wanted) {
      const rows = [...list.children];
      for (const row of rows) row.hidden = !wanted.every(word => row.textContent.toLowerCase().includes(word));
      return rows.flatMap(row => (row.hidden ? [] : (row.querySelector('.kept-open') ?? [])));
    },
    /** What was removed stays so. */
    leave() {
      removed.clear();
      setText(said, '');
    },
  };
}

// Which button of which row has the focus, so that a list drawn anew gives it back.
function focusIn(list) {
  const row = document.activeElement?.closest('[data-kept]');
  return row && list.contains(row) ? { id: row.dataset.kept, index: [...row.querySelectorAll('button')].indexOf(document.activeElement) } : null;
}

function focus(list, { id, index }) {
  const buttons = list.querySelectorAll(`[data-kept="${id}"] button`);
  (buttons[index] ?? buttons[0])?.focus();
}
