// A browser's storage, locks and database as far as kept work needs them, in memory, with what goes wrong there on wish.

import { createKeeper } from '../../static/kept/keeper.js';
import { createJournal } from '../../static/kept/journal.js';
import { createRecords } from '../../static/kept/records.js';
import { createShelf } from '../../static/kept/shelf.js';
import { createClaims, createTab } from '../../static/kept/tabs.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

/** Local or session storage. */
export function storage(items = {}) {
  return {
    items,
    get length() {
      return Object.keys(items).length;
    },
    key: i => Object.keys(items)[i] ?? null,
    getItem: key => items[key] ?? null,
    setItem(key, value) {
      items[key] = String(value);
    },
    removeItem(key) {
      delete items[key];
    },
  };
}

/** A database with the manners of the browser's: whole transactions, copies in and out. `fails`: thrown by every change while it is set. */
export function memoryDatabase() {
  let rows = new Map();
  const byTime = () => [...rows.values()].sort((a, b) => a.changed_ms - b.changed_ms);
  const store = {
    get: id => structuredClone(rows.get(id)),
    put: row => void rows.set(row.id, structuredClone(row)),
    add(row) {
      if (rows.has(row.id)) throw Object.assign(new Error('there already'), { name: 'ConstraintError' });
      store.put(row);
    },
    delete: id => void rows.delete(id),
    count: () => rows.size,
    index: () => ({ getAll: () => structuredClone(byTime()), getAllKeys: () => byTime().map(({ id }) => id) }),
  };
  const asked = async value => value;
  const database = {
    fails: null,
    rows: () => [...rows.values()],
    read: async work => work(store, asked),
    async change(work) {
      if (database.fails) throw database.fails;
      const before = new Map(rows);
      try {
        return await work(store, asked);
      } catch (problem) {
        rows = before;
        throw problem;
      }
    },
  };
  return database;
}

/** navigator.locks of one browser; each tab asks its own `locksOf`. */
export function locksOf(held) {
  return {
    async request(name, _options, callback) {
      if (held.has(name)) return callback(null);
      held.add(name);
      await callback({ name });
      held.delete(name);
    },
    query: async () => ({ held: [...held].map(name => ({ name })) }),
  };
}

/** Timers that go off when told to. */
export function handTimers() {
  const set = new Map();
  let count = 0;
  return {
    set(fn, ms) {
      set.set((count += 1), { fn, ms });
      return count;
    },
    clear: id => set.delete(id),
    delays: () => [...set.values()].map(({ ms }) => ms),
    async run() {
      for (const [id, { fn }] of [...set]) {
        set.delete(id);
        await fn();
      }
    },
  };
}

export const scene = (title, radius_m = 56) => ({ ...SCENE, title, habitat: { ...SCENE.habitat, radius_m } });

/** A link of these tests is the scene as it stands; a problem with `say` is a refusal. */
export const hashOf = document => `#s=${JSON.stringify(document)}`;
export const fromLink = async hash => (hash ? JSON.parse(hash.slice(3)) : null);
export const refusalOf = problem => problem.say ?? null;

/** One browser with any number of tabs. */
export function browser() {
  const database = memoryDatabase(),
    held = new Set(),
    local = storage();
  let ids = 0,
    time_ms = 1000;
  const newId = () => `id-${(ids += 1)}`;
  const now = () => (time_ms += 1000);
  const records = createRecords({ database, newId });

  /** A tab that shows `document`: as its address or a file gave it, or with `id` as a kept scene. */
  async function tab({ document = null, id = null, session = storage(), picture = null } = {}) {
    const claims = createClaims(locksOf(held)),
      mine = createTab(session),
      timers = handTimers(),
      said = [];
    const shelf = createShelf({ records, claims, tab: mine, fromHash: fromLink, refusalOf, version: 'this' });
    const shown = async kept => {
      const next = typeof kept === 'string' ? await shelf.take(kept) : kept;
      await shelf.opening(next, async () => ({}));
      return shelf.shown(next);
    };
    const first = await shown(id ?? document);
    const store = createStore({ document: first.document, fields: FIELDS });
    const journal = createJournal(local);
    const word = { tell() {}, on() {} };
    const keeper = createKeeper({
      store,
      records,
      claims,
      tab: mine,
      journal,
      word,
      picture: picture ?? (() => ({ radius_m: store.answered.habitat.radius_m })),
      told: say => said.push(say),
      first,
      newId,
      now,
      timers,
    });
    store.setAnswer({ scene: first.document }, first.document);
    return {
      store,
      keeper,
      shelf,
      claims,
      timers,
      said,
      session,
      answer: () => store.setAnswer({ scene: store.document }, store.document),
      async open(kept) {
        const opening = await shown(kept);
        keeper.begin(opening);
        store.open(opening.document, { scene: opening.document });
        return opening;
      },
      async edit(radius_m) {
        store.set('habitat.radius_m', radius_m);
        await settled(timers, keeper);
      },
    };
  }
  return { database, records, local, tab, newId, now, held };
}

export async function settled(timers, keeper) {
  await timers.run();
  await keeper.flush();
}
