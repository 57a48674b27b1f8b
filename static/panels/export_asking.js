// What the server says of the files as chosen: its notes first, then the files that are cheap to make, so that their sizes can
// be told. What was made is kept until the request changes, and is what Save takes.

const SETTLE_MS = 250;
const CHEAP_ROWS = 10_000; // as a table about 1 MB

/** exported(format, request, signal) → Blob; request() → what is asked now; told() when there is news; failed(problem). */
export function createAsking({ exported, request, told, failed }) {
  let asked = null, // the request as text
    notes = null,
    made = new Map(),
    timer = null;

  /** kinds: of the files wanted, as export_list has them. */
  function want(kinds) {
    const wanted = JSON.stringify(request());
    if (wanted !== asked) {
      asked = wanted;
      notes = null;
      made = new Map();
    }
    stop();
    timer = setTimeout(() => ask(wanted, kinds), SETTLE_MS);
  }

  async function ask(mine, kinds) {
    try {
      if (!notes) await askNotes(mine);
      if (mine !== asked || notes.counts.csv_rows > CHEAP_ROWS) return;
      for (const { format, drawn } of kinds) if (format && !drawn && mine === asked) await get(format, mine);
    } catch (problem) {
      if (mine === asked) failed(problem);
    }
  }

  async function askNotes(mine, signal) {
    const said = JSON.parse(await (await exported('notes', JSON.parse(mine), signal)).text());
    if (mine !== asked) return;
    notes = said;
    told();
  }

  async function get(format, mine, signal) {
    if (made.has(format)) return made.get(format);
    const blob = await exported(format, JSON.parse(mine), signal);
    if (mine === asked) made.set(format, blob);
    told();
    return blob;
  }

  function stop() {
    clearTimeout(timer);
  }

  return {
    want,
    stop,
    notes: () => notes,
    size: format => made.get(format)?.size ?? null,
    /** For one Save, whatever is chosen meanwhile: {notes, ready(format) → Blob}. */
    async settled(signal) {
      const mine = asked;
      if (!notes) await askNotes(mine, signal);
      return { notes, ready: format => get(format, mine, signal) };
    },
  };
}
