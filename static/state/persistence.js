// A link with the whole scene, the address of the page, and how the page was set. Scenes are kept in static/kept. No elements.

import { tr } from './language.js';
import { withoutDefaults, isScene } from './fields.js';
import { withShown } from './shown.js';

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

// How the page was set, kept in the browser. A broken or full storage is no failure.

const VIEW = 'rimfall.view';
const VIEW_KEPT = [
  'units',
  'theme',
  'type',
  'tense',
  'keys',
  'beads_s',
  'arrows',
  'companion',
  'companionOutside',
  'measure',
  'compare',
  'away',
  'steady',
  'guided',
  'warned',
];

export function createViewStorage(storage) {
  return {
    view(first) {
      const kept = parsed(storage);
      if (kept === null || typeof kept !== 'object') return {};
      return Object.fromEntries(VIEW_KEPT.filter(key => typeof kept[key] === typeof first[key]).map(key => [key, kept[key]]));
    },
    saveView(view) {
      try {
        storage.setItem(VIEW, JSON.stringify(Object.fromEntries(VIEW_KEPT.map(key => [key, view[key]]))));
      } catch {
        // it is set anew the next time
      }
    },
  };
}

function parsed(storage) {
  try {
    return JSON.parse(storage.getItem(VIEW));
  } catch {
    return null;
  }
}

// After each settled change the scene goes into the address.

const SETTLE_MS = 250;

/** `shown`: the address that the first scene was found by; another one that came meanwhile is opened. written({hash, fits}): what was written
 *  there, the scene left out where it is too long for one; moved(document, hash): before a scene of another address is opened.
 *  Returns {settled}: null where nothing is to be written; else it is written now, the scene that the page began with too, and comes when it has been. */
export function createAddress({ store, clock, views, shown, open, written, moved }) {
  let timer = 0, // none
    due = false, // the scene is not there yet
    wrote = false, // ever: what the page began with is in no address
    newest = 0, // of what is written
    links = 0,
    seen = shown, // what was last written there, or came and was opened
    { chosenPace } = clock;

  async function write() {
    timer = 0;
    const mine = (newest += 1);
    const scene = await toHash(store.document, store.fields);
    if (mine !== newest || location.hash !== seen) return; // a link has come, which is still to be opened
    const whole = withShown(scene, store, clock.chosenPace);
    const fits = location.origin.length + location.pathname.length + whole.length <= LONGEST_LINK;
    const hash = fits ? whole : withShown('', store, clock.chosenPace);
    history.replaceState(null, '', hash || location.pathname + location.search);
    seen = location.hash;
    due = false;
    wrote = true;
    written({ hash, fits });
  }
  function soon() {
    due = true;
    clearTimeout(timer);
    timer = setTimeout(write, SETTLE_MS);
  }

  async function come() {
    const { hash } = location;
    if (hash === seen) return;
    seen = hash;
    newest += 1; // what was to be written is of the scene before
    clearTimeout(timer);
    const mine = (links += 1);
    try {
      const document = await fromHash(hash);
      if (mine !== links) return;
      if (document) {
        moved(document, hash);
        return open(document);
      }
    } catch {
      if (mine !== links) return;
      store.tell({ kind: 'refused', field: null, say: tr('The link in the address holds no whole scene. Nothing was changed.') });
    }
    if (due) soon();
  }

  // a dial that follows may come after the change it follows was written
  store.on('document', ({ live, followed }) => {
    if (!live || followed) soon();
  });
  store.on('view', patch => {
    if (!store.view.lent) views.saveView(store.view); // what a step of a talk sets is not kept
    if (patch && ('hidden' in patch || ('place' in patch && store.shot.asked))) soon();
  });
  store.on('shot', ({ aim, live }) => {
    if (aim && store.shot.asked && !live) soon();
  });
  clock.on(() => {
    if (clock.chosenPace === chosenPace) return;
    ({ chosenPace } = clock);
    soon();
  });
  addEventListener('hashchange', come);
  come();

  return {
    settled() {
      if (!due && (wrote || seen)) return null;
      clearTimeout(timer);
      return write();
    },
  };
}
