// The ruler of the timeline: about six labelled times, five small parts between them.

import { formatFigure } from '../../state/units.js';
import { s } from '../shared/dom.js';

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
