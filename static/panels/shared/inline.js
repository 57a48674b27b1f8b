// A figure in a sentence: ruled under, dragged sideways, stepped by the arrows, or clicked and typed.

import { tr } from '../../state/language.js';
import { shownOf } from '../../state/fields.js';
import { makeScale, roundTo } from '../../state/scale.js';
import { parseFigure, proseFigure, proseUnit, shownUnit } from '../../state/units.js';
import { h, onDrag, setAttribute, setText } from './dom.js';
import { wholeSteps } from './field.js';
import { outside } from './figure.js';

const DRAG_PX = 3; // a fine step for so many pixels

/** field: as the server describes it; units() → which are shown; read() → the value in SI; write(value, live); wrong(typed): what was typed means
 *  nothing, or lies out of the range. `words(value)` where the figure is said otherwise than by number and unit (a heading), `parse(typed)` → the
 *  value, or null, where it is typed otherwise. */
export function createInline({ field, units, read: value, write, wrong, words = null, parse = null }) {
  const { whole } = field; // no parts of one
  const scale = whole ? wholeSteps(makeScale(shownOf(field))) : makeScale(shownOf(field));
  const element = h('span', {
    class: 'fig',
    role: 'spinbutton',
    tabindex: 0,
    'aria-label': field.label,
    title: tr('Drag sideways, use the arrows, or click to type'),
    onkeydown,
  });
  let typing = null;

  function say(v) {
    return words ? words(v) : proseFigure(v, field.unit ?? '', units(), scale.step(v));
  }
  function put(next, live) {
    const near = whole ? Math.round(next) : roundTo(next, scale.step(next) / 10);
    write(Math.min(field.max, Math.max(field.min, near)), live);
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
    else if (event.key === 'Enter' || /^[-\d.,]$/.test(event.key)) type(event.key === 'Enter' ? null : event.key);
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
    const input = h('input', { type: 'text', class: 'typed', inputmode: parse ? 'text' : 'decimal', 'aria-label': field.label });
    const opened = typedAs();
    input.value = first ?? opened;
    typing = input;
    element.replaceChildren(input);
    input.focus();
    if (first === null) input.select();
    const done = keep => {
      if (typing !== input) return;
      typing = null;
      if (keep && input.value !== opened) take(input.value);
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
    if (parse) return say(value());
    const unit = field.unit ?? '',
      text = proseFigure(value(), unit, units(), scale.step(value()));
    return proseUnit(value(), unit, units()) === shownUnit(unit, units()) ? text.replace(/[^\d.−-]+$/, '') : text;
  }

  // a figure without a unit is in the one that the sentence shows
  function take(typed) {
    const unit = field.unit ?? '',
      shown = proseUnit(value(), unit, units());
    const text = shown !== shownUnit(unit, units()) && /^[-+−\d.,\s]+$/.test(typed) ? `${typed} ${shown}` : typed;
    const next = parse ? parse(typed) : (parseFigure(text, { unit, system: units() }).value ?? null);
    if (next === null || outside(field, next)) return wrong((parse ? typed : text).trim());
    write(whole ? Math.round(next) : next, false);
  }
  return { element, update };
}
