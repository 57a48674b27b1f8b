// Where a radius and a spin lie on the map that the server drew, both on log axes; and on it the habitats that meet the wishes.

import { tr } from '../../../state/language.js';
import { makeScale } from '../../../state/scale.js';
import { s } from '../../shared/dom.js';

/** size_px: of the whole drawing; box_px: left, top, right and bottom of the map's rectangle; radius_m, spin_rpm: the values [low, high] at its sides. */
export function makeFrame({ size_px: [width, height], box_px: [left, top, right, bottom], radius_m, spin_rpm }) {
  const across = makeScale({ min: radius_m[0], max: radius_m[1], scale: 'log' }),
    up = makeScale({ min: spin_rpm[0], max: spin_rpm[1], scale: 'log' });
  const wide = right - left,
    high = bottom - top;
  return {
    width,
    height,
    box: { left, top, right, bottom },
    /** Held to the frame: what lies beyond it stands on its edge. */
    x: radius => left + wide * across.toFraction(radius),
    y: spin => bottom - high * up.toFraction(spin),
    /** Where the same axes would have a point, also beyond the frame: [x, y]. */
    free: (radius, spin) => [left + wide * share(radius, radius_m), bottom - high * share(spin, spin_rpm)],
    radiusAt: x => across.toValue((x - left) / wide),
    spinAt: y => up.toValue((bottom - y) / high),
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
    spin < spin_rpm[0] && tr('below the map'),
    spin > spin_rpm[1] && tr('above the map'),
    radius < radius_m[0] && tr('left of the map'),
    radius > radius_m[1] && tr('right of the map'),
  ].filter(Boolean);
  return sides.length ? sides.join(', ') : null;
}

// The habitats that meet the wishes, on the map: a band from the least to the most spin at each radius, and the smallest of them.

const LINE_PX = 3; // thinner than this, the band is a line

/** answer: of the question about a size; frame: the map's. [] where nothing meets the wishes. */
export function drawFamily(frame, { smallest, family }) {
  if (!family) return [];
  const [low, high] = frame.spin_rpm,
    points = (bounds, end) => family.radius_m.map((radius, i) => frame.free(radius, bounds[i] || end));
  const least = points(family.least_spin_rpm, low / 2),
    most = points(family.most_spin_rpm, high * 2); // what nothing bounds runs off the map
  const narrow = least.every(([, y], i) => Math.abs(y - most[i][1]) < LINE_PX);
  return [
    narrow ? s('path', { d: pathOf(least), class: 'family-line' }) : s('path', { d: `${pathOf([...least, ...most.toReversed()])}Z`, class: 'family-band' }),
    smallest && smallestMark(frame, smallest),
  ];
}

// where nothing wished for bounds the spin, it stands as high as the program and the map go
function smallestMark(frame, { radius_m, spin_rpm, program_most_rpm: most }) {
  const x = frame.x(radius_m),
    y = frame.y(spin_rpm ?? Math.min(most, frame.spin_rpm[1]));
  const left = x > (frame.box.left + frame.box.right) / 2;
  return s(
    'g',
    { class: 'family-smallest' },
    s('rect', { x: x - 4, y: y - 4, width: 8, height: 8 }),
    s('text', { x: x + (left ? -9 : 9), y: y + 17, 'text-anchor': left ? 'end' : 'start' }, tr('smallest')),
  );
}

function pathOf(points) {
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** The pattern a band is ruled with. */
export function hatch() {
  return s(
    'pattern',
    { id: 'family-hatch', width: 5, height: 5, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(-45)' },
    s('path', { d: 'M0 2.5H5', class: 'hatch' }),
  );
}
