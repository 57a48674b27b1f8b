// What the page is busy with and what it waits for, as one line: the server, then work that takes long, then the drawing. No elements.

import { tr, trLater } from './language.js';

const DIM_MS = 300,
  SAY_MS = 1000,
  LONG_S = 3; // from when on it is told how long it has been

const SAYS = {
  away: trLater('The server does not answer. Rimfall keeps trying.'),
  busy: trLater('The server is busy. Rimfall keeps trying.'),
};

/** later and forget: the timers; now(): ms.
 *  @param {{later?: (fn: () => void, ms: number) => any, forget?: (timer: any) => void, now?: () => number}} options */
export function createStatus({ later = (fn, ms) => setTimeout(fn, ms), forget = timer => clearTimeout(timer), now = () => performance.now() } = {}) {
  const hearers = new Set();
  const jobs = []; // under way, the newest last
  let server = 'up',
    retry = () => {},
    drawing = null;
  const emit = () => {
    for (const hear of hearers) hear();
  };

  const shown = () => jobs.findLast(job => job.long);

  function serverLine() {
    const aside = jobs.map(job => job.aside()).find(Boolean);
    const cancel = cancelOf(jobs.findLast(job => job.cancel));
    const buttons = [server === 'away' ? { say: tr('Retry now'), run: retry } : null, cancel].filter(Boolean);
    return { kind: server, say: [server in SAYS && tr(SAYS[server]), aside].filter(Boolean).join(' '), share: null, for_s: null, buttons };
  }

  return {
    /** Work begins: {progress(done, of), end()}. `say`: what it is; cancel(): gives it up; aside(): what is still shown meanwhile;
     *  `dims`: what is shown is that of other values; `atOnce`: said at once and not after a second.
     *  @param {{say: string, cancel?: (() => void) | null, aside?: () => string, dims?: boolean, atOnce?: boolean}} work */
    begin({ say, cancel = null, aside = () => '', dims = false, atOnce = false }) {
      const job = { say, cancel, aside, dims, began_ms: now(), share: /** @type {number | null} */ (null), old: atOnce, long: atOnce };
      const timers = [later(() => ((job.old = true), emit()), DIM_MS), later(() => ((job.long = true), emit()), SAY_MS)];
      jobs.push(job);
      if (atOnce || server !== 'up') emit();
      return {
        progress(done, of) {
          job.share = of > 0 ? Math.min(1, done / of) : null;
          if (job.long) emit();
        },
        end() {
          timers.forEach(forget);
          jobs.splice(jobs.indexOf(job), 1);
          if (job.old || server !== 'up') emit();
        },
      };
    },
    /** state: 'up', 'busy' or 'away'; again(): asks at once. */
    setServer(state, again) {
      server = state;
      retry = again;
      emit();
    },
    /** What is wrong with the drawing, {say, buttons}, or null. */
    setDrawing(line) {
      drawing = line && { kind: 'drawing', share: null, for_s: null, buttons: [], ...line };
      emit();
    },
    /** Whether what is shown is that of other values than those wanted, and for longer than a moment. */
    get dimmed() {
      return jobs.some(job => job.dims && job.old);
    },
    /** {kind, say, share (0 to 1, or null), for_s (how long so far, or null), buttons [{say, run}]}, or null: nothing to say. */
    get line() {
      if (server !== 'up') return serverLine();
      const job = shown();
      if (!job) return drawing;
      const for_s = Math.floor((now() - job.began_ms) / 1000);
      const say = [`${job.say}…`, job.aside()].filter(Boolean).join(' ');
      return { kind: 'work', say, share: job.share, for_s: for_s < LONG_S ? null : for_s, buttons: [cancelOf(job)].filter(Boolean) };
    },
    on(hear) {
      hearers.add(hear);
    },
  };
}

const cancelOf = job => (job?.cancel ? { say: tr('Cancel'), run: job.cancel } : null);
