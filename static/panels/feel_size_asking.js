// A question put once its asker has paused: one in flight at a time, and only the answer to the newest counts.

const SETTLE_MS = 180;

/** ask(request, options) → promise of an answer; told(answer, request); failed(problem, request). */
export function createNewest({ ask, told, failed, later = (fn, ms) => setTimeout(fn, ms), forget = id => clearTimeout(id) }) {
  let newest = 0,
    timer = null;

  async function put(mine, request, options) {
    try {
      const answer = await ask(request, options);
      if (mine === newest) told(answer, request);
    } catch (problem) {
      if (mine === newest) failed(problem, request);
    }
  }

  return {
    want(request, options) {
      const mine = (newest += 1);
      forget(timer);
      timer = later(() => put(mine, request, options), SETTLE_MS);
    },
    /** Nothing is waited for any more. */
    drop() {
      newest += 1;
      forget(timer);
    },
  };
}
