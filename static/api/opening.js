// Opening a scene: traced once, and shown only with its own answer. What stands in the way is told as what it is: a broken link, a scene
// too heavy, a server that has not answered, or that it was cancelled.

import { ValidationError } from './errors.js';

/** Traces a scene while the status line says so; throws what stands in the way, `cancelled` when its reader gave it up. */
async function traced(document, { trace, status, units, what, signal = null, atOnce = false }) {
  const stop = new AbortController();
  const job = status.begin({ say: `Opening ${what}`, cancel: () => stop.abort(new Cancelled('That was cancelled.')), atOnce });
  try {
    return await trace(document, { units, told: job.progress, signal: AbortSignal.any([stop.signal, ...(signal ? [signal] : [])]) });
  } finally {
    job.end();
  }
}

class Cancelled extends Error {}

/** The page's first scene: of `sources` [{what, find() → document or null, safe}] the first that can be shown, else `example()`;
 *  `safe`: what is told besides where it cannot.
 *  Gives {document, answer, isExample, trouble: {say, again: the document, where it may be tried again} or null}; `seen(document)` before each is
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
      trouble ??= { say: [troubleWords(problem, what, document), safe].filter(Boolean).join(' '), again: problem instanceof ValidationError ? null : document };
    }
  }
  const document = await example();
  seen(document);
  return { document, answer: await traced(document, { trace, status, units, what: 'the first scene', atOnce: true }), isExample: true, trouble };
}

/** What stood in the way of opening `what`, in a sentence or two. `document`: null where none could be read. */
export function troubleWords(problem, what, document) {
  const name = `${what[0].toUpperCase()}${what.slice(1)}`;
  if (!document) return `${name} could not be read: it holds no whole scene.`;
  if (problem instanceof Cancelled) return `${name} was not opened: you cancelled it.`;
  if (problem instanceof ValidationError)
    return problem.tooHeavy ? `${name} is too heavy for this server. ${problem.message}` : `${name} was refused. ${problem.message}`;
  return `${name} was not opened: ${problem.message[0].toLowerCase()}${problem.message.slice(1)}`;
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
      store.tell({ kind, field: null, say: `${troubleWords(problem, what, document)} Nothing was changed.`, again });
    }
  };
}
