// The ruler of the timeline: labelled times as many as fit, small parts between them; and on it the two flags of the loop.

import { inSigns, tr } from '../../state/language.js';
import { formatFigure } from '../../state/units.js';
import { s, h, onDrag, setAttribute } from '../shared/dom.js';

const BASE = 26,
  TEXT = 13, // px from the top, at type size 1
  APART = 62; // from one labelled time to the next
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600];

/** The step to which the clock's span is rounded: about six of it. */
export function majorStep(span) {
  return STEPS.find(step => span / step <= 7) ?? STEPS.at(-1);
}

/** [{time, major}] of what the ruler shows from one time to another that lie so many px apart: labels that do not run together. */
export function ticksOf(from_s, to_s, px, type = 1) {
  const most = Math.max(1, Math.min(7, px / (APART * type)));
  const major = STEPS.find(step => (to_s - from_s) / step <= most) ?? STEPS.at(-1) * Math.ceil((to_s - from_s) / most / STEPS.at(-1)),
    minor = major / 5,
    out = [];
  for (let k = Math.ceil(from_s / minor - 1e-6); k * minor <= to_s + minor * 1e-6; k += 1) out.push({ time: k * minor, long: k % 5 === 0, major });
  return out;
}

/** `x`: time → px; `axis`: where the scale breaks. */
export function ruler(axis, end_s, x, type = 1) {
  const base = BASE * type,
    out = [s('path', { d: `M${x(0)} ${base}H${x(end_s)}`, class: 'short' })];
  const pieces = axis.break_s === null ? [[0, end_s]] : [[0, axis.break_s], [axis.break_s, end_s]]; // biome-ignore format: its pieces
  let last = -Infinity;
  for (const [from, to] of pieces)
    for (const { time, long, major } of ticksOf(from, to, x(to) - x(from), type)) {
      const at = x(time);
      out.push(s('path', { d: `M${at.toFixed(1)} ${base}v${(long ? -7 : -4) * type}`, class: long ? 'long' : 'short' }));
      if (!long || (time > 0 && at - last < (APART / 2) * type)) continue;
      last = at;
      const anchor = time === 0 ? 'start' : x(end_s) - at < 16 * type ? 'end' : 'middle';
      out.push(
        s('text', { x: at.toFixed(1), y: TEXT * type, 'text-anchor': anchor }, `${formatFigure(time, Math.min(major, 1))}${time === 0 ? '\u00a0s' : ''}`),
      );
    }
  return axis.break_s === null ? out : [...out, brokenAt(x(axis.break_s), base, type)];
}

// two slanted strokes over a gap in the line: from here on time is drawn narrower
function brokenAt(at, base, type) {
  const high = 5 * type;
  const stroke = dx => `M${at + dx - 2 * type} ${base + high}L${at + dx + 2 * type} ${base - high}`;
  return s(
    'g',
    { class: 'break' },
    s('path', { class: 'gap', d: `M${at - 2.5 * type} ${base}h${5 * type}` }),
    s('path', { class: 'long', d: `${stroke(-3 * type)}${stroke(3 * type)}` }),
  );
}

// The two flags of the loop: dragged, or moved by the arrows.

const LEAST_S = 0.05;

export function createFlags({ clock, at, timeAt }) {
  const flag = (key, label) => {
    const element = h('span', {
      class: `flag ${key}`,
      role: 'slider',
      tabindex: 0,
      'aria-label': label,
      onkeydown(event) {
        const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
        if (!step) return;
        event.preventDefault();
        event.stopPropagation();
        put(key, clock.loop[key] + step * clock.frame_s);
      },
    });
    onDrag(element, {
      start(event) {
        event.preventDefault();
        element.focus();
        return true;
      },
      move: event => put(key, timeAt(event.clientX)),
    });
    return element;
  };
  const from = flag('from_s', tr('Loop from')),
    to = flag('to_s', tr('Loop to')),
    span = h('span', { class: 'loop-span', 'aria-hidden': true });
  const element = h('div', { class: 'flags', hidden: true }, span, from, to);

  let shown = null;

  function put(key, time) {
    const { from_s, to_s } = clock.loop;
    clock.setLoop(
      key === 'from_s'
        ? { from_s: Math.min(Math.max(0, time), to_s - LEAST_S), to_s }
        : { from_s, to_s: Math.max(Math.min(clock.end_s, time), from_s + LEAST_S) },
    );
  }
  // Moved only with the loop, or `anew` where what they stand on is another.
  function update(anew) {
    if (clock.loop === shown && !anew) return;
    shown = clock.loop;
    setAttribute(element, 'hidden', clock.loop === null);
    if (!clock.loop) return;
    const left = at(clock.loop.from_s),
      right = at(Math.min(clock.loop.to_s, clock.end_s));
    from.style.left = `${left}px`;
    to.style.left = `${right}px`;
    span.style.left = `${left}px`;
    span.style.width = `${right - left}px`;
    for (const [end, key] of [
      [from, 'from_s'],
      [to, 'to_s'],
    ]) {
      setAttribute(end, 'aria-valuemin', 0);
      setAttribute(end, 'aria-valuemax', clock.end_s);
      setAttribute(end, 'aria-valuenow', clock.loop[key].toFixed(3));
      setAttribute(end, 'aria-valuetext', `${inSigns(clock.loop[key].toFixed(2))} s`);
    }
  }
  return { element, update };
}
