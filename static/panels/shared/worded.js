// Words with the terms among them made buttons that explain them, each where it first stands.

import { h } from './dom.js';

const TERMS = { coriolis: 'Coriolis', drag: 'Drag', 'plain gravity': 'Plain gravity', antispinward: 'Antispinward', spinward: 'Spinward' };
const FOUND = /\b(Coriolis|drag|plain gravity|antispinward|spinward)\b/;

/** A list of nodes and strings for a text; `told`: the terms explained so far, added to. explain(term, element). */
export function worded(text, explain, told = new Set()) {
  const [before, word, ...rest] = text.split(FOUND);
  if (!word) return [text];
  const after = worded.bind(null, rest.join(''), explain, told),
    term = TERMS[word.toLowerCase()];
  if (told.has(term)) return [before + word, ...after()];
  told.add(term);
  const button = h('button', { type: 'button', class: 'word', title: `What ${word} is`, onclick: () => explain(term, button) }, word);
  return [before, button, ...after()];
}
