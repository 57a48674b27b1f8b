// The one clock of both stages: play, pace, frame step, scrub, loop. It knows nothing of what it times.

const TINY_S = 1e-9;
const SUITED = [0.25, 0.5]; // paces, the slowest first, as long as the whole is played in
const WATCHED_S = 16;

/** @typedef {{from_s: number, to_s: number}} Loop */

/** now() → milliseconds; without it the clock moves only when told how far.
 *  @param {{now?: () => number}} [options] */
export function createClock({ now } = {}) {
  let listeners = /** @type {((clock: any) => void)[]} */ ([]); // another list once somebody comes or goes
  let last_ms = /** @type {number | null} */ (null);
  let owed_s = 0;
  let paceChosen = false;
  let own = /** @type {number | null} */ (null); // the pace it goes back to, while another is lent

  const clock = {
    time_s: 0,
    playing: false,
    pace: 1,
    loop: /** @type {Loop | null} */ (null),
    end_s: 0,
    frame_s: 1 / 24,
    // With a stride the clock moves in steps of that length while it plays (reduced motion steps bead by bead).
    stride_s: null,

    on(fn) {
      listeners = [...listeners, fn];
      return () => {
        listeners = listeners.filter(one => one !== fn);
      };
    },
    play() {
      if (clock.playing || clock.end_s <= 0) return;
      if (clock.time_s >= stopsAt() - TINY_S) clock.time_s = clock.loop ? clock.loop.from_s : 0;
      clock.playing = true;
      last_ms = now ? now() : null;
      owed_s = 0;
      tell();
    },
    pause() {
      if (!clock.playing) return;
      clock.playing = false;
      tell();
    },
    toggle() {
      if (clock.playing) clock.pause();
      else clock.play();
    },
    seek(time_s) {
      move(time_s);
      owed_s = 0;
      tell();
    },
    stepFrame(frames) {
      clock.playing = false;
      move((Math.round(clock.time_s / clock.frame_s) + frames) * clock.frame_s);
      tell();
    },
    setPace(pace) {
      clock.pace = pace;
      paceChosen = true;
      own = null;
      tell();
    },
    /** The pace that somebody has chosen; null where it is the one that suits. */
    get chosenPace() {
      return paceChosen ? (own ?? clock.pace) : null;
    },
    /** Until somebody has chosen the pace: slow for what is short, so that nobody waits for the end of what is long. */
    suitPace() {
      if (paceChosen) return;
      const suited = SUITED.find(pace => clock.end_s <= pace * WATCHED_S) ?? 1;
      if (own === null) clock.pace = suited;
      else own = suited;
      tell();
    },
    /** A pace that nobody has chosen and that is not kept, as a step of a talk has it; null: back to the clock's own.
     *  @param {number | null} pace */
    lendPace(pace) {
      if (pace !== null) own ??= clock.pace;
      clock.pace = pace ?? own ?? clock.pace;
      if (pace === null) own = null;
      tell();
    },
    setLoop(loop) {
      clock.loop = loop;
      tell();
    },
    setSpan(end_s, frame_s) {
      if (end_s === clock.end_s && (!frame_s || frame_s === clock.frame_s)) return;
      // Standing at the end means "all has happened": it still does when the end moves.
      if (!clock.playing && clock.end_s > 0 && clock.time_s >= clock.end_s - TINY_S) clock.time_s = end_s;
      clock.end_s = end_s;
      if (frame_s) clock.frame_s = frame_s;
      if (clock.time_s > end_s) clock.time_s = end_s;
      tell();
    },
    tick(now_ms) {
      if (!clock.playing) return false;
      const passed_s = last_ms === null ? 0 : Math.max(0, now_ms - last_ms) / 1000;
      last_ms = now_ms;
      return advance(passed_s * clock.pace);
    },
  };

  function stopsAt() {
    return clock.loop ? Math.min(clock.loop.to_s, clock.end_s) : clock.end_s;
  }

  function move(time_s) {
    clock.time_s = Math.min(Math.max(0, time_s), clock.end_s);
  }

  function advance(step_s) {
    const due_s = stride(step_s);
    if (due_s <= 0) return false;
    const next_s = clock.time_s + due_s;
    if (next_s < stopsAt() - TINY_S) move(next_s);
    else if (clock.loop) move(wrapped(next_s));
    else {
      move(clock.end_s);
      clock.playing = false;
    }
    tell();
    return true;
  }

  function stride(step_s) {
    if (!clock.stride_s) return step_s;
    owed_s += step_s;
    const whole = Math.floor(owed_s / clock.stride_s + TINY_S) * clock.stride_s;
    owed_s -= whole;
    return whole;
  }

  function wrapped(time_s) {
    const { from_s } = /** @type {Loop} */ (clock.loop);
    const length_s = stopsAt() - from_s;
    return length_s > TINY_S ? from_s + ((time_s - from_s) % length_s) : from_s;
  }

  function tell() {
    const now = listeners;
    for (let k = 0; k < now.length; k += 1) now[k](clock);
  }

  return clock;
}
