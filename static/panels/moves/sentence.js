// The sentence of a motion's inputs, whose figures are fields.

import { fieldOf } from '../../state/fields.js';
import { groundOf } from '../../state/shapes.js';
import { showQuantity } from '../../state/units.js';
import { elevationWords, headingWords, timesWords } from '../../state/words.js';
import { h, setChildren } from '../shared/dom.js';
import { createInline } from '../shared/inline.js';
import { SENTENCES } from './sentences.js';

export function createSentence({ store, index, kind }) {
  const element = h('span', { class: 'given' });
  let made = null,
    figures = [];

  const toward = degrees => headingWords(degrees, groundOf(store.fields, store.document.habitat).across);
  const WORDS = {
    elevation_deg: elevationWords,
    heading_deg: toward,
    first_heading_deg: toward,
    bounces: timesWords,
    ...(kind === 'let_go' && { height_m: metres => `${showQuantity(Math.abs(metres), 'm', store.view.units)} under` }),
  };

  function build(template) {
    figures = [];
    const parts = template
      .split(/(\{[^}]+\})/)
      .filter(Boolean)
      .map(part => {
        if (!part.startsWith('{')) return part;
        const name = part.slice(1, -1),
          path = `motions.${index}.${name}`;
        if (!fieldOf(store.fields, path)) return '';
        const figure = createInline({ store, path, words: WORDS[name.split('.').at(-1)] ?? null });
        figures.push(figure);
        return figure.element;
      });
    setChildren(element, parts, ' ');
  }
  // with its defaults, and what it happens on
  function whole(motion) {
    const names = store.fields.kinds[kind]?.fields ?? [];
    const filled = names.map(name => [name, motion[name] ?? fieldOf(store.fields, `motions.${index}.${name}`)?.default]);
    return { ...Object.fromEntries(filled), ...motion, ground: groundOf(store.fields, store.document.habitat).name };
  }
  // made anew only when it says something else: a figure in hand keeps its focus
  function update() {
    const motion = store.document.motions[index];
    if (!motion) return;
    const template = tidy(SENTENCES[kind]?.(whole(motion)) ?? '');
    if (template !== made) build((made = template));
    figures.forEach(figure => figure.update());
  }
  return { element, update };
}

function tidy(template) {
  return template.replace(/,(?=\.)/g, '').replace(/,(?= on a ramp)/, '');
}

const LENGTH = String.raw`\d[\d.,]*[\s\u00a0](?:mm|cm|km|m|ft|in)\b(?!/)`;
const LANDS = new RegExp(String.raw`(?<=\b(?:lands?|comes to rest|passes the edge) )${LENGTH}`);

/** The outcome in the server's words, with where it lands in bold. */
export function outcome(words) {
  const text = words.join(' ');
  const found = LANDS.exec(text);
  if (!found) return [text];
  return [text.slice(0, found.index), h('b', {}, found[0].replace(' ', '\u00a0')), text.slice(found.index + found[0].length)];
}
