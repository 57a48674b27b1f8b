// Between the presented page and the speaker's window: what each tells the other over one channel. No elements.
//   {kind: 'now', …}      to the window: what stands on the stages, its notes, what comes next; or with `off`: nothing is presented
//   {kind: 'press', what} from the window: one of PRESSES, or 'again': the time begins anew
//   {kind: 'hello', began_ms} from a window that was opened or loaded anew

export const CHANNEL = 'rimfall-speaker';
const FROM_AFAR = ['next', 'back', 'first', 'last', 'play', 'dark', 'freeze', 'slow', 'swap', 'merge', 'dials'];
const SOON_MS = 120;

const TIMERS = { later: (fn, ms) => setTimeout(fn, ms), forget: timer => clearTimeout(timer), now: () => Date.now() };

/** What the speaker's window is told. `presenting`: of state/presenting.js; `says`: of the guesses, or ''.
 *  @param {{presenting: any, store: any, clock: any, says?: string, began_ms: number | null}} hall */
export function nowOf({ presenting, store, clock, says = '', began_ms }) {
  const { talk, dark, frozen, slow, dials } = presenting;
  const { step, steps, at, phase } = talk;
  return {
    kind: 'now',
    title: talk.title || store.document.title || '',
    step: at + 1,
    of: steps.length,
    line: step?.line ?? '',
    notes: step?.notes ?? '',
    next: steps[at + 1]?.line ?? null,
    held: phase === 'held',
    paused: talk.paused, // to go on is to play on
    says,
    time_s: clock.time_s,
    playing: clock.playing,
    dark,
    frozen,
    slow,
    dials,
    swapped: Boolean(store.view.swapped),
    merged: Boolean(store.view.merged),
    began_ms,
  };
}

/** The presented page's end. `Channel`: BroadcastChannel, or null: then there is no window. → {begin(), changed(), end()}.
 *  @param {{presenting: any, store: any, clock: any, press: (what: string) => void, says?: () => string, Channel: any, timers?: any}} hall */
export function createSpeaking({ presenting, store, clock, press, says = () => '', Channel, timers = TIMERS }) {
  let channel = /** @type {any} */ (null);
  let timer = /** @type {any} */ (null);
  let began_ms = /** @type {number | null} */ (null);

  function send() {
    timer = null;
    channel?.postMessage(nowOf({ presenting, store, clock, says: says(), began_ms }));
  }
  function changed() {
    if (channel && timer === null) timer = timers.later(send, SOON_MS);
  }
  function hear(/** @type {{data: any}} */ { data }) {
    if (data?.kind === 'hello') {
      // a window that was there before this page was loaded anew knows since when
      if (Number.isFinite(data.began_ms) && began_ms !== null && data.began_ms < began_ms) began_ms = data.began_ms;
      send();
    }
    if (data?.kind !== 'press') return;
    if (data.what === 'again') began_ms = timers.now();
    if (FROM_AFAR.includes(data.what)) press(data.what);
    changed();
  }
  return {
    begin() {
      if (!Channel || channel) return;
      channel = new Channel(CHANNEL);
      channel.onmessage = hear;
      began_ms ??= timers.now();
      send();
    },
    changed,
    end() {
      if (!channel) return;
      timers.forget(timer);
      timer = null;
      channel.postMessage({ kind: 'now', off: true });
      channel.close();
      channel = null;
    },
  };
}

/** '0:07', '12:05', '1:02:05'.
 *  @param {number} ms */
export function goneWords(ms) {
  const all_s = Math.max(0, Math.floor(ms / 1000));
  const [h, m, s] = [Math.floor(all_s / 3600), Math.floor(all_s / 60) % 60, all_s % 60];
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
  return h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
