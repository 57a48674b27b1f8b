// Opening a scene: traced once, and shown only with its own answer. What stands in the way is told as what it is: a broken link, a scene
// too heavy, a server that has not answered, or that it was cancelled.

import { ValidationError } from './errors.js';

/** Traces a scene while the status line says so; throws what stands in the way, `cancelled` when its reader gave it up. */
async function traced(document, { trace, status, units, what, signal = null, atOnce = false, last = false }) {
  const stop = new AbortController();
  const cancel = last ? null : () => stop.abort(new Cancelled('That was cancelled.')); // what nothing stands behind is waited for
  const job = status.begin({ say: `Opening ${what}`, cancel, atOnce });
  try {
    return await trace(document, { units, told: job.progress, signal: AbortSignal.any([stop.signal, ...(signal ? [signal] : [])]) });
  } finally {
    job.end();
  }
}

class Cancelled extends Error {}

/** The page's first scene: of `sources` [{what, find() → document or null, safe}] the first that can be shown, else `example()`;
 *  `safe`: what is told besides where it cannot.
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
      const answer = await traced(document, { trace, status, units, what, atOnce: true });
      return { document, answer, isExample: false, trouble };
    } catch (problem) {
      const { say, more } = troubleWords(problem, what, document);
      trouble ??= { say, more: [more, safe].filter(Boolean).join(' '), again: problem instanceof ValidationError ? null : document };
    }
  }
  const document = await example();
  seen(document);
  return { document, answer: await traced(document, { trace, status, units, what: 'the first scene', atOnce: true, last: true }), isExample: true, trouble };
}

/** What stood in the way of opening `what`: {say, more}, of which `more` are the server's own words. `document`: null where none could be read. */
export function troubleWords(problem, what, document) {
  const name = `${what[0].toUpperCase()}${what.slice(1)}`;
  if (!document) return { say: `${name} could not be read: it holds no whole scene.`, more: '' };
  if (problem instanceof Cancelled) return { say: `${name} was not opened: you cancelled it.`, more: '' };
  if (problem instanceof ValidationError)
    return { say: problem.tooHeavy ? `${name} is too heavy for this server.` : `${name} was refused.`, more: problem.message };
  return { say: `${name} was not opened: ${problem.message[0].toLowerCase()}${problem.message.slice(1)}`, more: '' };
}

const named = ({ title }) => (title ? `“${title}”` : 'the scene');

/** open(document, what): shows another scene once it is answered; a newer one takes the place of one not yet there. `left(old,
 *  next)`: before it is shown; `opened(document)`: once it is. */
export function createOpen({ store, trace, status, left, opened }) {
  let newest = null;

  return async function open(document, what = named(document)) {
    newest?.abort();
    const mine = new AbortController();
    newest = mine;
    try {
      const { units } = store.view;
      const answer = await traced(document, { trace, status, units, what, signal: mine.signal });
      if (mine !== newest) return;
      left(store.document, document);
      store.open(document, answer);
      opened(document);
    } catch (problem) {
      if (mine !== newest) return;
      const kind = problem instanceof ValidationError ? 'refused' : problem instanceof Cancelled ? 'told' : 'failed';
      const again = kind === 'refused' ? null : () => open(document, what);
      const { say, more } = troubleWords(problem, what, document);
      store.tell({ kind, field: null, say, more: `${more} Nothing was changed.`.trim(), again });
    }
  };
}
