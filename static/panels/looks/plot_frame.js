// The frame of the flat plot: where a place along and above the deck is drawn, and the axes with round figures.

import { roundTo } from '../../state/scale.js';
import { formatFigure, toShown } from '../../state/units.js';
import { s } from '../shared/dom.js';

export const BOX = { width: 320, height: 190, left: 30, right: 8, top: 14, bottom: 22 };
const MOST = 240; // points of a line

// both axes hold everything drawn, and zero
export function fit(paths) {
  let left = 0,
    right = 0,
    top = 0;
  for (const { along_m: along, height_m: height } of paths) {
    for (let i = 0; i < along.length; i += 1) {
      left = Math.min(left, along[i]);
      right = Math.max(right, along[i]);
      top = Math.max(top, height[i]);
    }
  }
  const wide = Math.max(right - left, top * 0.5, 0.1) * 1.06,
    high = Math.max(top, 0.1) * 1.12,
    middle = (left + right) / 2;
  return {
    left: middle - wide / 2,
    right: middle + wide / 2,
    top: high,
    x: along => BOX.left + ((along - middle) / wide + 0.5) * (BOX.width - BOX.left - BOX.right),
    y: height => BOX.height - BOX.bottom - (height / high) * (BOX.height - BOX.top - BOX.bottom),
  };
}

export function line({ along_m: along, height_m: height, corners = [] }, frame) {
  const skip = Math.max(1, Math.ceil(along.length / MOST)),
    kept = new Set(corners),
    points = [];
  for (let i = 0; i < along.length; i += 1) {
    if (i % skip === 0 || i === along.length - 1 || kept.has(i)) points.push(`${frame.x(along[i]).toFixed(1)} ${frame.y(height[i]).toFixed(1)}`);
  }
  return `M${points.join('L')}`;
}

export function axes(frame, units) {
  const lines = [];
  for (const value of rounds(0, toShown(frame.top, 'm', units), 3)) {
    const y = frame.y(value / toShown(1, 'm', units)).toFixed(1);
    lines.push(
      s('path', { d: `M${BOX.left} ${y}H${BOX.width - BOX.right}`, class: value === 0 ? 'base' : 'grid' }),
      s('text', { x: BOX.left - 6, y: Number(y) + 4, 'text-anchor': 'end' }, label(value)),
    );
  }
  for (const value of rounds(toShown(frame.left, 'm', units), toShown(frame.right, 'm', units), 5)) {
    const x = frame.x(value / toShown(1, 'm', units)).toFixed(1);
    lines.push(
      s('path', { d: `M${x} ${BOX.height - BOX.bottom}v4`, class: 'base' }),
      s('text', { x, y: BOX.height - 5, 'text-anchor': 'middle' }, label(value)),
    );
  }
  return lines;
}

function rounds(low, high, about) {
  const raw = (high - low) / about,
    power = 10 ** Math.floor(Math.log10(raw)),
    step = [1, 2, 5, 10].find(k => k * power >= raw) * power;
  const out = [];
  for (let value = Math.ceil(low / step - 1e-9) * step; value <= high + step * 1e-9; value += step) out.push(roundTo(value, step));
  return out;
}

function label(value) {
  return formatFigure(value, Number.isInteger(value) ? 1 : 0.1);
}
