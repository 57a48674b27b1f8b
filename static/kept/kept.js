// Kept work put together: what is open here and elsewhere, and what may be done with the records. What a browser lacks is done without.

import { createDatabase } from './database.js';
import { createJournal, takeInFrom } from './journal.js';
import { createRecords, randomId } from './records.js';
import { createShelf } from './shelf.js';
import { createClaims, createTab, createWord } from './tabs.js';

const DATABASE_MS = 3_000; // that a page waits for its database
const PAGE_GOING_MS = 700; // that the page before it may take to go

/** `local` and `session`: the browser's storages; `indexedDB`, `locks`, `Channel`: as the browser has them, or undefined. */
export function createKept({ local, session, indexedDB, locks, Channel, fromHash, refusalOf, version }) {
  const records = createRecords({ database: createDatabase({ factory: indexedDB }), newId: randomId });
  const claims = createClaims(locks),
    tab = createTab(session),
    word = createWord(Channel);
  return {
    records,
    claims,
    tab,
    word,
    journal: createJournal(local),
    shelf: createShelf({ records, claims, tab, fromHash, refusalOf, version }),
    /** What local storage holds comes into the database first. The scene of this tab is held from then on, so that the page before
     *  this one, when it is loaded again, has left what it had; what this gives lets it go. */
    async prepare() {
      const { id } = tab.read();
      const release = id ? await claims.take(id, PAGE_GOING_MS) : null;
      const takenIn = claims.elsewhere().then(open => takeInFrom(local, { records, open, now_ms: Date.now(), newId: randomId }));
      // what fails stays where it is; that nothing can be kept is told with the first change
      await Promise.race([takenIn.catch(() => {}), new Promise(resolve => setTimeout(resolve, DATABASE_MS))]);
      return () => release?.();
    },
    /** Newest first, with `here`, where it is what `keeper` has, and `elsewhere`, where another tab has it open. */
    async list(keeper) {
      const [list, elsewhere] = await Promise.all([records.list(), claims.elsewhere()]);
      return list.map(record => ({ ...record, here: record.id === keeper.id, elsewhere: elsewhere.has(record.id) }));
    },
  };
}

/** A storage that keeps nothing. */
export const NO_STORAGE = { length: 0, key: () => null, getItem: () => null, setItem: () => {}, removeItem: () => {} };

/** What the browser lends the page under that name; one that lets it store nothing may throw when it is only asked. */
export function lent(name, otherwise = undefined) {
  try {
    return window[name];
  } catch {
    return otherwise;
  }
}
