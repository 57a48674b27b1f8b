// How a kind's findings are said: word, unit, and the term of the glossary that explains it; in the order they are read out.

import { showQuantity } from './units.js';

const SIDED = new Set(['sideways_m_s2']); // along the ground, spinward above 0

export const FINDINGS = {
  jump: [
    ['apart_m', 'lands off where they left', 'm', 'drift'],
  ],
  walk: [
    ['feet_g', 'weight at the feet', 'g', 'weight at the feet'],
    ['head_g', 'at the head', 'g', 'apparent gravity'],
    ['standing_g', 'standing still', 'g', 'apparent gravity'],
    ['sideways_m_s2', 'sideways push', 'm/s²', 'sideways push'],
    ['lean_deg', 'leans', '°', 'lean'],
    ['floats_at_m_s', 'would float at', 'm/s', 'floats at'],
  ],
  lift: [
    ['apparent_g', 'weight at the feet', 'g', 'weight at the feet'],
    ['sideways_m_s2', 'sideways push', 'm/s²', 'sideways push'],
    ['tilt_deg', 'floor seems to tilt', '°', 'apparent tilt'],
    ['takes_s', 'the ride takes', 's', 'lift'],
  ],
  let_go: [
    ['distance_m', 'from where they hung', 'm', 'sweeps by'],
    ['line_m', 'length of the line', 'm', 'line length'],
    ['leaves_m_s', 'leaves at', 'm/s', 'rim speed'],
  ],
  approach: [
    ['distance_m', 'to the dock', 'm', 'dock'],
    ['to_cancel_size_m_s', 'to cancel at contact', 'm/s', 'velocity to cancel'],
    ['to_cancel_n_s', 'as a push', 'N s', 'velocity to cancel'],
    ['turns_seen', 'turns seen from aboard', '', 'dock'],
  ],
  hang: [
    ['swing_deg', 'from the plumb line', '°', 'plumb line'],
    ['plumb_deg', 'plumb line leans', '°', 'plumb line'],
    ['tension_n', 'tension in the line', 'N', 'tension'],
    ['period_s', 'one swing', 's', 'period'],
    ['plane_turns_deg_per_h', 'its plane turns, an hour', '°', 'swing plane'],
  ],
  pour: [
    ['caught_ml', 'caught', 'ml', 'caught'],
    ['spilled_ml', 'spilled', 'ml', 'caught'],
    ['level_m', 'stands in the cup', 'm', 'free surface'],
    ['level_tilt_deg', 'its surface tilts', '°', 'free surface'],
  ],
};

/** '0.52 m/s² antispinward', '0.61 g'. */
export function showFound(name, value, unit, system) {
  if (!SIDED.has(name)) return showQuantity(value, unit, system);
  const way = value > 0 ? ' spinward' : value < 0 ? ' antispinward' : '';
  return `${showQuantity(Math.abs(value), unit, system)}${way}`;
}
