// The server's clock as this machine may know it, and where the stages' clock is by it. No elements, no requests.

const KEPT = 8;

/** Server minus own, from the quickest of the last few answers: whatever way took the rest of the time, it errs by half of it at most.
 *  on(): a first guess by something that was sent one way; answered(): {sent_ms, at_ms, got_ms} of a question and its answer. */
export function createServerClock({ now }) {
  let samples = /** @type {{off_ms: number, away_ms: number}[]} */ ([]);

  return {
    /** @param {number} at_ms */
    heard(at_ms) {
      if (!samples.length) samples = [{ off_ms: at_ms - now(), away_ms: Infinity }];
    },
    /** @param {{sent_ms: number, at_ms: number, got_ms: number}} answer */
    answered({ sent_ms, at_ms, got_ms }) {
      const sample = { off_ms: at_ms - (sent_ms + got_ms) / 2, away_ms: got_ms - sent_ms };
      samples = [...samples.filter(({ away_ms }) => away_ms < Infinity), sample].slice(-KEPT);
    },
    /** What was known is of another connection. */
    forget() {
      samples = [];
    },
    now_ms() {
      const best = samples.reduce((a, b) => (b.away_ms < a.away_ms ? b : a), { off_ms: 0, away_ms: Infinity });
      return now() + (samples.length && best.away_ms === Infinity ? samples[0].off_ms : best.off_ms);
    },
  };
}

/** Where a clock that stood at time_s at at_ms is at now_ms, at most at its end.
 *  @param {{time_s: number, pace: number, playing: boolean, at_ms: number}} told
 *  @param {number} now_ms
 *  @param {number} end_s */
export function timeOf({ time_s, pace, playing, at_ms }, now_ms, end_s) {
  const gone_s = playing ? Math.max(0, now_ms - at_ms) / 1000 : 0;
  return Math.min(end_s, time_s + pace * gone_s);
}
