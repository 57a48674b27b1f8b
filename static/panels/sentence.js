// The sentence of a motion's inputs, whose figures are fields.

import { groundOf, shapeOf } from '../state/shapes.js';
import { axisWords } from '../state/spin_axis.js';
import { elevationWords, headingWords, timesWords } from '../state/words.js';
import { h, setChildren } from './dom.js';
import { createInline } from './inline.js';

// a name in braces is a field of the motion; what it says follows from what the motion has
const SENTENCES = {
  drop: motion => `Dropped from {place.height_m} above the ${motion.ground}${spins(motion)}.${bounces(motion)}`,
  throw: motion => `Thrown at {speed_m_s}, {elevation_deg}, {heading_deg}${spins(motion)}.${bounces(motion)}`,
  pour: () => 'Poured at {flow_ml_s} from a lip of {lip_diameter_mm}, {elevation_deg}, {heading_deg}, for {duration_s}.',
  roll: motion => `${start(motion)}${motion.ramp ? ' on a ramp of {ramp.slope_deg} that rises {ramp.heading_deg}' : ''}${turns(motion)}.`,
  stand: motion => `Stands on a table, its middle {place.height_m} above the ${motion.ground}.`,
};
const start = ({ start: how, speed_m_s: speed }) =>
  how === 'sliding' ? 'Set sliding at {speed_m_s}, {heading_deg},' : speed ? 'Rolled at {speed_m_s}, {heading_deg},' : 'Let roll from rest';
const turns = ({ ball_spin_rpm: spin }) => (spin ? ' spinning at {ball_spin_rpm} about the upright' : '');
const spins = ({ ball_spin_rpm: spin, ball_spin_axis: axis, heading_deg: heading }) =>
  spin ? `, spinning at {ball_spin_rpm} ${axisWords(axis, heading ?? 0)}` : '';
const bounces = ({ bounces: count }) => (count ? ' It may rebound {bounces}.' : '');

export function createSentence({ store, index, kind }) {
  const element = h('span', { class: 'given' });
  let made = null,
    figures = [];

  const WORDS = {
    elevation_deg: elevationWords,
    heading_deg: degrees => headingWords(degrees, shapeOf(store.document.habitat)),
    bounces: timesWords,
  };

  function build(template) {
    figures = [];
    const parts = template
      .split(/(\{[^}]+\})/)
      .filter(Boolean)
      .map(part => {
        if (!part.startsWith('{')) return part;
        const name = part.slice(1, -1),
          last = name.split('.').at(-1);
        const figure = createInline({
          store,
          path: `motions.${index}.${name}`,
          words: WORDS[last] ?? null,
        });
        figures.push(figure);
        return figure.element;
      });
    setChildren(element, parts, ' ');
  }
  // made anew only when it says something else: a figure in hand keeps its focus
  function update() {
    const motion = store.document.motions[index];
    if (!motion) return;
    const template = tidy(SENTENCES[kind]?.({ ...motion, ground: groundOf(store.document.habitat) }) ?? '');
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
