// Reading and writing inside a plain document by a dotted path such as 'motions.1.place.height_m'.

const STEP = /^\d+$/;

export function keysOf(path) {
  return path.split('.').map(key => (STEP.test(key) ? Number(key) : key));
}

/** undefined where the path is not in the document; null where a null lies on the way to it. */
export function getAt(document, path) {
  let here = document;
  for (const key of keysOf(path)) {
    if (here === null) return null;
    if (typeof here !== 'object') return undefined;
    here = here[key];
    if (here === undefined) return undefined;
  }
  return here;
}

/** A copy of the document with the value at the path; what the path does not touch is shared, never changed. */
export function putAt(document, path, value) {
  const keys = keysOf(path);
  const put = (here, depth) => {
    if (depth === keys.length) return value;
    const copy = Array.isArray(here) ? here.slice() : { ...(isRecord(here) ? here : {}) };
    copy[keys[depth]] = put(copy[keys[depth]], depth + 1);
    return copy;
  };
  return put(document, 0);
}

export function isRecord(value) {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/** Enough of a scene to be shown; whether its values are good is the server's to say. */
export function isScene(value) {
  return (
    isRecord(value) &&
    value.rimfall === 1 &&
    isRecord(value.habitat) &&
    Array.isArray(value.motions) &&
    value.motions.every(m => isRecord(m) && typeof m.kind === 'string')
  );
}
