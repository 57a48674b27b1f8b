// Kept scenes taken in hand: which one the page begins with, and whose record a document is. Whatever fails while one is opened, it
// stays as it is.

import { tr, trLater } from '../state/language.js';

const DATABASE_MS = 3_000;

const ELSEWHERE = trLater('This scene is open in another tab as well: what you change here is kept as a scene of its own.');
const SAFE = trLater('It is kept as it was left, under Scenes.');

/** fromHash(hash) → the document in an address, or null; refusalOf(problem) → what the server says against a scene, or null where it
 *  gave no answer; version: the program's. */
export function createShelf({ records, claims, tab, fromHash, refusalOf, version, database_ms = DATABASE_MS }) {
  const taken = new WeakMap(); // of a document taken from a record: {record, release}
  let before = null; // what a record that was refused held before its last change

  // a database that gives nothing, or not in time, is told of where something is to be written
  const soon = (promise, otherwise) => Promise.race([promise.catch(() => otherwise), after(database_ms, otherwise)]);

  /** A kept scene's document; null where it is no longer kept. */
  async function take(id) {
    const record = await soon(records.read(id), null);
    if (!record) return null;
    taken.set(record.document, { record, release: null });
    return record.document;
  }

  // the newest that no other tab has open
  async function newest() {
    const [list, elsewhere] = await Promise.all([soon(records.list(), []), claims.elsewhere()]);
    const found = list.find(({ id }) => !elsewhere.has(id));
    return found ? take(found.id) : null;
  }

  // this tab's own: by its record; else what this tab wrote into the address, or has noted because no address holds it
  async function own(hash) {
    const { id, hash: written, opened } = tab.read();
    const document = id ? await take(id) : null;
    return document ?? (hash === written ? await fromHash(hash) : null) ?? opened ?? null;
  }

  return {
    take,
    /** Where the page's first scene may come from, the likeliest first: `what` it is, find() → a document or null, and what is `safe`
     *  where it cannot be shown. An address that this tab wrote itself is no link. */
    sources(hash) {
      const link = hash !== tab.read().hash;
      let tried = false; // one that fails is enough: the others are for its reader to choose
      const once = find => async () => {
        if (tried) return null;
        const document = await find();
        tried = document !== null;
        return document;
      };
      return [
        { what: tr('the scene of the link'), find: async () => (link ? fromHash(hash) : null) },
        { what: tr('the scene of this tab'), find: once(() => own(hash)), safe: tr(SAFE) },
        { what: tr('the scene kept last'), find: once(newest), safe: tr(SAFE) },
        { what: tr('the scene as it was before'), find: async () => before },
      ];
    },
    /** ask() → the server's answer to a scene that is being opened. Of a kept one it is noted how that went: what is refused of it, or
     *  no longer; and no other tab may have it. */
    async opening(document, ask) {
      const hold = taken.get(document);
      if (!hold) return ask();
      const { record } = hold;
      hold.release ??= await claims.take(record.id);
      try {
        const answer = await ask();
        if (record.refused) records.mark(record.id, null).catch(() => {});
        return answer;
      } catch (problem) {
        hold.release?.();
        hold.release = null;
        const say = refusalOf(problem);
        if (say !== null) {
          before = record.stood ?? null;
          await records.mark(record.id, { say, version }).catch(() => {});
        }
        throw problem;
      }
    },
    /** For whoever shows the document: {document, record, release, say}; `record` null where its first change makes a new one. */
    shown(document) {
      const { record = null, release = null } = taken.get(document) ?? {};
      return { document, record: release && record, release, say: record && !release ? tr(ELSEWHERE) : null };
    },
  };
}

function after(wait_ms, value) {
  return new Promise(resolve => setTimeout(resolve, wait_ms, value));
}
