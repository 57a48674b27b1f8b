// Each motion's colour, dash and marker, the same on page, timeline and plot. Colour never goes alone.

import { pathStyle } from '../../state/palette.js';
import { s } from './dom.js';

/** The dash of a path's line so many px wide, as SVG writes it; null where it is solid. */
export function dashOf(index, width_px) {
  const { dash } = pathStyle(index);
  return dash.length ? dash.map(part => Number((part * width_px).toFixed(2))).join(' ') : null;
}

/** The marker alone, at (x, y); `side` is 'paper' or 'stage' and picks the colour through its class. */
export function marker(index, x, y, r, side) {
  const style = pathStyle(index);
  const hollow = style.open || style.marker === 'cross' || style.marker === 'ring';
  const draw = {
    disc: () => s('circle', { cx: x, cy: y, r }),
    square: () => s('rect', { x: x - r * 0.88, y: y - r * 0.88, width: r * 1.76, height: r * 1.76 }),
    triangle: () => s('path', { d: `M${x} ${y - r * 1.1}L${x + r * 1.05} ${y + r * 0.8}H${x - r * 1.05}Z` }),
    diamond: () => s('path', { d: `M${x} ${y - r * 1.2}L${x + r * 1.2} ${y}L${x} ${y + r * 1.2}L${x - r * 1.2} ${y}Z` }),
    cross: () => s('path', { d: `M${x - r} ${y - r}L${x + r} ${y + r}M${x - r} ${y + r}L${x + r} ${y - r}` }),
    ring: () => s('circle', { cx: x, cy: y, r: r * 0.8 }),
  };
  const shape = draw[style.marker]();
  shape.setAttribute('class', `${side}-${style.number} ${hollow ? 'hollow' : 'full'}`);
  return shape;
}

/** The short line with its marker beside a motion's name. */
export function pathKey(index) {
  const line = s('path', { d: 'M0 8H28', class: `paper-${pathStyle(index).number} lane`, 'stroke-width': 3, 'stroke-dasharray': dashOf(index, 3) });
  return s(
    'svg',
    { class: 'key', width: 34, height: 16, viewBox: '0 0 34 16', 'aria-hidden': true },
    line,
    marker(index, 28, 8, 5, 'paper'),
  );
}
