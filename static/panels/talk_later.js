// The talk that the page may hold: all of it is fetched with the first press that wants it.

import { tr } from '../state/language.js';

/** `load()` → promise of the maker; `client`: its talks(), readyTalk(id) and talk(document). → show(), keep(), open(document) of a file, whose refusal
 *  it throws, openReady({id, title}), and given(): {talk, conductor} where the maker is open, else null: then the scene is presented as it stands. */
export function createTalkLater({ store, status, client, load }) {
  let loading = null,
    maker = null;

  async function made() {
    if (maker) return maker;
    const job = status.begin({ say: tr('Loading') });
    try {
      loading ??= load();
      maker = await loading;
      return maker;
    } finally {
      loading = null;
      job.end();
    }
  }

  // what was wanted, or why it cannot be
  const wanted = act => async () => {
    try {
      return await act(await made());
    } catch {
      store.tell({ kind: 'failed', field: null, say: tr('This part of the page could not be loaded.'), again: wanted(act) });
    }
  };

  async function openReady({ id, title }) {
    const job = status.begin({ say: tr('Opening {what}', { what: tr('“{title}”', { title }) }) });
    try {
      const [document, there] = await Promise.all([client.readyTalk(id), made()]);
      await there.open(document);
    } catch (problem) {
      store.tell({
        kind: 'failed',
        field: null,
        say: tr('“{title}” was not opened: {why}', { title, why: problem.message }),
        again: () => openReady({ id, title }),
      });
    } finally {
      job.end();
    }
  }

  return {
    show: wanted(there => there.show()),
    keep: wanted(there => {
      const say = there.keep();
      if (say && !there.isOpen) store.tell({ kind: 'told', field: null, say });
    }),
    async open(document) {
      const [whole, there] = await Promise.all([client.talk(document).catch(refused), made()]);
      await there.open(whole);
    },
    openReady,
    given: () => maker?.given() ?? null,
  };
}

// with the field's own name, for whoever wrote the file by hand
function refused(problem) {
  if (!problem.errors?.length) throw problem; // no answer at all
  const [{ field, say }] = problem.errors;
  throw new Error(field && !say.includes(field) ? `${say} (${field})` : say);
}
