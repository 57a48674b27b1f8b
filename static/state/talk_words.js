// What a step of a talk is, in few words. No elements.

import { paceWords } from './words.js';

export const secondsWords = seconds => `${seconds.toFixed(2)}\u00a0s`;

const SHOWS = { aboard: 'Aboard alone', outside: 'Outside alone' };
const MERGED = { both: 'Outside small in Aboard', aboard: 'Outside small in Aboard', outside: 'Aboard small in Outside' };

/** Its line, or what stands there for it. */
export const lineWords = ({ line }) => line || 'No line yet';

/** What is special about it: [words]. */
export function stepFacts({ show, merged, pace, from_s, until_s, ask, plays }) {
  return [
    merged ? MERGED[show] : SHOWS[show],
    paceWords(pace),
    from_s ? `from ${secondsWords(from_s)}` : null,
    until_s === null ? null : `pauses at ${secondsWords(until_s)}`,
    ask ? `asks where ${ask.motion} comes down` : null,
    plays ? null : 'stands still',
  ].filter(Boolean);
}

/** Until when it is held back. */
export const heldWords = ({ until_s }) => (until_s ? `it stands still at ${secondsWords(until_s)}` : 'before it is let go');
