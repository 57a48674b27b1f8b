// A place that is fetched when it is first opened, with its style sheets.

import { h } from './dom.js';

/** Comes once the style sheet holds. */
export function dressed(href) {
  return new Promise((done, failed) => {
    document.head.append(h('link', { rel: 'stylesheet', href, onload: done, onerror: failed }));
  });
}
