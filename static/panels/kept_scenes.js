// The scenes kept in this browser: newest first, each with its drawing, to open, to remove, and to bring back.

import { whenWords } from '../state/words.js';
import { h, setChildren, setText } from './shared/dom.js';
import { smallDrawing } from './shared/small_drawing.js';
import { unkeptNotice } from './unkept.js';

const OF_SCENES = {
  heading: 'Kept in this browser',
  untitled: 'Untitled scene',
  none: 'Nothing is kept yet. A scene is kept here from its first change on, in this browser alone.',
};
/** The same list of talks. */
export const OF_TALKS = { heading: 'Other talks kept in this browser', untitled: 'Untitled talk', none: 'No other talk is kept.' };
const UNREADABLE = { why: 'refused', say: 'What is kept in this browser cannot be read.' };

/** `kept`: list() → records newest first, each with `here` and `elsewhere` (open in this tab, in another); open(id);
 *  openCopy(document); remove(id) → the record; restore(record); save(record) as a file; trouble: why nothing is being kept, or null; on(hear): when
 *  any of it changes. opened(): before one is; saveScene(): the scene at hand as a file; `words`: of what they are; drawn: each with its drawing. */
export function createKeptScenes({ kept, opened, saveScene, words: { heading, untitled, none } = OF_SCENES, drawn = true }) {
  const list = h('ul', { class: 'kept-list' });
  const words = h('p', { class: 'kept-none' }, none);
  const trouble = h('div', {});
  const said = h('p', { class: 'unseen', role: 'status' });
  const element = h('section', { class: 'kept' }, h('h3', { class: 'third' }, heading), trouble, list, words, said);
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
    const wrong = kept.trouble ?? (records === null ? UNREADABLE : null);
    setChildren(trouble, wrong && unkeptNotice(wrong, saveScene));
    if (focused) focus(list, focused);
  }

  function keptRow(record) {
    const title = record.title || untitled;
    const when = whenWords(record.changed_ms, Date.now());
    const where = record.here ? 'open here' : record.elsewhere ? 'open in another tab' : null;
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
          h('button', { type: 'button', class: 'link', 'aria-label': `Save as a file: ${title}`, onclick: () => kept.save(record) }, 'Save as a file'),
        h(
          'button',
          { type: 'button', class: 'link', 'aria-label': `Remove ${title}, ${when}`, 'aria-disabled': record.elsewhere, onclick: () => remove(record) },
          'Remove',
        ),
      ),
      record.refused && refusedWords(record),
    );
  }

  function refusedWords(record) {
    const before = record.stood && h('button', { type: 'button', class: 'link', onclick: () => openBefore(record) }, 'Open it as it was before');
    return h('p', { class: 'kept-refused' }, `Kept as it was left, but refused: ${record.refused.say} `, before);
  }

  function removedRow(record) {
    const title = record.title || untitled;
    return h(
      'li',
      { 'data-kept': record.id, class: 'removed' },
      h('span', {}, `${title} was removed.`),
      h('button', { type: 'button', class: 'link', 'aria-label': `Undo: bring back ${title}`, onclick: () => restore(record) }, 'Undo'),
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
    if (record.elsewhere) return setText(said, 'It is open in another tab: remove it there, or close that tab.');
    const gone = await kept.remove(record.id).catch(() => null);
    if (!gone) return setText(said, 'It could not be removed.');
    removed.set(gone.id, gone);
    await update();
    focus(list, { id: record.id, index: 0 });
    setText(said, `${record.title || untitled} was removed. Undo brings it back.`);
  }

  async function restore(record) {
    removed.delete(record.id);
    const back = await kept.restore(record);
    await update();
    focus(list, { id: back.id, index: 0 });
    setText(said, `${record.title || untitled} is back.`);
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
