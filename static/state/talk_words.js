// What a step of a talk is, in few words. No elements.

import { inSigns, tr, trLater } from './language.js';
import { showQuantity } from './units.js';
import { paceWords } from './words.js';

export const secondsWords = seconds => inSigns(`${seconds.toFixed(2)}\u00a0s`);

const SHOWS = { aboard: trLater('Aboard alone'), outside: trLater('Outside alone') };
const MERGED = { both: trLater('Outside small in Aboard'), aboard: trLater('Outside small in Aboard'), outside: trLater('Aboard small in Outside') };

/** Its line, or what stands there for it. */
export const lineWords = ({ line }) => line || tr('No line yet');

/** What is special about it: [words]. `before`: the step before it, or null; a dial that has turned since then is told. */
export function stepFacts({ scene, show, merged, pace, from_s, until_s, ask, plays }, before = /** @type {any} */ (null), units = 'si') {
  const turned = name => before !== null && scene?.habitat[name] !== before.scene?.habitat[name];
  return [
    turned('radius_m') ? tr('radius {length}', { length: showQuantity(scene.habitat.radius_m, 'm', units) }) : null,
    turned('spin_rpm') ? tr('spin {rate}', { rate: showQuantity(scene.habitat.spin_rpm, 'rpm', units) }) : null,
    merged ? tr(MERGED[show]) : SHOWS[show] && tr(SHOWS[show]),
    paceWords(pace),
    from_s ? tr('from {time}', { time: secondsWords(from_s) }) : null,
    until_s === null ? null : tr('pauses at {time}', { time: secondsWords(until_s) }),
    ask ? tr('asks where {motion} comes down', { motion: ask.motion }) : null,
    plays ? null : tr('stands still'),
  ].filter(Boolean);
}

/** Until when it is held back. */
export const heldWords = ({ until_s }) => (until_s ? tr('it stands still at {time}', { time: secondsWords(until_s) }) : tr('before it is let go'));
