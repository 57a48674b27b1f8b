// The frame of the map: where a radius and a spin lie in it, both on log axes, and the axes with round figures.

import { makeScale } from '../../../state/scale.js';
import { formatFigure, fromShown, shownUnit, toShown } from '../../../state/units.js';
import { s } from '../../shared/dom.js';

const MARGIN = { left: 34, right: 10, top: 8, bottom: 24 };
const SHAPE = 0.8; // height by width
const LABELLED = { radius: [1, 3], spin: [1, 2, 5] }; // figures of a decade that are written

/** width: of the whole drawing, px; radius_m, spin_rpm: the ends [low, high] of the axes. */
export function makeFrame(width, { radius_m, spin_rpm }) {
  const height = Math.round(width * SHAPE);
  const across = makeScale({ min: radius_m[0], max: radius_m[1], scale: 'log' }),
    up = makeScale({ min: spin_rpm[0], max: spin_rpm[1], scale: 'log' });
  const box = { left: MARGIN.left, right: width - MARGIN.right, top: MARGIN.top, bottom: height - MARGIN.bottom };
  const wide = box.right - box.left,
    high = box.bottom - box.top;
  return {
    width,
    height,
    box,
    /** Held to the frame: what lies beyond it stands on its edge. */
    x: radius => box.left + wide * across.toFraction(radius),
    y: spin => box.bottom - high * up.toFraction(spin),
    /** Where the same axes would have a point, also beyond the frame: [x, y]. */
    free: (radius, spin) => [box.left + wide * share(radius, radius_m), box.bottom - high * share(spin, spin_rpm)],
    radiusAt: x => across.toValue((x - box.left) / wide),
    spinAt: y => up.toValue((box.bottom - y) / high),
    radius_m,
    spin_rpm,
  };
}

function share(value, [low, high]) {
  return Math.log(value / low) / Math.log(high / low);
}

/** Where a point lies that the frame does not hold, in words; null where it holds it. */
export function beyond({ radius_m, spin_rpm }, radius, spin) {
  const sides = [
    spin < spin_rpm[0] && 'below the map',
    spin > spin_rpm[1] && 'above the map',
    radius < radius_m[0] && 'left of the map',
    radius > radius_m[1] && 'right of the map',
  ].filter(Boolean);
  return sides.length ? sides.join(', ') : null;
}

/** The round figures of an axis: [{value, label}], value in SI, label in the units shown or null where only a tick stands. */
export function ticks([low, high], labelled, unit, units) {
  const out = [],
    [from, to] = [low, high].map(value => toShown(value, unit, units));
  for (let power = Math.floor(Math.log10(from)); 10 ** power <= to; power += 1) {
    for (let k = 1; k < 10; k += 1) {
      const shown = Number((k * 10 ** power).toPrecision(6));
      if (shown < from * 0.999 || shown > to * 1.001) continue;
      out.push({ value: fromShown(shown, unit, units), label: labelled.includes(k) ? figure(shown) : null });
    }
  }
  return out;
}

// 10000 takes the room of two
function figure(shown) {
  return shown >= 1000 ? `${formatFigure(shown / 1000, 1)}k` : formatFigure(shown, Math.min(shown, 1));
}

export function axes(frame, units) {
  const { left, right, top, bottom } = frame.box;
  const across = ticks(frame.radius_m, LABELLED.radius, 'm', units).flatMap(({ value, label }) => {
    const x = frame.x(value).toFixed(1);
    return mark(`M${x} ${bottom}v${label ? 5 : 3}`, label, { x, y: bottom + 17, 'text-anchor': 'middle' });
  });
  const up = ticks(frame.spin_rpm, LABELLED.spin, 'rpm', units).flatMap(({ value, label }) => {
    const y = frame.y(value);
    return mark(`M${left} ${y.toFixed(1)}h${label ? -5 : -3}`, label, { x: left - 8, y: (y + 4).toFixed(1), 'text-anchor': 'end' });
  });
  return s(
    'g',
    { class: 'axes' },
    s('path', { d: `M${left} ${top}V${bottom}H${right}`, class: 'base' }),
    across,
    up,
    axisWords(frame, units).map(({ say, x, y, anchor }) => s('text', { x, y, 'text-anchor': anchor, class: 'what' }, say)),
  );
}

/** The path from [x, y] to [x, y]. */
export function pathOf(points) {
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** What each axis is of, where its words stand inside the map: spin at the top of its axis, radius at the end of its own. */
export function axisWords({ box }, units) {
  return [
    { say: 'spin, rpm', x: box.left + 4, y: box.top + 12, anchor: 'start' },
    { say: `radius, ${shownUnit('m', units)}`, x: box.right - 4, y: box.bottom - 6, anchor: 'end' },
  ];
}

function mark(d, label, at) {
  const tick = s('path', { d, class: 'base' });
  return label === null ? [tick] : [tick, s('text', at, label)];
}
