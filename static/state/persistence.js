// What keeps a scene: a link with the whole of it, the browser's storage, and how the page's changes get into both. No elements.

import { withoutDefaults, isScene } from './fields.js';

export const LONGEST_LINK = 8000;
const LARGEST_SCENE = 1_000_000;

export async function toHash(document, fields) {
  const text = JSON.stringify(withoutDefaults(fields, document));
  const packed = await through(new TextEncoder().encode(text), new CompressionStream('deflate-raw'));
  return `#s=${base64url(packed)}`;
}

/** The scene in a hash; null when the hash carries none; throws when what it carries is no scene. */
export async function fromHash(hash) {
  const match = /^#s=([\w-]+)/.exec(hash ?? '');
  if (!match) return null;
  const bytes = await through(fromBase64url(match[1]), new DecompressionStream('deflate-raw'), LARGEST_SCENE);
  const document = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  if (!isScene(document)) throw new Error('not a scene');
  return document;
}

async function through(bytes, stream, limit = Infinity) {
  const writer = stream.writable.getWriter();
  const sent = writer.write(bytes).then(() => writer.close());
  sent.catch(() => {}); // a broken stream is told by the reader too
  const chunks = [];
  let size = 0;
  const reader = stream.readable.getReader();
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    size += part.value.length;
    if (size > limit) {
      await reader.cancel();
      throw new Error('too large');
    }
    chunks.push(part.value);
  }
  await sent;
  const out = new Uint8Array(size);
  chunks.reduce((at, chunk) => {
    out.set(chunk, at);
    return at + chunk.length;
  }, 0);
  return out;
}

function base64url(bytes) {
  let text = '';
  for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64url(text) {
  return Uint8Array.from(atob(text.replace(/-/g, '+').replace(/_/g, '/')), c => c.charCodeAt(0));
}

// The scene at hand, the recent ones and how the page was set, kept in the browser. A broken or full storage is no failure.

const SCENE = 'rimfall.scene',
  RECENT = 'rimfall.recent',
  VIEW = 'rimfall.view';
const RECENT_KEPT = 8;
const VIEW_KEPT = ['units', 'theme', 'keys', 'beads_s', 'arrows', 'companion', 'companionOutside', 'measure', 'compare', 'away'];

export function createAutosave(storage) {
  const get = key => {
    try {
      return JSON.parse(storage.getItem(key));
    } catch {
      return null;
    }
  };
  const put = (key, value) => {
    try {
      storage.setItem(key, JSON.stringify(value));
      return true;
    } catch {
      return false;
    }
  };
  return {
    scene() {
      const document = get(SCENE);
      return isScene(document) ? document : null;
    },
    save: document => put(SCENE, document),
    recent() {
      const list = get(RECENT);
      return Array.isArray(list) ? list.filter(item => isScene(item?.document)) : [];
    },
    /** Newest first; a scene of the same title takes the older one's place. */
    remember(document, when) {
      const title = document.title || 'Untitled scene';
      const others = this.recent().filter(item => item.title !== title);
      return put(RECENT, [{ title, when, document }, ...others].slice(0, RECENT_KEPT));
    },
    view(first) {
      const kept = get(VIEW);
      if (kept === null || typeof kept !== 'object') return {};
      return Object.fromEntries(VIEW_KEPT.filter(key => typeof kept[key] === typeof first[key]).map(key => [key, kept[key]]));
    },
    saveView: view => put(VIEW, Object.fromEntries(VIEW_KEPT.map(key => [key, view[key]]))),
  };
}

// After each settled change the scene goes into the browser's storage and into the address.

const SETTLE_MS = 250;

export function createPersistence({ store, autosave, open }) {
  let timer = 0, // none
    newest = 0;

  async function keep() {
    clearTimeout(timer);
    timer = 0;
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
    if (timer) autosave.save(store.document);
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
