// Keeps what this tab works on. A scene that was opened has no record until its first change; from then on each change goes into that
// record and no other. Which record a document belongs to stays with the document, so that undoing past the opening of another scene
// goes back to the record of the first.

import { tr, trLater } from '../state/language.js';
import { newRecord, randomId, same } from './records.js';

const SETTLE_MS = 250,
  RETRY_MS = 15_000;

/** `first` {document, record, release}: what is open; record null: it has none. picture() → a small drawing of what is shown; told(words):
 *  what somebody should know; `words`: of what is kept. */
export function createKeeper({
  store,
  records,
  claims,
  tab,
  journal,
  word,
  picture,
  told,
  first,
  newId = randomId,
  now = Date.now,
  timers = TIMERS,
  words = OF_SCENES,
}) {
  const sittings = new WeakMap(); // of each document, the record that it belongs to
  const waiting = new Map(); // what is to be written, by sitting
  const hearers = new Set();
  let current = seated(first);
  let underWay = /** @type {{sitting: any, document: any} | null} */ (null); // while it is written
  let writing = Promise.resolve();
  let timer = /** @type {any} */ (null);
  let resting = false; // while scenes pass that are not to be kept
  let trouble = /** @type {{why: string, say: string} | null} */ (null); // why nothing is being kept

  function seated({ document, record = null, release = null }) {
    const sitting = {
      id: null,
      rev: null,
      made_ms: null,
      changed_ms: null,
      drawing: null,
      drawn: null,
      opened: document,
      written: null,
      claim: Promise.resolve(/** @type {(() => void) | null} */ (release)), // of what lets other tabs have it
    };
    if (record) adopt(sitting, record, document);
    sittings.set(document, sitting);
    return sitting;
  }

  function adopt(sitting, { id, rev, made_ms, changed_ms, drawing = null }, document) {
    Object.assign(sitting, { id, rev, made_ms, changed_ms, drawing, drawn: drawing && document, written: document });
  }

  // apart from its record, so that only a further change makes another
  function orphan(sitting) {
    letGo(sitting);
    journal.drop(sitting.id);
    const opened = sitting === current ? store.document : (waiting.get(sitting) ?? sitting.written);
    Object.assign(sitting, { id: null, rev: null, made_ms: null, opened, written: null });
    waiting.delete(sitting);
  }

  function letGo(sitting) {
    sitting.claim.then(release => release?.());
    sitting.claim = Promise.resolve(null);
  }

  function named(sitting) {
    letGo(sitting);
    sitting.id = newId();
    sitting.rev = null;
    sitting.made_ms ??= now();
    sitting.claim = claims.take(sitting.id);
    if (sitting === current) tab.note({ id: sitting.id, opened: null });
  }

  store.on('document', ({ live = false, followed = false }) => {
    if (resting) return;
    const { document } = store;
    const sitting = sittings.get(document) ?? current;
    sittings.set(document, sitting);
    if (sitting !== current) turnTo(sitting);
    if (document === (sitting.id === null ? sitting.opened : settled(sitting))) return;
    if (sitting.id === null) named(sitting);
    waiting.set(sitting, document);
    if (live && !followed) return;
    note(sitting, document);
    later(SETTLE_MS);
  });
  store.on('answer', drawLater);

  // what was written before its answer came gets its drawing
  function drawLater() {
    const { document } = store;
    if (current.id === null || document !== current.written || document !== store.answered || document === current.drawn) return;
    waiting.set(current, document);
    later(SETTLE_MS);
  }

  // what its record holds, once nothing of it is on its way
  const settled = sitting => (waiting.has(sitting) || underWay?.sitting === sitting ? null : sitting.written);

  function turnTo(sitting) {
    leave();
    current = sitting;
    tab.note({ id: sitting.id, opened: null });
    claimAgain();
  }

  // where another tab has taken it meanwhile, this one goes on apart
  function claimAgain() {
    const sitting = current;
    if (sitting.id === null) return;
    sitting.claim = claims.take(sitting.id).then(release => {
      if (release === null) {
        const changed = waiting.get(sitting);
        orphan(sitting);
        if (changed) waiting.set(sitting, changed);
      }
      return release;
    });
  }

  // everything of it is written before another tab may have it
  function leave() {
    const { claim } = current;
    if (waiting.has(current)) draw(current, waiting.get(current));
    current.claim = Promise.resolve(null);
    flush().then(() => claim.then(release => release?.()));
  }

  function later(delay_ms) {
    timers.clear(timer);
    timer = timers.set(flush, delay_ms);
  }

  /** Everything that waits is written, after what is being written. */
  function flush() {
    timers.clear(timer);
    timer = null;
    writing = writing.then(writeAll);
    return writing;
  }

  async function writeAll() {
    for (const [sitting, document] of [...waiting]) {
      waiting.delete(sitting);
      underWay = { sitting, document };
      try {
        await write(sitting, document);
        setTrouble(null);
      } catch (problem) {
        if (!waiting.has(sitting)) waiting.set(sitting, document);
        setTrouble(troubleOf(problem));
        if (timer === null) later(RETRY_MS);
      }
      underWay = null;
    }
  }

  async function write(sitting, document) {
    await sitting.claim;
    if (sitting.id === null) named(sitting);
    const record = recordOf(sitting, document);
    const open = await claims.elsewhere();
    let done = await records.write(record, sitting.rev, open);
    if (done.theirs && same(done.theirs.document, document)) done = await records.write(record, done.theirs.rev, open);
    if (done.theirs) {
      named(sitting);
      done = await records.write({ ...record, id: sitting.id }, null, open);
      told(tr(words.twice));
    }
    if (!waiting.has(sitting)) journal.drop(record.id);
    Object.assign(sitting, { rev: done.rev, written: document });
    if (sitting === current) drawLater();
    else letGo(sitting);
    if (done.dropped.length) told(droppedWords(done.dropped, words));
    word.tell();
    hearers.forEach(hear => hear());
  }

  function recordOf(sitting, document) {
    const answered = store.answered === document;
    draw(sitting, document);
    if (document !== sitting.written) sitting.changed_ms = now(); // a drawing that comes later is no change
    const { id, made_ms, changed_ms, drawing } = sitting;
    const record = { ...newRecord(id, document, made_ms), changed_ms, drawing };
    const stood = !answered && sittings.get(store.answered) === sitting ? store.answered : null;
    return stood ? { ...record, stood } : record;
  }

  // the drawing is that of the answer shown; what cannot be drawn is kept all the same
  function draw(sitting, document) {
    const shown = sittings.get(store.answered) === sitting ? store.answered : null;
    if (shown === null || shown === sitting.drawn || (shown !== document && sitting.drawing)) return;
    sitting.drawn = shown;
    try {
      sitting.drawing = picture();
    } catch {
      sitting.drawing = null;
    }
  }

  function setTrouble(next) {
    if (trouble?.why === next?.why) return;
    if (trouble && !next) told(tr('Your work is being kept again.'));
    trouble = next;
    hearers.forEach(hear => hear());
  }

  if (current.id !== null) tab.note({ id: current.id, opened: null });
  // until it is written it stands in the journal, where that takes no time
  function note(sitting, document) {
    if (sitting.id === null) named(sitting);
    journal.put({ ...newRecord(sitting.id, document, sitting.made_ms), changed_ms: now() }, sitting.rev);
  }

  function noteAll() {
    if (underWay) note(underWay.sitting, underWay.document);
    for (const [sitting, document] of waiting) note(sitting, document);
  }

  word.on(() => {
    if (trouble) flush(); // another tab may have made room
  });

  return {
    flush,
    get trouble() {
      return trouble;
    },
    /** The record of what is shown; null while it has none. */
    get id() {
      return current.id;
    },
    on: hear => hearers.add(hear),
    /** Before another scene is shown: from then on that is what is worked on. */
    begin(opening) {
      resting = false;
      leave();
      current = seated(opening);
      tab.note({ id: current.id, opened: null });
    },
    /** Until another begins, what is shown is not kept: a talk's scenes are the talk's. */
    rest() {
      if (!resting) leave();
      resting = true;
    },
    /** The page is left: what is not written stands in the journal, and other tabs may have its scene. */
    go() {
      noteAll();
      letGo(current);
    },
    /** The browser has brought the page back as it was. */
    comeBack: claimAgain,
    /** The record that was removed; what is shown of it stays, and is kept again once it is changed. */
    async remove(id) {
      await flush();
      const gone = await records.remove(id);
      for (const sitting of [current, ...waiting.keys()]) if (sitting.id === id) orphan(sitting);
      if (current.id === null) tab.note({ id: null });
      word.tell();
      return gone;
    },
    async restore(removed) {
      const back = await records.restore(removed);
      if (current.id === null && same(store.document, back.document)) {
        adopt(current, back, store.document);
        current.claim = claims.take(back.id);
        tab.note({ id: back.id });
      }
      word.tell();
      return back;
    },
  };
}

