// Files out of the page and into it.

import { h } from './dom.js';

/** content: a text with its type, or a Blob. */
export function download(name, content, type) {
  const url = URL.createObjectURL(content instanceof Blob ? content : new Blob([content], { type }));
  const link = h('a', { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A file name from a title: 'The same lob, both ways' → the-same-lob-both-ways */
export function fileName(title) {
  return (
    (title || 'scene')
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 60) || 'scene'
  );
}

/** What is wrong with a text as JSON, by line and column where the browser says where. */
export function readJson(text) {
  try {
    return { value: JSON.parse(text) };
  } catch (problem) {
    const at = /position (\d+)/.exec(problem.message);
    if (!at) return { wrong: 'It is not JSON.' };
    const before = text.slice(0, Number(at[1])).split('\n');
    return { wrong: `Line ${before.length}, column ${before.at(-1).length + 1} is not JSON.` };
  }
}
