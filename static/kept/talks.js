// The talk that this tab works on, kept as scenes are: a record each, of which the tab holds its own, and the newest where it has none.

import { isTalk } from '../state/fields.js';
import { TALKS, createDatabase } from './database.js';
import { UNWRITTEN_TALK, createJournal, takeUnwrittenFrom } from './journal.js';
import { OF_TALKS, createKeeper } from './keeper.js';
import { createRecords, randomId, same } from './records.js';

const SETTLE_MS = 250; // that a hand types on
const DATABASE_MS = 3_000; // that the maker waits for its database
const NOTHING = { rimfall_talk: 1, title: '', about: '', steps: [] };

/** `talk` and `edits` as of state/talk.js and state/talk_edits.js; `claims`, `tab` and `word` as scenes have them; `factory`: the browser's
 *  indexedDB. What is kept of this tab is in the talk once this comes. */
export async function createTalkKeeping({
  talk,
  edits,
  local,
  factory,
  claims,
  tab,
  word,
  told,
  timers = undefined,
  records = createRecords({ database: createDatabase({ factory, keeps: TALKS }), newId: randomId }),
}) {
  const soon = (promise, otherwise) => Promise.race([promise.catch(() => otherwise), new Promise(done => setTimeout(done, DATABASE_MS, otherwise))]);
  const documents = new WeakMap(); // by the list of steps: so that what is undone is known for what it was
  const hearers = new Set();
  let timer = /** @type {any} */ (0);
  let document = NOTHING;

  function documentNow() {
    const { title, about, steps } = talk;
    const known = documents.get(steps) ?? [];
    const there = known.find(one => one.title === title && one.about === about) ?? { rimfall_talk: 1, title, about, steps };
    documents.set(steps, [...known.filter(one => one !== there), there]);
    return there;
  }

  // as a keeper has it of a scene; its drawing is left out
  const asStore = {
    get document() {
      return document;
    },
    get answered() {
      return document;
    },
    on: (topic, hear) => topic === 'document' && hearers.add(hear),
  };
  function tell() {
    clearTimeout(timer);
    const { title, steps } = talk;
    if (!title && !steps.length && keeper.id === null) return; // nothing yet
    document = documentNow();
    for (const hear of hearers) hear({});
  }

  async function held(id) {
    const record = id ? await soon(records.read(id), null) : null;
    return record && isTalk(record.document) ? { document: record.document, record, release: await claims.take(id) } : null;
  }
  async function newest() {
    const [list, open] = await Promise.all([soon(records.list(), []), claims.elsewhere()]);
    return held(list.find(({ id }) => !open.has(id))?.id);
  }
  // where another tab has it, it goes on as one of its own
  const owned = opening => ({ ...opening, record: opening.release && opening.record });

  function put({ document: opened }) {
    const { title, about = '', steps } = opened;
    documents.set(steps, [opened]);
    document = opened;
    talk.set({ title, about, steps, at: 0 });
  }

  await soon(
    claims.elsewhere().then(open => takeUnwrittenFrom(local, { records, open, newId: randomId, prefix: UNWRITTEN_TALK, is: isTalk })),
    null,
  );
  const first = (await held(tab.read().talk)) ?? (await newest());
  if (first) put(first);
  const keeper = createKeeper({
    store: asStore,
    records,
    claims,
    tab: { note: ({ id = undefined }) => id !== undefined && tab.note({ talk: id }) },
    journal: createJournal(local, UNWRITTEN_TALK),
    word,
    picture: () => null,
    told,
    first: first ? owned(first) : { document },
    words: OF_TALKS,
    timers,
  });
  edits.on(({ typing }) => {
    if (!typing) return tell();
    clearTimeout(timer);
    timer = setTimeout(tell, SETTLE_MS);
  });

  return {
    keeper,
    /** Before a talk is opened: it is the record of the same talk from then on, or has one of its own. */
    async begin(opening) {
      tell();
      const list = await soon(records.list(), []);
      const there = list.find(record =>
        same({ ...record.document, rimfall_talk: 1 }, { rimfall_talk: 1, title: opening.title, about: opening.about ?? '', steps: opening.steps }),
      );
      const kept = there && (await held(there.id));
      if (!kept) return keeper.begin({ document: { ...NOTHING } });
      documents.set(opening.steps, [kept.document]);
      keeper.begin(owned(kept));
    },
    /** What the list of kept talks needs, as of panels/kept_scenes.js. */
    async list() {
      const [list, open] = await Promise.all([records.list(), claims.elsewhere()]);
      return list.map(record => ({ ...record, here: record.id === keeper.id, elsewhere: open.has(record.id) }));
    },
    /** null where it is no longer kept. */
    read: async id => (await soon(records.read(id), null))?.document ?? null,
    flush() {
      tell();
      return keeper.flush();
    },
    go() {
      tell();
      keeper.go();
    },
    comeBack: keeper.comeBack,
  };
}
