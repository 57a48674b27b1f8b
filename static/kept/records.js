// The kept scenes, a record each: {id, rev, title, made_ms, changed_ms, document}, with `drawing` of its paths, `stood`, the last
// document that was answered where this one was not, and `refused`, what a version of the program refused in it.
// A record is written only by whoever has read its last revision: of two who change it, the later one is told.

import { isScene, isTalk } from '../state/fields.js';

export const MOST_KEPT = 500;

export function createRecords({ database, newId, most = MOST_KEPT }) {
  const { read, change } = database;

  /** Put under its id if that still is at revision `after` (null: it is new), or is gone: {rev, dropped}, the titles of those that
   *  were too many. Otherwise {theirs}, the record as somebody else wrote it, and nothing is changed. `open`: ids not to be dropped. */
  const write = (record, after, open = new Set()) =>
    change(async (store, asked) => {
      const there = await asked(store.get(record.id));
      if (there && there.rev !== after) return { theirs: there };
      const rev = (after ?? 0) + 1;
      await asked(store.put({ ...record, rev }));
      return { rev, dropped: there ? [] : await dropOldest(store, asked, new Set([...open, record.id])) };
    });

  async function dropOldest(store, asked, spared) {
    const excess = (await asked(store.count())) - most;
    if (excess <= 0) return [];
    const oldest = await asked(store.index('changed_ms').getAllKeys());
    const going = oldest.filter(id => !spared.has(id)).slice(0, excess);
    const titles = [];
    for (const id of going) {
      titles.push((await asked(store.get(id))).title);
      await asked(store.delete(id));
    }
    return titles;
  }

  /** Records that were kept elsewhere taken in: none over another, none twice. */
  const takeIn = records =>
    change(async (store, asked) => {
      for (const record of records) {
        const there = await asked(store.get(record.id));
        if (there && same(there.document, record.document)) continue;
        await asked(store.add({ ...record, rev: record.rev ?? 1, id: there ? newId() : record.id }));
      }
    });

  return {
    write,
    takeIn,
    /** All of them, newest first. */
    list: () => read(async (store, asked) => (await asked(store.index('changed_ms').getAll())).reverse()),
    /** undefined where there is none. */
    read: id => read((store, asked) => asked(store.get(id))),
    /** What this version refuses in it, or null; the scene stays as it is. */
    mark: (id, refused) =>
      change(async (store, asked) => {
        const there = await asked(store.get(id));
        if (there && !same(there.refused ?? null, refused)) await asked(store.put({ ...there, refused }));
      }),
    /** The record that was removed. */
    remove: id =>
      change(async (store, asked) => {
        const there = await asked(store.get(id));
        await asked(store.delete(id));
        return there;
      }),
    /** A removed one put back; under another id where its own has been taken meanwhile. The record as it is now. */
    restore: record =>
      change(async (store, asked) => {
        const back = (await asked(store.get(record.id))) ? { ...record, id: newId() } : record;
        await asked(store.add(back));
        return back;
      }),
  };
}

export function same(a, b) {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

/** A new record's id. Over plain HTTP a browser gives no random UUID. */
export function randomId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16).padStart(2, '0')).join('');
}

/** A record of a scene that has none yet. */
export function newRecord(id, document, when_ms) {
  return { id, title: titleOf(document), made_ms: when_ms, changed_ms: when_ms, document };
}

export function titleOf(document) {
  return (isScene(document) || isTalk(document)) && typeof document.title === 'string' ? document.title : '';
}
