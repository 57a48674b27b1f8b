// The sentence of a motion's inputs, whose figures are fields.

import { elevationWords, headingWords } from '../state/words.js';
import { h } from './dom.js';
import { createInline } from './inline.js';

// a name in braces is a field of the motion
const SENTENCES = {
  drop: 'Dropped from {place.height_m} above the deck.',
  throw: 'Thrown at {speed_m_s}, {elevation_deg}, {heading_deg}.',
  pour: 'Poured at {flow_ml_s} from a lip of {lip_diameter_mm}, {elevation_deg}, {heading_deg}, for {duration_s}.',
};
const WORDS = { elevation_deg: elevationWords, heading_deg: headingWords };

export function createSentence({ store, index, kind }) {
  const figures = [];
  const parts = (SENTENCES[kind] ?? '')
    .split(/(\{[^}]+\})/)
    .filter(Boolean)
    .map(part => {
      if (!part.startsWith('{')) return part;
      const name = part.slice(1, -1);
      const figure = createInline({ store, path: `motions.${index}.${name}`, words: WORDS[name] ?? null });
      figures.push(figure);
      return figure.element;
    });
  return { element: h('span', { class: 'given' }, parts, ' '), update: () => figures.forEach(figure => figure.update()) };
}

const LENGTH = String.raw`\d[\d.,]*[\s\u00a0](?:mm|cm|km|m|ft|in)\b(?!/)`;
const LANDS = new RegExp(String.raw`(?<=\blands? )${LENGTH}`);

/** The outcome in the server's words, with where it lands in bold. */
export function outcome(words) {
  const text = words.join(' ');
  const found = LANDS.exec(text);
  if (!found) return [text];
  return [text.slice(0, found.index), h('b', {}, found[0].replace(' ', '\u00a0')), text.slice(found.index + found[0].length)];
}
