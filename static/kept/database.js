// The browser's database of kept scenes: opened when first needed, opened again when the browser has closed it, brought up to this
// version's layout step by step. A store for scenes and one for talks, a record each.

const NAME = 'rimfall';
const SCENES = 'scenes';
export const TALKS = 'talks';
const OPENS_MS = 8_000; // or never

// What makes each version's layout out of the one before it. A step that has been released is never changed: the next is added.
const STEPS = [
  db => {
    db.createObjectStore(SCENES, { keyPath: 'id' }).createIndex('changed_ms', 'changed_ms');
  },
  db => {
    db.createObjectStore(TALKS, { keyPath: 'id' }).createIndex('changed_ms', 'changed_ms');
  },
];

/** `factory`: the browser's `indexedDB`; none where it has none; `keeps`: SCENES or TALKS. */
export function createDatabase({ factory, name = NAME, steps = STEPS, keeps = SCENES }) {
  let opening = /** @type {Promise<IDBDatabase> | null} */ (null);

  function open() {
    opening ??= opened().catch(problem => {
      opening = null; // asked for again, it may work
      throw problem;
    });
    return opening;
  }

  async function opened() {
    if (!factory) throw named('NotSupportedError', 'this browser has no database');
    const request = factory.open(name, steps.length);
    request.onupgradeneeded = ({ oldVersion }) => {
      for (const step of steps.slice(oldVersion)) step(request.result);
    };
    const db = /** @type {IDBDatabase} */ (
      await new Promise((resolve, reject) => {
        const givenUp = problem => {
          request.onsuccess = () => request.result.close();
          reject(problem);
        };
        const late = setTimeout(() => givenUp(named('TimeoutError', 'the database does not open')), OPENS_MS);
        request.onblocked = () => givenUp(named('BlockedError', 'an older Rimfall is open in another tab'));
        request.onerror = () => reject(request.error);
        request.onsuccess = () => {
          clearTimeout(late);
          resolve(request.result);
        };
      })
    );
    // a newer version in another tab goes first; what the browser has closed, as when its data were cleared, is opened anew
    db.onversionchange = () => {
      db.close();
      opening = null;
    };
    db.onclose = () => {
      opening = null;
    };
    return db;
  }

  /** One transaction: `work(store, asked)` awaits nothing but `asked(request)`; what it gives is given once all of it is written.
   *  @param {IDBTransactionMode} mode */
  async function run(mode, work) {
    const transaction = await begun(mode);
    const written = completed(transaction);
    written.catch(() => {}); // told below, or by what went wrong first
    try {
      const result = await work(transaction.objectStore(keeps), asked);
      await written;
      return result;
    } catch (problem) {
      if (!transaction.error) ended(transaction);
      throw problem;
    }
  }

  async function begun(mode) {
    const begin = async () => (await open()).transaction(keeps, mode, { durability: 'strict' });
    try {
      return await begin();
    } catch (problem) {
      if (!(problem instanceof DOMException) || problem.name !== 'InvalidStateError') throw problem;
      opening = null; // closed under our hands
      return begin();
    }
  }
  return { run, read: work => run('readonly', work), change: work => run('readwrite', work) };
}

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function completed(transaction) {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve(undefined);
    transaction.onabort = () => reject(transaction.error ?? named('AbortError', 'nothing was written'));
  });
}

function ended(transaction) {
  try {
    transaction.abort();
  } catch {
    // it is over already
  }
}

function named(name, message) {
  return Object.assign(new Error(message), { name });
}
