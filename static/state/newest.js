// The newest question wins: one is under way at a time, and of those that come meanwhile only the last is asked: once the other is back,
// or when it has been under way for so long that its answer would be of little use.

const LONG_MS = 1000;

/** request() → what is asked, as it stands when it goes out; ask(request, signal) → promise of its answer; answered(answer, request);
 *  failed(problem, request); overtaken(request): given up for a newer one. Nothing else is told of a question that was dropped, and no failure
 *  that something newer waits behind. later and forget: the timers.
 *  @param {{request: () => any, ask: (request: any, signal: AbortSignal) => Promise<any>, answered: (answer: any, request: any) => void,
 *           failed: (problem: any, request: any) => void, overtaken?: (request: any) => void,
 *           later?: (fn: () => void, ms: number) => any, forget?: (timer: any) => void}} options */
export function createNewest({
  request,
  ask,
  answered,
  failed,
  overtaken = () => {},
  later = (fn, ms) => setTimeout(fn, ms),
  forget = timer => clearTimeout(timer),
}) {
  let underWay = /** @type {AbortController | null} */ (null), // what it can be aborted by
    question = /** @type {any} */ (null),
    long = false,
    waits = false;

  async function want() {
    waits = underWay !== null;
    if (waits) return long ? overtake() : undefined;
    const mine = new AbortController(),
      asked = request();
    const timer = later(() => grownLong(mine), LONG_MS);
    underWay = mine;
    question = asked;
    long = false;
    try {
      const answer = await ask(asked, mine.signal);
      if (mine === underWay) answered(answer, asked);
    } catch (problem) {
      if (mine === underWay && !waits) failed(problem, asked);
    } finally {
      forget(timer);
      if (mine === underWay) underWay = null;
    }
    if (waits && underWay === null) await want();
  }

  function grownLong(mine) {
    if (mine !== underWay) return;
    long = true;
    if (waits) overtake();
  }

  function overtake() {
    const old = question;
    drop();
    overtaken(old);
    return want();
  }

  /** Nothing is waited for any more: what is under way is aborted. */
  function drop() {
    underWay?.abort();
    underWay = null;
    waits = false;
  }
  return { want, drop };
}
