// The track of a slider: whole range, thumb, ticks on a dial, and the vernier tape while it is in hand.

import { formatFigure } from '../../state/units.js';
import { apart, clamp, makeScale, roundTo } from '../../state/scale.js';
import { h, onDrag, s, setAttribute, whenPointerUp } from './dom.js';
import { createVernier } from './vernier.js';

const DIGIT_PX = 6.2, // of the ticks' figures
  CLEAR_PX = 7, // from figure to figure
  LEAST_APART_PX = 1.6; // from tick to tick

const AS_IT_IS = { to: value => value, from: value => value, step: step => step, name: () => '' };

/** `unit`: what ticks and tape are read in, as the vernier has it, and its name(). value() → number or null; write(value, live); scale from state/scale.js; say(value) → its words; inset: half a thumb. */
export function createSliderTrack({ label, name, scale, value, write, say, inset = 5, ticks = false, centred = false, locked = () => false, unit = AS_IT_IS }) {
  const range = h('input', {
    type: 'range',
    class: 'range',
    min: 0,
    max: 1,
    step: 'any',
    'aria-label': label,
    'data-path': name,
    onkeydown,
    onfocus: show,
    onblur: () => whenPointerUp(hide),
  });
  const fill = h('span', { class: 'fill' });
  const thumb = h('span', { class: 'thumb' });
  const marks = ticks ? s('svg', { class: 'ticks', 'aria-hidden': true }) : null;
  const vernier = createVernier({ scale, value: shown, write: (next, live) => put(next, live, true), unit });
  const element = h('span', { class: `track${ticks ? ' ticked' : ''}` }, marks, h('span', { class: 'rail' }), fill, range, thumb);
  let width = 0,
    drawnIn = '';

  new ResizeObserver(([entry]) => {
    width = entry.contentRect.width;
    drawTicks();
    update();
  }).observe(element);

  function shown() {
    const now = value();
    return now === null ? scale.max : now;
  }

  // coarse moves stop at fine steps; the tape and Shift stop ten times finer
  function put(next, live, finer = false) {
    if (!locked()) write(scale.clamp(roundTo(next, scale.step(next) / (finer ? 10 : 1))), live);
  }

  function update() {
    if (marks && unit.name() !== drawnIn) drawTicks();
    const fraction = scale.toFraction(shown()),
      at = x => inset + (width - 2 * inset) * x;
    const from = centred ? scale.toFraction(0) : 0;
    range.value = String(fraction);
    setAttribute(range, 'aria-valuetext', say(value()));
    setAttribute(range, 'aria-disabled', locked() || null);
    thumb.style.left = `${at(fraction)}px`;
    fill.style.left = `${from === 0 ? 0 : at(Math.min(from, fraction))}px`;
    fill.style.width = `${value() === null ? 0 : from === 0 ? at(fraction) : at(Math.max(from, fraction)) - at(Math.min(from, fraction))}px`;
    if (!vernier.element.hidden) vernier.update();
  }

  function drawTicks() {
    if (!marks || !width) return;
    drawnIn = unit.name();
    const at = v => inset + (width - 2 * inset) * scale.toFraction(unit.from(v));
    const all = makeScale({ min: unit.to(scale.min), max: unit.to(scale.max), scale: scale.kind }).ticks(),
      named = all
        .filter(tick => tick.size === 2)
        .map(tick => ({ say: formatFigure(tick.value, 1), at_px: at(tick.value) }))
        .map(tick => ({ ...tick, wide_px: tick.say.length * DIGIT_PX }));
    // with little room the small ones would run together to a bar
    const closest = Math.min(...all.slice(1).map((tick, i) => at(tick.value) - at(all[i].value)));
    marks.replaceChildren(
      ...all
        .filter(tick => tick.size > 0 || closest >= LEAST_APART_PX)
        .map(tick => s('path', { d: `M${at(tick.value).toFixed(1)} 19v${[3, 5, 7][tick.size]}`, class: tick.size === 2 ? 'long' : 'short' })),
      ...apart(named, CLEAR_PX).map(tick => s('text', { x: tick.at_px.toFixed(1), y: 36, 'text-anchor': 'middle' }, tick.say)),
    );
  }

  function onkeydown(event) {
    const now = shown(),
      fine = scale.step(now) * (event.shiftKey ? 10 : 1),
      page = scale.toFraction(now);
    const next = {
      ArrowRight: () => now + fine,
      ArrowUp: () => now + fine,
      ArrowLeft: () => now - fine,
      ArrowDown: () => now - fine,
      PageUp: () => scale.toValue(page + 0.1),
      PageDown: () => scale.toValue(page - 0.1),
      Home: () => scale.min,
      End: () => scale.max,
    }[event.key];
    if (!next || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    put(next(), false);
  }

  // a coarse drag follows the pointer; with Shift it moves a tenth as far
  let grip = null;
  onDrag(range, {
    start(event) {
      if (locked()) return false;
      event.preventDefault();
      range.focus({ preventScroll: true });
      element.classList.add('inhand');
      const box = element.getBoundingClientRect();
      grip = { box, x: event.clientX, fraction: scale.toFraction(shown()), fine: event.shiftKey, value: value() };
      const near = Math.abs(event.clientX - box.left - inset - (width - 2 * inset) * grip.fraction) < 14;
      if (!near && !event.shiftKey) put(scale.toValue(fractionAt(event)), true), (grip.fraction = fractionAt(event));
      return true;
    },
    move(event) {
      if (event.shiftKey !== grip.fine) grip = { ...grip, x: event.clientX, fraction: scale.toFraction(shown()), fine: event.shiftKey };
      const gone = (event.clientX - grip.x) / (grip.box.width - 2 * inset);
      put(scale.toValue(clamp(grip.fraction + gone * (grip.fine ? 0.1 : 1), 0, 1)), true, grip.fine);
    },
    end() {
      element.classList.remove('inhand');
      if (value() !== grip.value) write(value(), false);
    },
  });
  range.addEventListener('input', () => put(scale.toValue(Number(range.value)), true));
  range.addEventListener('change', () => write(value(), false));

  function fractionAt(event) {
    return clamp((event.clientX - grip.box.left - inset) / (grip.box.width - 2 * inset), 0, 1);
  }
  function show() {
    if (!locked()) {
      vernier.element.hidden = false;
      element.classList.add('taped');
      vernier.update();
    }
  }
  function hide() {
    if (document.activeElement !== range) {
      vernier.element.hidden = true;
      element.classList.remove('taped');
    }
  }

  return { element, range, vernier: vernier.element, update };
}
