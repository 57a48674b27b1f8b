// The sentence of a motion's inputs, whose figures are fields: ruled under, dragged sideways, stepped by the arrows, or clicked and
// typed.

import { fieldOf, shownOf } from '../../state/fields.js';
import { makeScale, roundTo } from '../../state/scale.js';
import { parseFigure, proseFigure, proseUnit, shownUnit, showQuantity } from '../../state/units.js';
import { h, onDrag, setAttribute, setText, setChildren } from '../shared/dom.js';
import { wholeSteps } from '../shared/field.js';
import { outside } from '../shared/figure.js';
import { sayInvalid } from '../shared/field_error.js';
import { sentenceOf, axisWords } from '../../state/motions.js';
import { groundOf } from '../../state/shapes.js';
import { elevationWords, headingWords, timesWords } from '../../state/words.js';

const DRAG_PX = 3; // a fine step for so many pixels

/** `words(value)` where the figure is said otherwise than by number and unit (a heading) */
function createInline({ store, path, words = null }) {
  const field = fieldOf(store.fields, path);
  const { whole } = field; // no parts of one
  const scale = whole ? wholeSteps(makeScale(shownOf(field))) : makeScale(shownOf(field));
  const element = h('span', {
    class: 'fig',
    role: 'spinbutton',
    tabindex: 0,
    'aria-label': field.label,
    title: 'Drag sideways, use the arrows, or click to type',
    onkeydown,
  });
  let typing = null;

  const value = () => store.read(path) ?? 0;
  function say(v) {
    return words ? words(v) : proseFigure(v, field.unit ?? '', store.view.units, scale.step(v));
  }
  function put(next, live) {
    const near = whole ? Math.round(next) : roundTo(next, scale.step(next) / 10);
    store.set(path, Math.min(field.max, Math.max(field.min, near)), { live });
  }
  function update() {
    if (typing) return;
    setText(element, say(value()));
    setAttribute(element, 'aria-valuenow', value());
    setAttribute(element, 'aria-valuetext', say(value()));
    setAttribute(element, 'aria-valuemin', field.min);
    setAttribute(element, 'aria-valuemax', field.max);
  }

  function onkeydown(event) {
    if (typing) return;
    const ten = scale.step(value()) * 10,
      size = event.shiftKey ? ten : ten / 10;
    const step = { ArrowUp: size, ArrowRight: size, ArrowDown: -size, ArrowLeft: -size, PageUp: ten, PageDown: -ten }[event.key];
    if (step) put(value() + step, false);
    else if (event.key === 'Enter' || /^[-\d.]$/.test(event.key)) type(event.key === 'Enter' ? null : event.key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  let from = 0;
  onDrag(element, {
    start() {
      from = value();
      return !typing;
    },
    move(event, down, moved) {
      if (moved) put(from + Math.round((event.clientX - down.clientX) / DRAG_PX) * scale.step(from) * (event.shiftKey ? 0.1 : 1), true);
    },
    end(_event, moved) {
      if (moved) put(value(), false);
      else type(null);
    },
  });

  function type(first) {
    const input = h('input', { type: 'text', class: 'typed', inputmode: 'decimal', 'aria-label': field.label });
    input.value = first ?? typedAs();
    typing = input;
    element.replaceChildren(input);
    input.focus();
    if (first === null) input.select();
    const done = keep => {
      if (typing !== input) return;
      typing = null;
      if (keep) take(input.value);
      element.textContent = '';
      update();
    };
    input.addEventListener('blur', () => done(true));
    input.addEventListener('keydown', event => {
      event.stopPropagation();
      if (event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      done(event.key === 'Enter');
      element.focus();
    });
  }

  // what stands in the field when it is opened: without a unit where that is the field's own
  function typedAs() {
    const { units } = store.view,
      unit = field.unit ?? '',
      text = proseFigure(value(), unit, units, scale.step(value()));
    return proseUnit(value(), unit, units) === shownUnit(unit, units) ? text.replace(/[^\d.−-]+$/, '') : text;
  }

  // a figure without a unit is in the one that the sentence shows
  function take(typed) {
    const { units } = store.view,
      unit = field.unit ?? '',
      shown = proseUnit(value(), unit, units);
    const text = shown !== shownUnit(unit, units) && /^[-+−\d.,\s]+$/.test(typed) ? `${typed} ${shown}` : typed;
    const parsed = parseFigure(text, { unit, system: units });
    if (parsed.error || outside(field, parsed.value)) return sayInvalid(store, path, text.trim());
    store.set(path, whole ? Math.round(parsed.value) : parsed.value);
  }
  return { element, update };
}

// The sentence of a motion's inputs, whose figures are fields.

export function createSentence({ store, index, kind }) {
  const element = h('span', { class: 'given' });
  let builtFrom = null,
    figures = [];

  const toward = degrees => headingWords(degrees, groundOf(store.fields, store.document.habitat).across);
  const WORDS = {
    elevation_deg: elevationWords,
    heading_deg: toward,
    first_heading_deg: toward,
    bounces: timesWords,
    under: metres => `${showQuantity(Math.abs(metres), 'm', store.view.units)} under`,
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
        const figure = createInline({ store, path, words: WORDS[how] ?? null });
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
    if (name === 'ground') return groundOf(store.fields, store.document.habitat).name;
    const said = fieldOf(store.fields, `motions.${index}.${name}`)?.kind;
    if (said === 'choice') return motion[name];
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

/** The outcome in the server's words, in the `pieces` of its answer: the second says how far off it ends, and stands in bold. */
export function outcome(pieces) {
  return pieces.map((piece, i) => (i === 1 ? h('b', {}, piece) : piece));
}
