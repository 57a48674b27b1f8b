// What local storage holds of scenes: changes that are not in the database yet, for a page that is left has no time for one; and what
// versions before the database kept there. Both are taken into the database by the next page.

import { isScene } from '../state/fields.js';
import { newRecord, same } from './records.js';

const UNWRITTEN = 'rimfall.unwritten.';
export const UNWRITTEN_TALK = 'rimfall.unwritten-talk.';
const FORMER_SCENE = 'rimfall.scene',
  FORMER_RECENT = 'rimfall.recent';

export function createJournal(storage, prefix = UNWRITTEN) {
  return {
    /** A record as it is to be written over revision `after`: whether local storage took it.
     *  @returns {boolean} */
    put(record, after) {
      try {
        storage.setItem(prefix + record.id, JSON.stringify({ record, after }));
        return true;
      } catch {
        return false;
      }
    },
    drop: id => forget(storage, prefix + id),
  };
}

/** Everything that local storage holds taken into the database; taken away there once it is safe here. `open`: ids that other tabs
 *  have open and write themselves. */
export async function takeInFrom(storage, { records, open, now_ms, newId }) {
  await takeUnwrittenFrom(storage, { records, open, newId });
  const former = formerRecords(storage, now_ms);
  if (!former.length) return;
  await records.takeIn(former);
  for (const key of [FORMER_SCENE, FORMER_RECENT]) forget(storage, key);
}

/** Changes that are not in the database yet, of scenes or of talks: `prefix` and `is`(document) say of which. */
export async function takeUnwrittenFrom(storage, { records, open, newId, prefix = UNWRITTEN, is = isScene }) {
  for (const key of keysOf(storage).filter(key => key.startsWith(prefix) && !open.has(key.slice(prefix.length)))) {
    const { record, after } = parsed(storage, key) ?? {};
    if (!is(record?.document)) continue;
    await takeUnwritten(records, record, after, newId);
    forget(storage, key);
  }
}

// over what it was made from; beside it where somebody else has written since
async function takeUnwritten(records, record, after, newId) {
  const { drawing = null } = (await records.read(record.id)) ?? {};
  const { theirs } = await records.write({ drawing, ...record }, after);
  if (theirs && !same(theirs.document, record.document)) await records.write({ ...record, id: newId() }, null);
}

/** The scene at hand is the newest; the recent ones have the times at which they were left. */
function formerRecords(storage, now_ms) {
  const scene = parsed(storage, FORMER_SCENE);
  const recent = parsed(storage, FORMER_RECENT);
  const found = [
    isScene(scene) && newRecord('at-hand', scene, now_ms),
    ...(Array.isArray(recent) ? recent : [])
      .filter(item => isScene(item?.document))
      .map(({ when, document }, i) => newRecord(`recent-${Number(when) || i}`, document, Math.min(Number(when) || 0, now_ms - 1))),
  ].filter(record => record !== false);
  return found.filter((record, i) => found.findIndex(other => same(other.document, record.document)) === i);
}

function keysOf(storage) {
  try {
    return Array.from({ length: storage.length }, (_, i) => storage.key(i) ?? '');
  } catch {
    return [];
  }
}

function parsed(storage, key) {
  try {
    return JSON.parse(storage.getItem(key));
  } catch {
    return null;
  }
}

function forget(storage, key) {
  try {
    storage.removeItem(key);
  } catch {
    // what cannot be taken away is taken in again, and found to be there already
  }
}
