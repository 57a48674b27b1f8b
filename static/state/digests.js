// Scenes as those who follow get them: each is handed to the server once, and known by its digest from then on. No requests of its own.

const KEPT = 16;

/** post(document, units) → promise of its digest; changed(): another one is known. */
export function createDigests({ post, changed }) {
  const known = new Map(); // by units and the document as text: a digest, or null while it is on its way
  let last = /** @type {string | null} */ (null);

  return {
    /** The digest of a scene, or null until it is known. */
    of(document, units) {
      const key = `${units} ${JSON.stringify(document)}`;
      if (known.has(key)) return known.get(key);
      known.set(key, null);
      while (known.size > KEPT) known.delete(known.keys().next().value);
      Promise.resolve(post(document, units)).then(
        digest => {
          known.set(key, digest);
          changed();
        },
        () => known.delete(key), // it is asked for again at the next look
      );
      return null;
    },
    /** Of the scene that was shown last. */
    get last() {
      return last;
    },
    /** The digest of the scene that is shown; of the one before while it is not known. */
    shown(document, units) {
      last = this.of(document, units) ?? last;
      return last;
    },
  };
}