const TIMERS = { set: (fn, ms) => setTimeout(fn, ms), clear: id => clearTimeout(id) };

function troubleOf(problem) {
  if (problem.name === 'QuotaExceededError') return { why: 'full', say: tr('Your work is not being kept: this browser’s storage is full.') };
  if (problem.name === 'VersionError')
    return { why: 'newer', say: tr('Your work is not being kept: a newer Rimfall has been used in this browser. Reload the page.') };
  return { why: 'refused', say: tr('Your work is not being kept: this browser lets the page store nothing.') };
}

function droppedWords(titles, { untitled, one, many }) {
  const first = tr('“{title}”', { title: titles[0] || tr(untitled) });
  return titles.length === 1 ? one(first) : many(titles.length, first);
}

const OF_SCENES = {
  untitled: trLater('Untitled scene'),
  twice: trLater('This scene was changed in another tab as well: what you do here is kept as a scene of its own.'),
  one: first => tr('The oldest kept scene, {title}, made room for this one.', { title: first }),
  many: (count, first) => tr('The {count} oldest kept scenes made room, {title} first.', { count, title: first }),
};

/** The same of talks. */
export const OF_TALKS = {
  untitled: trLater('Untitled talk'),
  twice: trLater('This talk was changed in another tab as well: what you do here is kept as a talk of its own.'),
  one: first => tr('The oldest kept talk, {title}, made room for this one.', { title: first }),
  many: (count, first) => tr('The {count} oldest kept talks made room, {title} first.', { count, title: first }),
};
