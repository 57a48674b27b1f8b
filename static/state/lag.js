// Whether an answer that is shown belongs to other inputs than those beside it. While a hand drags, answers follow in a moment: for so
// long, and while nothing but figures differs, the last one may stay in sight. Anything else is behind at once.

const MOMENT_MS = 250;
const MOST = 60; // positions of one drag that an answer may still be under way for
const TIMERS = { later: (fn, ms) => setTimeout(fn, ms), forget: timer => clearTimeout(timer), now: () => performance.now() };

/** @typedef {{all: string, form: string}} Keys */

/** part(document) → what of it the answer depends on; changed(): when `behind` did. */
export function createLag({ part, changed, timers = TIMERS }) {
  let timer = /** @type {any} */ (null),
    answered = /** @type {Keys | null} */ (null), // of what was answered last
    now = /** @type {Keys | null} */ (null), // and of what stands there
    left_ms = new Map(), // when each was left for another
    behind = false;

  function keysOf(document) {
    const mine = part(document);
    return { all: JSON.stringify(mine), form: JSON.stringify(mine, (_, value) => (typeof value === 'number' ? 0 : value)) };
  }

  function look() {
    timers.forget(timer);
    const wait_ms = mayStay_ms();
    if (wait_ms > 0 && wait_ms < Infinity) timer = timers.later(look, wait_ms);
    const next = wait_ms <= 0;
    if (next === behind) return;
    behind = next;
    changed();
  }

  // for how much longer the answer may stay in sight
  function mayStay_ms() {
    if (answered === null || now === null || answered.all === now.all) return Infinity;
    if (answered.form !== now.form) return 0;
    return (left_ms.get(answered.all) ?? -Infinity) + MOMENT_MS - timers.now();
  }

  return {
    get behind() {
      return behind;
    },
    /** That document stands there now; `live`: by a drag that goes on. */
    moved(document, live) {
      const next = keysOf(document);
      if (now !== null && now.all !== next.all) {
        if (!live) left_ms = new Map();
        else left_ms.set(now.all, timers.now());
        left_ms.delete(next.all);
        for (const oldest of [...left_ms.keys()].slice(0, -MOST)) left_ms.delete(oldest);
      }
      now = next;
      look();
    },
    /** The answer that is shown is of that document. */
    answered(document) {
      answered = keysOf(document);
    },
  };
}
