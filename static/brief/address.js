// Where the scene of a printed page can be opened again.

import { h } from '../panels/shared/dom.js';
import { LONGEST_LINK, toHash } from '../state/persistence.js';

const LONGEST_READ = 300; // of an address that somebody may still type from paper

/** {url, rows}: the workbench's address with the scene, and what the page says of it. */
export async function linkOf(scene, fields) {
  const url = new URL('./', location.href).href + (await toHash(scene, fields));
  if (url.length > LONGEST_LINK) return { url: './', rows: [h('p', {}, 'The scene is too long for a link: keep its file with this page.')] };
  return { url, rows: url.length > LONGEST_READ ? [] : [h('p', { class: 'address' }, url)] };
}
