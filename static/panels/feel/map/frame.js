// Where a radius and a spin lie on the map that the server drew, both on log axes.

import { makeScale } from '../../../state/scale.js';

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
    spin < spin_rpm[0] && 'below the map',
    spin > spin_rpm[1] && 'above the map',
    radius < radius_m[0] && 'left of the map',
    radius > radius_m[1] && 'right of the map',
  ].filter(Boolean);
  return sides.length ? sides.join(', ') : null;
}
