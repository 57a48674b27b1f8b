// Each motion's colour, dash and marker, the same on page, timeline and plot. Colour never goes alone.

import { s } from './dom.js';

// dashes in px for a 3 px line (look: in line widths); a seventh motion takes the first style with an open marker
const STYLES = [
  { dash: null, marker: 'disc' },
  { dash: '9 4.5', marker: 'square' },
  { dash: '9 3 2.1 3', marker: 'triangle' },
  { dash: '3.6 3', marker: 'diamond' },
  { dash: '15 4.2', marker: 'cross' },
  { dash: '8.1 2.4 2.1 2.4 2.1 2.4', marker: 'ring' },
];

export function styleOf(index) {
  const number = index % STYLES.length;
  return { ...STYLES[number], number: number + 1, open: index >= STYLES.length };
}

/** The marker alone, at (x, y); `side` is 'paper' or 'stage' and picks the colour through its class. */
export function marker(index, x, y, r, side) {
  const style = styleOf(index);
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
  const { dash, number } = styleOf(index);
  const line = s('path', { d: 'M0 8H28', class: `paper-${number} lane`, 'stroke-width': 3, 'stroke-dasharray': dash });
  return s(
    'svg',
    { class: 'key', width: 34, height: 16, viewBox: '0 0 34 16', 'aria-hidden': true },
    line,
    marker(index, 28, 8, 5, 'paper'),
  );
}
