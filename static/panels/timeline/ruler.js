// The ruler of the timeline: about six labelled times, five small parts between them; and on it the two flags of the loop.

import { formatFigure } from '../../state/units.js';
import { s, h, onDrag, setAttribute } from '../shared/dom.js';

const BASE = 26,
  TEXT = 13; // px from the top
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600];

/** About six labelled times on the ruler. */
export function majorStep(span) {
  return STEPS.find(step => span / step <= 7) ?? STEPS.at(-1);
}

/** `x`: time → px. */
export function ruler(end_s, x) {
  const major = majorStep(end_s),
    minor = major / 5,
    out = [];
  for (let k = 0; k * minor <= end_s + minor * 1e-6; k += 1) {
    const long = k % 5 === 0,
      at = x(k * minor).toFixed(1);
    out.push(s('path', { d: `M${at} ${BASE}v${long ? -7 : -4}`, class: long ? 'long' : 'short' }));
    if (long)
      out.push(
        s(
          'text',
          { x: at, y: TEXT, 'text-anchor': k === 0 ? 'start' : k * minor > end_s - minor ? 'end' : 'middle' },
          `${formatFigure(k * minor, Math.min(major, 1))}${k === 0 ? '\u00a0s' : ''}`,
        ),
      );
  }
  return [s('path', { d: `M${x(0)} ${BASE}H${x(end_s)}`, class: 'short' }), ...out];
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
  const from = flag('from_s', 'Loop from'),
    to = flag('to_s', 'Loop to'),
    span = h('span', { class: 'loop-span', 'aria-hidden': true });
  const element = h('div', { class: 'flags', hidden: true }, span, from, to);

  function put(key, time) {
    const { from_s, to_s } = clock.loop;
    clock.setLoop(
      key === 'from_s'
        ? { from_s: Math.min(Math.max(0, time), to_s - LEAST_S), to_s }
        : { from_s, to_s: Math.max(Math.min(clock.end_s, time), from_s + LEAST_S) },
    );
  }
  function update() {
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
      setAttribute(end, 'aria-valuetext', `${clock.loop[key].toFixed(2)} s`);
    }
  }
  return { element, update };
}
