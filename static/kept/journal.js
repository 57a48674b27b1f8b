// What local storage holds of scenes: last words of a page that is being left, which has no time for a database; and what versions
// before the database kept there. Both are taken into the database by the next page.

import { isScene } from '../state/fields.js';
import { newRecord, same } from './records.js';

const LAST = 'rimfall.unwritten.';
const FORMER_SCENE = 'rimfall.scene',
  FORMER_RECENT = 'rimfall.recent';

export function createJournal(storage) {
  return {
    /** @returns {boolean} whether it is written */
    put(record, after) {
      try {
        storage.setItem(LAST + record.id, JSON.stringify({ record, after }));
        return true;
      } catch {
        return false;
      }
    },
    drop: id => forget(storage, LAST + id),
  };
}

/** Everything that local storage holds taken into the database; taken away there once it is safe here. `open`: ids that other tabs
 *  have open and write themselves. */
export async function takeInFrom(storage, { records, open, now_ms, newId }) {
  for (const key of keysOf(storage).filter(key => key.startsWith(LAST) && !open.has(key.slice(LAST.length)))) {
    const { record, after } = parsed(storage, key) ?? {};
    if (!isScene(record?.document)) continue;
    await takeLastWords(records, record, after, newId);
    forget(storage, key);
  }
  const former = formerRecords(storage, now_ms);
  if (!former.length) return;
  await records.takeIn(former);
  for (const key of [FORMER_SCENE, FORMER_RECENT]) forget(storage, key);
}

async function takeLastWords(records, record, after, newId) {
  const { theirs } = await records.write(record, after);
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
