// What the server says of the files as chosen: its notes first, then the files that are cheap to make, so that their sizes can
// be told. What was made is kept until the request changes, and is what Save takes.

const SETTLE_MS = 250;
const CHEAP_ROWS = 10_000; // as a table about 1 MB

/** exported(format, request, signal) → Blob; request() → what is asked now; changed() when there is news; failed(problem). */
export function createAsking({ exported, request, changed, failed }) {
  let requestText = null,
    notes = null,
    sent = new Map(), // 'notes' or a format → the promise of it: nothing is asked twice while its answer is under way
    files = new Map(),
    timer = null;

  /** kinds: of the files wanted, as offered() has them. */
  function want(kinds) {
    const wanted = JSON.stringify(request());
    if (wanted !== requestText) {
      requestText = wanted;
      notes = null;
      sent = new Map();
      files = new Map();
    }
    stop();
    timer = setTimeout(() => ask(wanted, kinds), SETTLE_MS);
  }

  async function ask(mine, kinds) {
    try {
      if (!notes) await askNotes(mine);
      if (mine !== requestText || notes.counts.csv_rows > CHEAP_ROWS) return;
      for (const { format, drawn } of kinds) if (format && !drawn && mine === requestText) await get(format, mine);
    } catch (problem) {
      if (mine === requestText && problem.name !== 'AbortError') failed(problem);
    }
  }

  // one that failed may be asked for again
  function once(key, mine, ask) {
    if (mine !== requestText) return ask();
    const kept = sent;
    if (!kept.has(key))
      kept.set(
        key,
        ask().catch(problem => (kept.delete(key), Promise.reject(problem))),
      );
    return kept.get(key);
  }

  function askNotes(mine, signal) {
    return once('notes', mine, async () => {
      const said = JSON.parse(await (await exported('notes', JSON.parse(mine), signal)).text());
      if (mine !== requestText) return;
      notes = said;
      changed();
    });
  }

  function get(format, mine, signal) {
    return once(`file ${format}`, mine, async () => {
      const blob = await exported(format, JSON.parse(mine), signal);
      if (mine !== requestText) return blob;
      files.set(format, blob);
      changed();
      return blob;
    });
  }

  function stop() {
    clearTimeout(timer);
  }

  return {
    want,
    stop,
    notes: () => notes,
    size: format => files.get(format)?.size ?? null,
    /** For one Save, whatever is chosen meanwhile: {notes, ready(format) → Blob}. */
    async settled(signal) {
      const mine = requestText;
      if (!notes) await unless(signal, askNotes(mine, signal));
      return { notes, ready: format => unless(signal, get(format, mine, signal)) };
    },
  };
}

// a file that was already under way is no longer waited for
function unless(signal, promise) {
  const stopped = new Promise((_, reject) => signal.addEventListener('abort', () => reject(signal.reason), { once: true }));
  return Promise.race([promise, stopped]);
}
