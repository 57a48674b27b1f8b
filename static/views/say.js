// Words and figures on the stages.

import { shownUnit, toShown, withUnit } from '../state/units.js';

export function figure(value, unit, units, places = null) {
  const shown = toShown(value, unit, units);
  const size = Math.abs(shown);
  const digits = places ?? (size >= 1000 ? 0 : size >= 99.95 ? 1 : 2);
  const text = Number(shown.toFixed(digits)) === 0 ? (0).toFixed(digits) : shown.toLocaleString('en-US', { minimumFractionDigits: digits, maximumFractionDigits: digits });
  return withUnit(text.replace('-', '−'), shownUnit(unit, units));
}

export const metres = (value, units) => figure(value, 'm', units);

export function degrees(radians) {
  return `${((radians * 180) / Math.PI).toLocaleString('en-US', { minimumFractionDigits: 1, maximumFractionDigits: 1 }).replace('-', '−')}°`;
}

export function direction(heading_deg) {
  const h = ((heading_deg % 360) + 360) % 360;
  const plain = { 0: 'spinward', 90: 'along the axis', 180: 'antispinward', 270: 'against the axis' }[h];
  return plain ?? `toward ${Math.round(h)}°`;
}

export function elevation(elevation_deg) {
  const e = Math.round(elevation_deg);
  return e === 0 ? 'level' : e > 0 ? `${e}° up` : `${-e}° down`;
}

export const spinward = (way) => (way > 0 ? 'spinward' : 'antispinward');

// 'Lob out, 1.3 m up, 4.3 m spinward, 0.80 s'
export function whereIs(name, height_m, drift_m, units) {
  const way = Math.abs(drift_m) < 0.05 ? '' : `, ${figure(Math.abs(drift_m), 'm', units, 1)} ${spinward(drift_m)}`;
  return `${name}, ${figure(Math.max(0, height_m), 'm', units, 1)} up${way}`;
}
