// Which tab has which scene: a lock a scene, held as long as it is open; what this tab has open, over a reload; and word to the other
// tabs that something was kept. Where a browser has none of it (no locks over plain HTTP), revisions still keep two tabs apart.

const LOCK = 'rimfall.scene.';
const MINE = 'rimfall.tab';

/** `locks`: navigator.locks. */
export function createClaims(locks) {
  const mine = new Map(); // id → how often this tab has taken it, and the promise of what lets the lock go

  /** A function that lets it go again, or null where another tab has it. `wait_ms`: a page that is just going may still hold it. */
  async function take(id, wait_ms = 0) {
    if (!locks) return () => {};
    const held = mine.get(id) ?? { count: 0, lock: locked(id, wait_ms) };
    mine.set(id, held);
    held.count += 1;
    const letGo = await held.lock;
    const release = () => {
      held.count -= 1;
      if (held.count > 0) return;
      mine.delete(id);
      letGo?.();
    };
    if (letGo) return release;
    release();
    return null;
  }

  function locked(id, wait_ms) {
    return new Promise(resolve => {
      const options = wait_ms ? { signal: AbortSignal.timeout(wait_ms) } : { ifAvailable: true };
      const held = lock => (lock ? new Promise(release => resolve(() => release(undefined))) : resolve(null));
      locks.request(LOCK + id, options, held).catch(() => resolve(null));
    });
  }

  /** The ids that other tabs have open. */
  async function elsewhere() {
    const held = (await locks?.query().catch(() => null))?.held ?? [];
    const ids = held.filter(({ name }) => name.startsWith(LOCK)).map(({ name }) => name.slice(LOCK.length));
    return new Set(ids.filter(id => !mine.has(id)));
  }
  return { take, elsewhere };
}

/** What this tab has open: `id` of its record, `hash` it last wrote into the address, `opened`: a scene without a record that no
 *  address holds. A tab that was duplicated begins with a copy; the lock tells it whose the scene is. */
export function createTab(storage) {
  const read = () => {
    try {
      return JSON.parse(storage.getItem(MINE)) ?? {};
    } catch {
      return {};
    }
  };
  return {
    read,
    note(part) {
      try {
        storage.setItem(MINE, JSON.stringify({ ...read(), ...part }));
      } catch {
        // then a reload opens the newest
      }
    },
  };
}

/** Word that something was kept or removed, to and from the other tabs. */
export function createWord(Channel) {
  const channel = Channel ? new Channel('rimfall.kept') : null;
  return {
    tell: () => channel?.postMessage('changed'),
    on(hear) {
      channel?.addEventListener('message', hear);
    },
  };
}
