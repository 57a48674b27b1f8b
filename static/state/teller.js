// When those who follow are told: at every change of what they see, and when the clock is elsewhere than it would be by itself; one message
// at a time, the newest, and not too often. No elements, no requests.

const LEAST_MS = 80, // between two
  DOT_MS = 200, // where only the bright dot has moved, which they draw gliding
  AGAIN_MS = 1000, // after one that failed
  OFF_S = 0.1; // that the clock may be elsewhere

const TIMERS = { later: (fn, ms) => setTimeout(fn, ms), forget: timer => clearTimeout(timer), now: () => performance.now() };

/** read() → what is to be told as it stands, as of state/now.js; send(now) → promise; changed(problem): whether it came through, null where it did.
 *  @param {{read: () => any, send: (now: any) => Promise<any>, changed?: (problem: any) => void, timers?: any}} hall */
export function createTeller({ read, send, changed = () => {}, timers = TIMERS }) {
  let told = /** @type {{key: string, dot: string, clock: any, at_ms: number} | null} */ (null),
    sending = false,
    waits = false,
    sent = /** @type {Promise<any>} */ (Promise.resolve()), // what is on its way
    timer = /** @type {any} */ (null),
    ended = false;

  const keyOf = now => JSON.stringify({ ...now, clock: { ...now.clock, time_s: 0 }, dot: null });
  const dotOf = ({ dot = null }) => JSON.stringify(dot);

  function isTold(now) {
    return isButForDot(now) && told?.dot === dotOf(now);
  }

  function isButForDot(now) {
    if (!told || told.key !== keyOf(now)) return false;
    const { time_s, pace, playing } = told.clock;
    const by_itself_s = playing ? time_s + (pace * (timers.now() - told.at_ms)) / 1000 : time_s;
    return Math.abs(now.clock.time_s - by_itself_s) < OFF_S;
  }

  function due(ms) {
    timers.forget(timer);
    timer = timers.later(() => {
      timer = null;
      look();
    }, ms);
  }

  function look() {
    if (ended) return;
    if (sending) waits = true;
    else if (timer === null) go();
  }

  async function go() {
    const now = read();
    if (isTold(now)) return;
    const since_ms = told ? timers.now() - told.at_ms : Infinity;
    const least_ms = isButForDot(now) ? DOT_MS : LEAST_MS;
    if (since_ms < least_ms) return due(least_ms - since_ms);
    told = { key: keyOf(now), dot: dotOf(now), clock: now.clock, at_ms: timers.now() };
    sending = true;
    let problem = /** @type {any} */ (null);
    try {
      const going = send(now);
      sent = going.catch(() => {});
      await going;
    } catch (error) {
      problem = error;
      told = null;
    }
    sending = false;
    if (ended) return;
    changed(problem);
    if (problem) due(AGAIN_MS);
    else if (waits) due(0);
    waits = false;
  }

  return {
    /** Something may have changed. */
    look,
    /** With a last message: what is to be told as it stands, and `last`. */
    end(last) {
      ended = true;
      timers.forget(timer);
      const now = { ...read(), ...last };
      sent.then(() => send(now)).catch(() => {}); // nobody is there who would be told of it
    },
  };
}
