// What the server says about each field (label, unit, range, default), and a document read and written by dotted paths such as
// 'motions.1.place.height_m'.

/** The two dials' paths. */
export const RADIUS = 'habitat.radius_m',
  SPIN = 'habitat.spin_rpm';

const STEP = /^\d+$/;

function keysOf(path) {
  return path.split('.').map(key => (STEP.test(key) ? Number(key) : key));
}

/** undefined where the path is not in the document; null where a null lies on the way to it. */
export function getAt(document, path) {
  let part = document;
  for (const key of keysOf(path)) {
    if (part === null) return null;
    if (typeof part !== 'object') return undefined;
    part = part[key];
    if (part === undefined) return undefined;
  }
  return part;
}

/** A copy of the document with the value at the path; what the path does not touch is shared, never changed. */
export function putAt(document, path, value) {
  const keys = keysOf(path);
  const put = (part, depth) => {
    if (depth === keys.length) return value;
    const copy = Array.isArray(part) ? part.slice() : { ...(isRecord(part) ? part : {}) };
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

/** A whole talk, each step with its scene. */
export function isTalk(value) {
  return isRecord(value) && value.rimfall_talk === 1 && Array.isArray(value.steps) && value.steps.every(step => isRecord(step) && isScene(step.scene));
}

// What the server says about each field: label, unit, range, default. The page keeps none of its own.

const STARRED = /\.\d+(?=\.|$)/g;
const OF_A_MOTION = /^motions\.(\d+)\.(.+)$/;
const BESIDE = /^compare\.\d+\.(?=(habitat|motions)(\.|$))/;

/** 'motions.3.speed_m_s' is described under 'motions.*.speed_m_s', or by its kind where that differs (`kindOf(3)` says which
 *  kind that is); a habitat beside the scene's own as that one is. */
export function fieldOf(fields, path) {
  const own = path.replace(BESIDE, '');
  return ofKind(fields, own) ?? fields?.fields?.[own] ?? fields?.fields?.[own.replace(STARRED, '.*')] ?? null;
}

function ofKind(fields, path) {
  const [, index, name] = OF_A_MOTION.exec(path) ?? [];
  return name ? (fields?.kinds?.[fields.kindOf?.(Number(index))]?.own?.[name.replace(STARRED, '.*')] ?? null) : null;
}

function defaultOf(fields, path) {
  return fieldOf(fields, path)?.default ?? null;
}

/** The part of the range a slider shows, and how it is spread. */
export function shownOf(field) {
  if (field.shown) return field.shown;
  const { min, max } = field;
  const wide = min > 0 && max / min > 100;
  return { min, max, scale: wide ? 'log' : 'linear' };
}

export function readAt(fields, document, path) {
  const value = getAt(document, path);
  if (value !== undefined) return value;
  return defaultOf(fields, path) ?? partOfDefault(fields, path);
}

// of a list that the document leaves out, and that has a default as a whole
function partOfDefault(fields, path) {
  const [, list, index] = /^(.*)\.(\d+)$/.exec(path) ?? [];
  const whole = list ? defaultOf(fields, list) : null;
  return Array.isArray(whole) ? (whole[index] ?? null) : null;
}

/** A motion's name as the answer gives it, or as it would be given: kind and number. */
export function motionName(store, index) {
  const motion = store.document.motions[index];
  if (motion?.name) return motion.name;
  const answered = store.answer?.scene?.motions;
  if (answered?.length === store.document.motions.length && answered[index]?.name) return answered[index].name;
  return `${motion?.kind ?? 'motion'} ${index + 1}`;
}

/** The document without what equals its default: what a link carries. */
export function withoutDefaults(fields, document) {
  return strip({ ...fields, kindOf: index => document.motions?.[index]?.kind }, document, '') ?? {};
}

const KEPT = new Set(['rimfall', 'habitat', 'motions']);
const ASKED = 'craft.'; // a block that is there is a question, whatever it holds

function strip(fields, value, path) {
  const field = path ? fieldOf(fields, path) : null;
  const asked = path.startsWith(ASKED);
  if (field && !field.required && !(asked && Array.isArray(value)) && field.default !== undefined && same(value, field.default)) return undefined;
  if (Array.isArray(value)) {
    const items = value.map((item, i) => strip(fields, item, `${path}.${i}`) ?? emptied(item));
    return items.length || KEPT.has(path) || asked ? items : undefined;
  }
  if (!isRecord(value)) return value;
  const entries = Object.entries(value)
    .map(([key, item]) => [key, strip(fields, item, path ? `${path}.${key}` : key)])
    .filter(([, item]) => item !== undefined);
  return entries.length || !path || KEPT.has(path) || asked ? Object.fromEntries(entries) : undefined;
}

// an item of a list keeps its place even when all of it equals the defaults
function emptied(item) {
  return isRecord(item) ? {} : item;
}

function same(a, b) {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
