// Presenting, fetched with the first press that wants it.

import { tr } from '../state/language.js';
import { dressed } from './shared/dressed.js';

/** `element`: what fills the window; room() → promise of who follows, null where nobody can; given() → {talk, conductor} that the page holds, or null:
 *  then the scene is presented as it stands. → enter(). */
export function createPresentLater({ store, clock, status, element, room, given }) {
  let present = null,
    returnTo = null,
    conducted = null; // by us

  async function enter() {
    const focused = document.activeElement,
      { talk = null, conductor = null } = given() ?? {};
    present ??= load();
    try {
      (await present).enter(talk);
    } catch {
      present = null;
      return store.tell({ kind: 'failed', field: null, say: tr('This part of the page could not be loaded.'), again: enter });
    }
    returnTo = focused;
    if (!conductor || conductor.conducting) return;
    conducted = conductor;
    conductor.begin();
  }
  function left() {
    conducted?.end();
    conducted = null;
    returnTo?.focus();
  }
  async function load() {
    const job = status.begin({ say: tr('Loading') });
    try {
      const [{ createPresent }, followers] = await Promise.all([import('./present/present.js'), room(), dressed('static/present.css')]);
      return createPresent({ store, clock, element, notes: openNotes, Channel: window.BroadcastChannel, room: followers, left });
    } finally {
      job.end();
    }
  }
  return { enter: () => enter() };
}

// one window, however often it is asked for
function openNotes() {
  window.open('speaker', 'rimfall-speaker', 'popup,width=980,height=700')?.focus();
}
