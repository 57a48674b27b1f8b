// A scene in the address: '#s=' + base64url of raw deflate of the document without its defaults.

import { withoutDefaults } from './fields.js';
import { isScene } from './paths.js';

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
