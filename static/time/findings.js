// What a kind of motion tells beside its path, at a time or over all of it. Its arrays run along the motion's samples.

import { sampleTime } from './track.js';

/** The value of `name` at time t, straight between samples; a number told once is that; null where there is none. */
export function findingAt(motion, grid, name, time_s) {
  const values = motion.findings?.[name];
  if (typeof values === 'number') return values;
  if (!isRun(values)) return null;
  const k = time_s / sampleTime(grid, 1) - motion.first;
  const a = Math.min(values.length - 1, Math.max(0, Math.floor(k))),
    b = Math.min(values.length - 1, a + 1);
  return values[a] + (values[b] - values[a]) * Math.min(1, Math.max(0, k - a));
}

/** [least, greatest] of it; null where there is none. */
export function findingRange(motion, name) {
  const values = motion.findings?.[name];
  if (typeof values === 'number') return [values, values];
  if (!isRun(values)) return null;
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return [least, most];
}

/** Times at which the structure sweeps by, as events. */
export function sweeps(motion) {
  return (motion.findings?.sweeps_by ?? []).map(pass => ({ kind: 'sweep', ...pass }));
}

/** @param {unknown} values
 *  @returns {values is number[]} */
function isRun(values) {
  return (Array.isArray(values) || ArrayBuffer.isView(values)) && typeof (/** @type {ArrayLike<unknown>} */ (values)[0]) === 'number';
}
