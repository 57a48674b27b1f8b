// Labels that stand at paths: whose each is, and how far plain gravity would have taken it.

import { tr } from '../state/language.js';
import { bodyAt } from './model.js';
import { metres } from './spoken.js';

export const LEAST_BODY_PX = 7; // however far the eye
const PHONE_PX = 500;
const NAME_GAP_PX = 9;
const NAMED_AT = [0.5, 0.62, 0.4, 0.75, 0.25]; // shares of a path, in order of liking

/** The names of what a half shows: at its path; where the eye goes along, or its way is held back, at what moves. */
export function namesAt(half, time_s) {
  const { model, frame, told, framed } = half;
  return half.shown
    .filter(m => m.lines[frame].time.length && !half.posts?.labelled.has(m))
    .map(m => ({
      key: `name ${m.i}`,
      color: m.style.color,
      gap: NAME_GAP_PX + (told.includes(m) ? 0 : bodyPx(half, m)), // clear of the body where that is all there is
      text: frame === 'outside' && m.straight && told.includes(m) ? tr('{motion}, straight', { motion: m.name }) : m.name,
      at: [
        ...(framed.rigAt || !told.includes(m) ? [bodyAt(model, m, frame, time_s, {})] : []),
        ...(told.includes(m) ? NAMED_AT.map(share => half.drawnAt(pointOf(m.lines[frame].points, share))) : []),
      ],
    }));
}

// How large its body is drawn, from its middle.
function bodyPx({ eye }, m) {
  return Math.max((0.5 * m.diameter_m) / eye.metresPerPx || 0, LEAST_BODY_PX);
}

/** What plain gravity would have done, where it comes down elsewhere. */
export function plainAt(half) {
  const range = m => Math.abs(m.motion.companion.landing.drift_m); // along the ground, as every drift is
  const landed = half.told.filter(m => m.lines.companion && m.motion.companion.landing && range(m) > 0.05 && (m === half.lead || half.rect.width >= PHONE_PX));
  return landed.map(m => ({
    key: `plain ${m.i}`,
    gap: 8,
    shy: true,
    text: tr('plain gravity, {length}', { length: metres(range(m), half.view.units) }),
    at: [0.8, 0.65, 0.95].map(share => half.drawnAt(pointOf(half.paths.companionLine(m), share))),
  }));
}

function pointOf(points, share) {
  const i = 3 * Math.round(share * (points.length / 3 - 1));
  return { x: points[i], y: points[i + 1], z: points[i + 2] };
}
