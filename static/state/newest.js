// The newest question wins: one is under way at a time, and of those that come meanwhile only the last is asked, once it is back.

/** request() → what is asked, as it stands when it goes out; ask(request, signal) → promise of its answer; answered(answer, request);
 *  failed(problem, request). Nothing is told of a question that was dropped, and no failure that something newer waits behind. */
export function createNewest({ request, ask, answered, failed }) {
  let underWay = /** @type {AbortController | null} */ (null), // what it can be aborted by
    waits = false;

  async function want() {
    waits = underWay !== null;
    if (waits) return;
    const question = request(),
      mine = new AbortController();
    underWay = mine;
    try {
      const answer = await ask(question, mine.signal);
      if (mine === underWay) answered(answer, question);
    } catch (problem) {
      if (mine === underWay && !waits) failed(problem, question);
    } finally {
      if (mine === underWay) underWay = null;
    }
    if (waits && underWay === null) await want();
  }

  /** Nothing is waited for any more: what is under way is aborted. */
  function drop() {
    underWay?.abort();
    underWay = null;
    waits = false;
  }
  return { want, drop };
}
