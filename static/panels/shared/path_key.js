// Each motion's colour, dash and marker, the same on page, timeline and plot (colour never goes alone), and how it ends in few words.

import { inSigns, tr, trLater } from '../../state/language.js';
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
  return s('svg', { class: 'key', width: 34, height: 16, viewBox: '0 0 34 16', 'aria-hidden': true }, line, marker(index, 28, 8, 5, 'paper'));
}

// How a motion ends, in few words and figures: for the lanes, the plot and the tables.

const WHY = {
  met_ceiling: trLater('meets the ceiling'),
  met_hub: trLater('meets the hub'),
  met_hull: trLater('meets the hull'),
  met_wall: trLater('meets a wall'),
  met_table: trLater('meets the table'),
  left_edge: trLater('leaves the edge'),
  never_meets: trLater('never lands'),
  duration: trLater('still flies'),
};
const ENDS = {
  rest: trLater('rests'),
  edge: trLater('leaves the edge'),
  landed: trLater('lies there'),
  arrived: trLater('arrives'),
  slack: trLater('its line goes slack'),
  'met a surface': trLater('meets a wall'),
  'time limit': trLater('still moves'),
  duration: trLater('still moves'),
};
const TIMED = {
  rest: trLater('rests {time}'),
  edge: trLater('leaves the edge {time}'),
  arrived: trLater('arrives {time}'),
  slack: trLater('its line goes slack {time}'),
};

const said = text => text && tr(text);

/** 'lands 1.07, rests 4.20'; what starts on the ground: 'rests 4.20'; `stays`: its kind's word where nothing happens to it, or null. */
export function endWords(motion, stays) {
  const { landing, no_landing: why, end } = motion;
  const last = motion.events.at(-1);
  const later = end in TIMED ? tr(TIMED[end], { time: inSigns(last.time_s.toFixed(2)) }) : said(ENDS[end]);
  if (landing) {
    const lands = tr('lands {time}', { time: inSigns(landing.time_s.toFixed(2)) });
    return landing.time_s < last.time_s && end !== 'landed' ? `${lands}, ${later}` : lands;
  }
  if (end === 'arrived') return later;
  if (stays && !motion.events.some(event => event.kind === 'slip')) return end === 'slack' ? later : stays;
  if (why === 'starts_there') return later;
  return said(WHY[why]) ?? later ?? end;
}

/** Where it first lands, or where it was last seen: {say, way, time_s}; null where it does not begin. */
export function lastSeen(motion) {
  const { landing, last, no_landing: why, end } = motion;
  if (landing) return { say: tr('lands'), way: landing.way, time_s: landing.time_s };
  return last && { say: said(WHY[why] ?? ENDS[end]) ?? end, way: last.way, time_s: end === 'duration' ? null : last.time_s };
}
