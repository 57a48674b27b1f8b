// The scenes to start from: their list, asked for once; each opened with its answer at once where it was pointed at before; and which one
// comes after which.

const KEPT = 6; // opened scenes held for another time

/** `client`: its examples() and opened(). */
export function createExamples({ client }) {
  const held = new Map(); // id and units → promise of {document, answer}
  let list = null,
    shownId = null;

  function ask(id, units) {
    const key = `${id} ${units}`;
    const opened = held.get(key) ?? client.opened(id, { units });
    held.delete(key);
    held.set(key, opened);
    opened.catch(() => held.get(key) === opened && held.delete(key)); // the next to ask tries anew
    for (const oldest of [...held.keys()].slice(0, -KEPT)) held.delete(oldest);
    return opened;
  }

  return {
    /** [{id, title, say, question, drawing}], in order. */
    list(units) {
      list ??= client.examples(units).catch(problem => {
        list = null;
        throw problem;
      });
      return list;
    },
    /** {document, answer}; the document is a new one each time, for whoever changes it. */
    async opened(id, { units, signal = null }) {
      const { document, answer } = await Promise.race([ask(id, units), ...(signal ? [aborted(signal)] : [])]);
      signal?.throwIfAborted();
      return { document: structuredClone(document), answer };
    },
    /** It may be wanted next. */
    foresee: (id, units) => void ask(id, units).catch(() => {}),
    /** The page shows that one, changed or not; null: a scene of another origin. */
    set shown(id) {
      shownId = id;
    },
    get shown() {
      return shownId;
    },
    /** The one `by` places on from what is shown, round the list; from another scene the first or the last. */
    async beside(by, units) {
      const examples = await this.list(units);
      const at = examples.findIndex(({ id }) => id === shownId);
      const wanted = at >= 0 ? at + by : by > 0 ? by - 1 : by;
      return examples.at(wanted % examples.length);
    },
  };
}

// whoever asked has gone; the answer may still be wanted by another
function aborted(signal) {
  return new Promise((_, gone) => {
    signal.throwIfAborted();
    signal.addEventListener('abort', () => gone(signal.reason), { once: true });
  });
}
