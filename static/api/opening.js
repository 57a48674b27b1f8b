// Opening a scene: traced once, and shown only with its own answer. What stands in the way is told as what it is: a broken link, a scene
// too heavy, a server that has not answered, or that it was cancelled.

import { language, tr } from '../state/language.js';
import { ValidationError } from './errors.js';

/** A scene opened while the status line says so: `ask({units, told, signal})` → {document, answer}; throws what stands in the way, `Cancelled`
 *  when its reader gave it up. */
async function waitedFor(ask, { status, units, what, signal = null, atOnce = false, last = false }) {
  const stop = new AbortController();
  const cancel = last ? null : () => stop.abort(new Cancelled(tr('That was cancelled.'))); // what nothing stands behind is waited for
  const job = status.begin({ say: tr('Opening {what}', { what }), cancel, atOnce });
  try {
    return await ask({ units, told: job.progress, signal: AbortSignal.any([stop.signal, ...(signal ? [signal] : [])]) });
  } finally {
    job.end();
  }
}

class Cancelled extends Error {}

const traced = (document, trace) => async options => ({ document, answer: await trace(document, options) });

/** The page's first scene: of `sources` [{what, find() → document or null, safe}] the first that can be shown, else
 *  `example(options)` → {document, answer}; `safe`: what is told besides where it cannot.
 *  Gives {document, answer, isExample, trouble: {say, more, again: the document, where it may be tried again} or null}; `seen(document)` before each is
 *  traced. */
export async function firstScene({ sources, example, trace, status, units, seen = () => {} }) {
  let trouble = null;
  for (const { what, find, safe = null } of sources) {
    let document = null;
    try {
      document = await find();
      if (!document) continue;
      seen(document);
      const { answer } = await waitedFor(traced(document, trace), { status, units, what, atOnce: true });
      return { document, answer, isExample: false, trouble };
    } catch (problem) {
      const { say, more } = troubleWords(problem, what, document);
      trouble ??= { say, more: [more, safe].filter(Boolean).join(' '), again: problem instanceof ValidationError ? null : document };
    }
  }
  const { document, answer } = await waitedFor(example, { status, units, what: tr('the first scene'), atOnce: true, last: true });
  seen(document);
  return { document, answer, isExample: true, trouble };
}

/** What stood in the way of opening `what`: {say, more}, of which `more` are the server's own words. `document`: null where none could be read. */
export function troubleWords(problem, what, document) {
  const name = `${what[0].toUpperCase()}${what.slice(1)}`;
  if (!document) return { say: tr('{name} could not be read: it holds no whole scene.', { name }), more: '' };
  if (problem instanceof Cancelled) return { say: tr('{name} was not opened: you cancelled it.', { name }), more: '' };
  if (problem instanceof ValidationError)
    return { say: problem.tooHeavy ? tr('{name} is too heavy for this server.', { name }) : tr('{name} was refused.', { name }), more: problem.message };
  const why = language === 'en' ? `${problem.message[0].toLowerCase()}${problem.message.slice(1)}` : problem.message;
  return { say: tr('{name} was not opened: {why}', { name, why }), more: '' };
}

const named = ({ title }) => (title ? tr('“{title}”', { title }) : tr('the scene'));

/** Other scenes, each shown in one step with its own answer, and a newer one takes the place of one not yet there: open(document, what),
 *  once it is traced; openExample({id, title}), whose answer `openedExample(id, options)` gives with its document. `left(old, next)`: before it is
 *  shown; `opened(document, id)`: once it is. */
export function createOpen({ store, trace, openedExample, status, left, opened }) {
  let newest = null;

  async function show(ask, { what, document, id = null, again }) {
    newest?.abort();
    const mine = new AbortController();
    newest = mine;
    try {
      const { units } = store.view;
      const next = await waitedFor(ask, { status, units, what, signal: mine.signal });
      if (mine !== newest) return;
      left(store.document, next.document);
      store.open(next.document, next.answer);
      opened(next.document, id);
    } catch (problem) {
      if (mine !== newest) return;
      const kind = problem instanceof ValidationError ? 'refused' : problem instanceof Cancelled ? 'told' : 'failed';
      const { say, more } = troubleWords(problem, what, document);
      store.tell({ kind, field: null, say, more: `${more} ${tr('Nothing was changed.')}`.trim(), again: kind === 'refused' ? null : again });
    }
  }

  const open = (document, what = named(document)) => show(traced(document, trace), { what, document, again: () => open(document, what) });
  const openExample = ({ id, title }) =>
    show(options => openedExample(id, options), { what: named({ title }), document: { title }, id, again: () => openExample({ id, title }) });
  return { open, openExample };
}
