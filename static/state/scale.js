// How a slider's track spreads its values: linear, log, or fine at the low end.

/** Near-linear up to `max`/150 and logarithmic above: 0 is on the track and the low end is the finest. */
const FINE = 150;

export function makeScale({ min, max, scale = 'linear' }) {
  const kind = scale === 'log' && min > 0 ? 'log' : scale;
  const soft = max / FINE;
  const bend = v => (kind === 'log' ? Math.log(v) : kind === 'fine_low' ? Math.asinh(v / soft) : v);
  const unbend = u => (kind === 'log' ? Math.exp(u) : kind === 'fine_low' ? soft * Math.sinh(u) : u);
  const low = bend(min),
    high = bend(max),
    span = high - low || 1;
  return {
    min,
    max,
    kind,
    toFraction: value => clamp((bend(clamp(value, min, max)) - low) / span, 0, 1),
    toValue: fraction => clamp(unbend(low + clamp(fraction, 0, 1) * span), min, max),
    /** One fine step at a value: a hundredth of its own decade where the track is bent, of the range's where not. */
    step: value => (kind === 'linear' ? decade(max - min) / 100 : decade(Math.max(Math.abs(value), kind === 'log' ? min : 5 * soft)) / 100),
    clamp: value => clamp(value, min, max),
    ticks: () => ticksOf(kind, min, max),
  };
}

/** @param {number} value @param {number} min @param {number} max */
export function clamp(value, min, max) {
  return Math.min(max, Math.max(min, value));
}

/** To the nearest whole number of steps, without the dust of binary fractions.
 *  @param {number} value @param {number} step */
export function roundTo(value, step) {
  if (!(step > 0)) return value;
  return Number((Math.round(value / step) * step).toPrecision(12));
}

/** @param {number} value */
function decade(value) {
  return value > 0 ? 10 ** Math.floor(Math.log10(value) + 1e-9) : 1;
}

/** Of labelled ticks in order those whose figures stand clear of one another, the last of them in any case.
 *  @template {{at_px: number, wide_px: number}} T @param {T[]} ticks @param {number} clear_px @returns {T[]} */
export function apart(ticks, clear_px) {
  const kept = /** @type {T[]} */ ([]);
  for (const tick of ticks.toReversed()) {
    const next = kept[0];
    if (!next || next.at_px - tick.at_px >= (next.wide_px + tick.wide_px) / 2 + clear_px) kept.unshift(tick);
  }
  return kept;
}

/** decade ticks {value, size: 2 labelled | 1 middle | 0 small}
 *  @param {string} kind @param {number} min @param {number} max */
function ticksOf(kind, min, max) {
  if (kind === 'linear') return [];
  const from = kind === 'log' ? min : max / 300,
    out = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.log10(max); power += 1) {
    for (let k = 1; k < 10; k += 1) {
      const value = Number((k * 10 ** power).toPrecision(6));
      if (value < from * 0.999 || value > max * 1.001) continue;
      out.push({ value, size: k === 1 ? 2 : k === 5 ? 1 : 0 });
    }
  }
  if (kind === 'fine_low' && min === 0) out.unshift({ value: 0, size: 2 });
  return out;
}
