// SI and US customary: what is shown, and what a typed figure means. Values are SI everywhere else.

import { fromSigns, inSigns, locale } from './language.js';

const NBSP = '\u00a0';
export const G_M_S2 = 9.80665; // one g, exactly

// SI unit → its US customary one; per and zero: shown = value × per + zero
const US = {
  m: { unit: 'ft', per: 1 / 0.3048 },
  mm: { unit: 'in', per: 1 / 25.4 },
  'm/s': { unit: 'ft/s', per: 1 / 0.3048 },
  'm/s²': { unit: 'ft/s²', per: 1 / 0.3048 },
  'g/m': { unit: 'g/ft', per: 0.3048 },
  kg: { unit: 'lb', per: 1 / 0.45359237 },
  'ml/s': { unit: 'fl oz/s', per: 1 / 29.5735295625 },
  kPa: { unit: 'psi', per: 1 / 6.894757293168 },
  '°C': { unit: '°F', per: 1.8, zero: 32 },
};
const SPELLED = { deg: '°', 'm/s2': 'm/s²', 'm/s^2': 'm/s²', degC: '°C', C: '°C', '': '' };

// what may be typed, by the SI unit of the field: name → how many SI units, or [factor, offset]
const TYPED = {
  m: {
    m: 1,
    cm: 0.01,
    mm: 0.001,
    km: 1000,
    ft: 0.3048,
    "'": 0.3048,
    '′': 0.3048,
    foot: 0.3048,
    feet: 0.3048,
    in: 0.0254,
    '"': 0.0254,
    '″': 0.0254,
    yd: 0.9144,
    mi: 1609.344,
  },
  mm: { mm: 1, cm: 10, m: 1000, in: 25.4, '"': 25.4 },
  'm/s': { 'm/s': 1, 'km/h': 1 / 3.6, kmh: 1 / 3.6, mph: 0.44704, 'ft/s': 0.3048, kn: 1852 / 3600, kt: 1852 / 3600 },
  'm/s²': { 'm/s²': 1, 'm/s2': 1, g: G_M_S2, 'ft/s²': 0.3048, 'ft/s2': 0.3048 },
  kg: { kg: 1, g: 0.001, mg: 1e-6, t: 1000, lb: 0.45359237, oz: 0.028349523125 },
  s: { s: 1, ms: 0.001, min: 60, h: 3600 },
  '°': { '°': 1, deg: 1, rad: 180 / Math.PI },
  rpm: { rpm: 1, '°/s': 1 / 6, 'deg/s': 1 / 6, 'rad/s': 30 / Math.PI, hz: 60 },
  kPa: { kpa: 1, pa: 0.001, hpa: 0.1, mbar: 0.1, bar: 100, atm: 101.325, psi: 6.894757293168 },
  '°C': { '°c': [1, 0], c: [1, 0], '°f': [5 / 9, -160 / 9], f: [5 / 9, -160 / 9], k: [1, -273.15] },
  'ml/s': { 'ml/s': 1, 'l/min': 1000 / 60, 'l/s': 1000, 'fl oz/s': 29.5735295625, 'floz/s': 29.5735295625 },
};

/** @param {string} unit */
export function siUnit(unit) {
  return SPELLED[unit] ?? unit;
}

/** @param {string} unit @param {string} [system] */
export function shownUnit(unit, system) {
  const si = siUnit(unit);
  return system === 'us' ? (US[si]?.unit ?? si) : si;
}

/** @param {number} value @param {string} unit @param {string} [system] */
export function toShown(value, unit, system) {
  const us = system === 'us' ? US[siUnit(unit)] : null;
  return us ? value * us.per + (us.zero ?? 0) : value;
}

/** @param {number} shown @param {string} unit @param {string} [system] */
export function fromShown(shown, unit, system) {
  const us = system === 'us' ? US[siUnit(unit)] : null;
  return us ? (shown - (us.zero ?? 0)) / us.per : shown;
}

/** A fine step in shown units: the power of ten at or under it, so that the figures stay round.
 *  @param {number} step @param {string} unit @param {string} [system] */
export function shownStep(step, unit, system) {
  const us = system === 'us' ? US[siUnit(unit)] : null;
  return us ? 10 ** Math.floor(Math.log10(step * us.per) + 1e-9) : step;
}

/** The figure alone, with as many decimals as the step has, or up to three more where the value was typed so.
 *  @param {number} value @param {number} [step] */
export function formatFigure(value, step = 0.01) {
  if (!Number.isFinite(value)) return '';
  const base = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  let places = base;
  while (places < base + 3 && Math.abs(value - Number(value.toFixed(places))) > 1e-9 * Math.max(1, Math.abs(value))) places += 1;
  if (Math.abs(value - Number(value.toFixed(places))) > 1e-9 * Math.max(1, Math.abs(value))) places = base;
  const text = value.toFixed(Math.min(places, 12)).replace('-', '−');
  return inSigns(/^−0(\.0*)?$/.test(text) ? text.slice(1) : text);
}

// A format is made once, and a figure that was written lately is not written anew: either costs more than to show it.
const FORMATS = /** @type {Intl.NumberFormat[]} */ ([]);
const WRITTEN = /** @type {Map<number, string>[]} */ ([]); // by digits; what stands for a figure is how often it has the last digit
const MOST_WRITTEN = 2000;

