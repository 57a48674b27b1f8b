// After each settled change the scene goes into the browser's storage and into the address.

import { LONGEST_LINK, fromHash, toHash } from '../state/link.js';

const SETTLE_MS = 250;

export function createKeeping({ store, autosave, open }) {
  let timer = null,
    newest = 0;

  async function keep() {
    clearTimeout(timer);
    timer = null;
    autosave.save(store.document);
    const mine = (newest += 1);
    const hash = await toHash(store.document, store.fields);
    if (mine !== newest) return;
    const fits = location.origin.length + location.pathname.length + hash.length <= LONGEST_LINK;
    history.replaceState(null, '', fits ? hash : location.pathname + location.search);
  }

  // a dial that follows may come after the change it follows was kept
  store.on('document', ({ live, followed }) => {
    if (live && !followed) return;
    clearTimeout(timer);
    timer = setTimeout(keep, SETTLE_MS);
  });
  store.on('view', () => autosave.saveView(store.view));
  addEventListener('pagehide', () => {
    if (timer !== null) autosave.save(store.document);
  });
  addEventListener('hashchange', async () => {
    try {
      const document = await fromHash(location.hash);
      if (document) open(document);
    } catch {
      store.tell({ kind: 'refused', field: null, say: 'The link in the address holds no whole scene. Nothing was changed.' });
    }
  });
}
