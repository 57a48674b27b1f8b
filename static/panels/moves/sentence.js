// The sentence of a motion's inputs, whose figures are fields.

import { tr, trAs } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { showQuantity } from '../../state/units.js';
import { choiceWords } from '../../state/choice_words.js';
import { h, setChildren } from '../shared/dom.js';
import { sayInvalid } from '../shared/field_error.js';
import { createInline } from '../shared/inline.js';
import { sentenceOf, axisWords } from '../../state/motions.js';
import { groundKey, groundOf } from '../../state/shapes.js';
import { elevationWords, headingWords, isStraight, timesWords, typedHeading } from '../../state/words.js';
import { worded } from '../shared/worded.js';

export function createSentence({ store, index, kind }) {
  const element = h('span', { class: 'given' });
  let builtFrom = null,
    figures = [];

  const across = () => groundOf(store.fields, store.document.habitat).across;
  const toward = degrees => headingWords(degrees, across());
  const WORDS = {
    elevation_deg: elevationWords,
    heading_deg: degrees => (isStraight(store.read(`motions.${index}.elevation_deg`) ?? 0) ? tr('facing {way}', { way: toward(degrees) }) : toward(degrees)),
    first_heading_deg: toward,
    bounces: timesWords,
    under: metres => tr('{length} under', { length: showQuantity(Math.abs(metres), 'm', store.view.units) }),
  };

  function build(text) {
    figures = [];
    const parts = text
      .split(/(\{[^}]+\})/)
      .filter(Boolean)
      .map(part => {
        if (!part.startsWith('{')) return part;
        const [name, how = name.split('.').at(-1)] = part.slice(1, -1).split(':'),
          path = `motions.${index}.${name}`;
        if (!fieldOf(store.fields, path)) return '';
        const figure = createInline({
          field: fieldOf(store.fields, path),
          units: () => store.view.units,
          read: () => store.read(path) ?? 0,
          write: (value, live) => store.set(path, value, { live }),
          wrong: typed => sayInvalid(store, path, typed),
          words: WORDS[how] ?? null,
          parse: how.endsWith('heading_deg') ? typed => typedHeading(typed, across()) : null,
        });
        figures.push(figure);
        return figure.element;
      });
    setChildren(element, parts, ' ');
  }
  const { sentence, fields: names } = store.fields.kinds[kind];

  function template() {
    const motion = Object.fromEntries(names.map(name => [name, store.read(`motions.${index}.${name}`)]));
    return sentenceOf(sentence, motion).replace(/\{(\w+)\}/g, (figure, name) => inWords(name, motion) ?? figure);
  }
  // what is said and not dragged: what it happens on, a choice, about what a ball spins
  function inWords(name, motion) {
    if (name === 'ground') return groundWords(groundOf(store.fields, store.document.habitat));
    const said = fieldOf(store.fields, `motions.${index}.${name}`)?.kind;
    if (said === 'choice') return choiceWords(motion[name]);
    return said === 'axis' ? axisWords(motion[name], motion.heading_deg ?? 0) : null;
  }
  // made anew only when it says something else: a figure in hand keeps its focus
  function update() {
    if (!store.document.motions[index]) return;
    const next = template();
    if (next !== builtFrom) build((builtFrom = next));
    figures.forEach(figure => figure.update());
  }
  return { element, update };
}

const groundWords = ground =>
  ({ deck: trAs('above the', 'deck'), floor: trAs('above the', 'floor'), turntable: trAs('above the', 'turntable') })[groundKey(ground)];

/** The outcome in the server's words, in the `pieces` of its answer: the second says how far off it ends, and stands in bold. With
 *  `explain`, terms in it can be pressed. */
export function outcome(pieces, explain = null) {
  const told = new Set();
  const parts = piece => (explain ? worded(piece, explain, told) : [piece]);
  return pieces.flatMap((piece, i) => (i === 1 ? h('b', {}, parts(piece)) : parts(piece)));
}