/** With so many digits after the point, thousands parted, as the language has it.
 *  @param {number} value @param {number} digits */
export function written(value, digits) {
  WRITTEN[digits] ??= new Map();
  const known = WRITTEN[digits],
    parts = Math.round(Math.abs(value) * 10 ** digits),
    key = value < 0 ? -parts - 0.5 : parts; // a hair below nothing is written with its sign
  let text = known.get(key);
  if (text === undefined) {
    FORMATS[digits] ??= new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
    text = FORMATS[digits].format(value);
    if (known.size >= MOST_WRITTEN) known.clear();
    known.set(key, text);
  }
  return text;
}

/** Three figures, for read-outs: 0.564, 17.6, 1,500.
 *  @param {number} value */
export function threeFigures(value) {
  if (value === 0) return '0';
  const size = Math.abs(value),
    places = size >= 99.95 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3;
  return written(value, places).replace('-', '−');
}

/** @param {string} figure @param {string} unit */
export function withUnit(figure, unit) {
  return unit === '°' || !unit ? `${figure}${unit}` : `${figure}${NBSP}${unit}`;
}

/** @param {number} value @param {string} unit @param {string} [system] */
export function showQuantity(value, unit, system = 'si') {
  return withUnit(threeFigures(toShown(value, unit, system)), shownUnit(unit, system));
}

/** The unit in which a sentence says a value: centimetres for less than a metre.
 *  @param {number} value @param {string} unit @param {string} [system] */
export function proseUnit(value, unit, system = 'si') {
  return system === 'si' && unit === 'm' && value !== 0 && Math.abs(value) < 0.9995 ? 'cm' : shownUnit(unit, system);
}

/** A value as a sentence says it: 8 cm, 1.50 m, 35°; step: a fine step there, in the SI unit.
 *  @param {number} value @param {string} unit @param {string} [system] @param {number} [step] */
export function proseFigure(value, unit, system = 'si', step = 0.01) {
  const said = proseUnit(value, unit, system);
  if (said === 'cm') return withUnit(formatFigure(value * 100, 1), said);
  return withUnit(formatFigure(toShown(value, unit, system), shownStep(step, unit, system)), said);
}

/** A length of a scale, without digits that tell nothing: '5 m', '16.4 ft'. */
export function lengthWords(metres, system = 'si') {
  return withUnit(inSigns(String(Number(toShown(metres, 'm', system).toPrecision(3)))).replace('-', '−'), shownUnit('m', system));
}

const NUMBER_AND_UNIT = /([-+]?(?:\d{1,3}(?:[ \u00a0,]\d{3})+(?:\.\d+)?|\d+(?:[.,]\d*)?|\.\d+)(?:e[-+]?\d+)?)\s*([^\d\s.+-][^\d.+-]*)?/gi;
const tight = text => text.replace(/\s/g, '');

/** What a typed text means for a field in `unit`: {value} in SI, {solve: {hold, held}} on a dial, or {error}. */
export function parseFigure(text, { unit, system = 'si', dial = false }) {
  const si = siUnit(unit);
  const plain = fromSigns(text.trim()).replace(/[−–]/g, '-');
  const parts = [...plain.matchAll(NUMBER_AND_UNIT)];
  if (!parts.length || tight(parts.map(part => part[0]).join('')) !== tight(plain)) return { error: 'not a number' };
  let total = 0;
  for (const [, figure, name] of parts) {
    const number = plainNumber(figure),
      typed = name?.trim() ?? '';
    if (!Number.isFinite(number)) return { error: 'not a number' };
    if (!typed && parts.length > 1) return { error: 'not a number' };
    if (!typed) {
      total += fromShown(number, si, system);
      continue;
    }
    if (dial) {
      const solve = solvedBy(number, typed, si);
      if (solve) return solve;
    }
    const factor = TYPED[si]?.[typed] ?? TYPED[si]?.[typed.toLowerCase()] ?? (typed.toLowerCase() === si.toLowerCase() ? 1 : undefined);
    if (factor === undefined) return { error: `in ${typed}, which is no unit for it` };
    total += Array.isArray(factor) ? number * factor[0] + factor[1] : number * factor;
  }
  return { value: total };
}

/** on Radius or Spin a gravity, a rim speed or the time of a turn may be typed: the server finds the dial that gives it
 *  @param {number} number @param {string} name @param {string} si */
function solvedBy(number, name, si) {
  if (name === 'g') return { solve: { hold: 'felt', held: number * G_M_S2 } };
  if (TYPED['m/s'][name] !== undefined) return { solve: { hold: 'rim_speed', held: number * TYPED['m/s'][name] } };
  if (si === 'rpm' && TYPED.s[name] !== undefined) return { value: 60 / (number * TYPED.s[name]) };
  return null;
}

/** 1,500 is one thousand five hundred; 12,4 is twelve and four tenths
 *  @param {string} text */
function plainNumber(text) {
  const joined = tight(text);
  return Number(/^[-+]?[1-9]\d{0,2}(,\d{3})+(\.|$|e)/i.test(joined) ? joined.replace(/,/g, '') : joined.replace(',', '.'));
}
