// Whether the server answers, and who waits until it does. What could not be asked is asked again by itself: after the time that a busy
// server names, or once one that was gone is back. No elements, no fetch.

const FIRST_MS = 1000,
  LONGEST_MS = 15_000;
const TRIES = 5; // of one request that never gets through to a server that is there, or ends whatever works on it
const SPREAD = 0.25; // those sent away together do not all come back together

/** probe() → promise of whether the server is there; changed(state): 'up', 'busy' or 'away'.
 *  @param {{probe: () => Promise<boolean>, changed?: (state: string) => void, later?: (fn: () => void, ms: number) => any,
 *           forget?: (timer: any) => void, random?: () => number}} options */
export function createConnection({
  probe,
  changed = () => {},
  later = (fn, ms) => setTimeout(fn, ms),
  forget = timer => clearTimeout(timer),
  random = Math.random,
}) {
  let told = 'up',
    away = false,
    busy = 0, // requests that wait for their turn
    failures = 0, // in a row
    timer = null,
    probing = false;
  const waiting = new Set();

  function tell() {
    const state = away ? 'away' : busy ? 'busy' : 'up';
    if (state === told) return;
    told = state;
    changed(state);
  }

  /** The answer of ask(), asked for as often as it takes. Refusals and faults go through as they are.
   *  @template T
   *  @param {() => Promise<T>} ask
   *  @param {AbortSignal | null} signal
   *  @returns {Promise<T>} */
  async function run(ask, signal = null) {
    for (let tries = 1; ; tries += 1) {
      try {
        const answer = await ask();
        isBack();
        return answer;
      } catch (error) {
        signal?.throwIfAborted();
        const problem = /** @type {any} */ (error);
        if (problem.reason === 'busy') {
          isBack();
          await turn(problem.wait_ms, signal);
          tries = 0;
        } else if (problem.reason === 'lost' && tries < TRIES) {
          await turn(problem.wait_ms, signal);
        } else if (problem.reason === 'unreachable' && tries < TRIES) {
          if (await back(signal)) tries = 0;
        } else {
          if (problem.reason !== 'unreachable' && problem.reason !== 'late') isBack();
          throw problem;
        }
      }
    }
  }

  function isBack() {
    failures = 0;
    away = false;
    forget(timer);
    timer = null;
    release(true);
    tell();
  }

  async function turn(wait_ms, signal) {
    busy += 1;
    tell();
    try {
      await unless(signal, done => later(done, wait_ms * (1 + SPREAD * random())));
    } finally {
      busy -= 1;
      tell();
    }
  }

  // Gives whether the server itself had been gone: a request that alone does not get through is not asked for ever.
  async function back(signal) {
    const wait = { done: /** @type {(gone: boolean) => void} */ (() => {}), gone: false };
    failures += 1;
    away = true;
    tell();
    try {
      return await unless(signal, done => {
        wait.done = done;
        waiting.add(wait);
        schedule();
      });
    } finally {
      waiting.delete(wait);
    }
  }

  function schedule() {
    if (timer === null && !probing) timer = later(look, Math.min(FIRST_MS * 2 ** (failures - 1), LONGEST_MS));
  }

  async function look() {
    forget(timer);
    timer = null;
    if (probing) return;
    probing = true;
    const there = await probe().catch(() => false);
    probing = false;
    if (!away) return;
    if (there) {
      away = false;
      release(false);
      return tell();
    }
    failures += 1;
    for (const wait of waiting) wait.gone = true;
    schedule();
  }

  function release(gone) {
    for (const wait of [...waiting]) wait.done(gone || wait.gone);
  }

  return {
    run,
    /** Asked again now, not only when it is due. */
    retry() {
      if (away) look();
    },
    get state() {
      return told;
    },
  };
}

// a promise that begin(done) settles, unless the signal comes first
function unless(signal, begin) {
  return new Promise((resolve, reject) => {
    signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
    begin(resolve);
  });
}
