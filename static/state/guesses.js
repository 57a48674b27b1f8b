// Ask the room: where does it come down? Guesses along the deck, by hand on this page and from elsewhere, and how they lie about the landing once
// that has been seen. The deck of a wheel has no ends: distances go the nearest way round. No elements.

import { tr } from './language.js';
import { shownUnit, toShown, withUnit, written } from './units.js';

const MOST = 2000; // guesses

/** What is asked: `id` another for each question; the name of the motion, where it is let go and where it lands (along_m, null if it does not), and
 *  how long the deck is all round (null: it has ends).
 *  @typedef {{id: any, motion: string, from_m: number, landing_m: number | null, round_m: number | null}} Question */

/** changed(): told after every change.
 *  motion: asked of, or null; own: guesses of this page, in the order they were placed; marks: these and all others, each an along_m; open: guesses are
 *  taken; revealed: the landing has been seen. nearest_m: how far off the nearest guess was; spread: {median_m, from_m, to_m}, the middle
 *  guess and the middle half of them, as along_m nearest the release; both null while there is none. */
export function createGuesses({ changed = () => {} } = {}) {
  let question = /** @type {Question | null} */ (null);
  let own = /** @type {number[]} */ ([]);
  let others = /** @type {Map<any, number>} */ (new Map());
  let taken = false; // they still are
  let revealed = false;

  const near = (/** @type {number} */ along_m) => (question ? question.from_m + nearestWay(along_m - question.from_m, question.round_m) : along_m);
  const isTaken = (/** @type {number} */ along_m) => guesses.open && Number.isFinite(along_m);

  const guesses = {
    get motion() {
      return question?.motion ?? null;
    },
    get id() {
      return question?.id ?? null;
    },
    get open() {
      return question !== null && taken;
    },
    get own() {
      return own;
    },
    get marks() {
      return [...own, ...others.values()];
    },
    get revealed() {
      return revealed;
    },
    get from_m() {
      return question?.from_m ?? 0;
    },
    get landing_m() {
      return revealed ? (question?.landing_m ?? null) : null;
    },
    get nearest_m() {
      const { landing_m, marks } = guesses;
      if (landing_m === null || !marks.length) return null;
      return Math.min(...marks.map(mark => Math.abs(nearestWay(mark - landing_m, question?.round_m ?? null))));
    },
    get spread() {
      const { marks } = guesses;
      if (!marks.length || !question) return null;
      const line = unrolled(marks, question.round_m);
      const [median_m, from_m, to_m] = [0.5, 0.25, 0.75].map(share => near(quantile(line, share)));
      return { median_m, from_m, to_m };
    },
    /** Another question begins without guesses; the same one again keeps them.
     *  @param {Question} next */
    ask(next) {
      if (next.id !== question?.id) {
        own = [];
        others = new Map();
      }
      question = next;
      taken = true;
      revealed = false;
      changed();
    },
    /** No more are taken: it is on its way. */
    stop() {
      if (!taken) return;
      taken = false;
      changed();
    },
    /** The landing has been seen: how near they were. */
    reveal() {
      if (!question || revealed) return;
      taken = false;
      revealed = true;
      changed();
    },
    close() {
      if (!question) return;
      question = null;
      taken = false;
      own = [];
      others = new Map();
      revealed = false;
      changed();
    },
    /** One from elsewhere; by the same key it replaces the one before. Whether it was taken.
     *  @param {number} along_m @param {any} [key] */
    add(along_m, key = {}) {
      if (!isTaken(along_m) || (others.size >= MOST && !others.has(key))) return false;
      others.set(key, near(along_m));
      changed();
      return true;
    },
    /** One of this page's own; which of them it is, or −1.
     *  @param {number} along_m */
    place(along_m) {
      if (!isTaken(along_m) || own.length >= MOST) return -1;
      own = [...own, near(along_m)];
      changed();
      return own.length - 1;
    },
    /** @param {number} which @param {number} along_m */
    move(which, along_m) {
      if (!isTaken(along_m) || !(which in own)) return;
      own = own.map((mark, k) => (k === which ? near(along_m) : mark));
      changed();
    },
    /** @param {number} which */
    drop(which) {
      if (!guesses.open || !(which in own)) return;
      own = own.filter((_, k) => k !== which);
      changed();
    },
    /** How far one place is from where it was let go, spinward, the nearest way.
     *  @param {number} along_m */
    spinward(along_m) {
      return near(along_m) - guesses.from_m;
    },
  };
  return guesses;
}

/** Of a motion of an answer, what the room can be asked: where it is let go and comes down, and how long the deck is all round.
 *  @param {any} answer @param {string} name @param {any} id @returns {Question | null} */
export function questionOf(answer, name, id) {
  const motion = answer?.motions.find((/** @type {any} */ one) => one.name === name);
  if (!motion) return null;
  const released = motion.events.find((/** @type {any} */ event) => event.kind === 'release');
  const goesRound = (motion.landing?.way?.of_turn ?? null) !== null;
  return {
    id,
    motion: name,
    from_m: released?.along_m ?? 0,
    landing_m: motion.landing?.along_m ?? null,
    round_m: goesRound ? 2 * Math.PI * answer.scene.habitat.radius_m : null,
  };
}

const LEAST_M = 5,
  SPARE = 1.6; // so much farther than it goes one may guess
const ROUND = [1, 2, 2.5, 5, 10];

/** How far along the deck, on both sides of where it is let go alike, guesses find room, m: which way it goes is not told by it.
 *  @param {Question} question @param {any} companion of the motion: how it goes under plain gravity */
export function roomOf({ from_m, landing_m, round_m }, companion) {
  const far_m = Math.max(LEAST_M, SPARE * Math.abs(landing_m === null ? 0 : nearestWay(landing_m - from_m, round_m)));
  const most_m = roundUp(Math.max(far_m, SPARE * Math.abs(companion?.landing?.drift_m ?? 0)));
  return round_m ? Math.min(most_m, round_m / 2) : most_m;
}

/** @param {number} value */
function roundUp(value) {
  const decade = 10 ** Math.floor(Math.log10(value));
  return decade * (ROUND.find(step => step * decade >= value - 1e-9) ?? 10);
}

/** How far off a guess was, to the centimetre where it was less than a metre. @param {number} off_m @param {string} units */
export function offWords(off_m, units) {
  return lengthWords(off_m, units, off_m < 0.995 ? 2 : 1);
}

/** A length along the deck, to a tenth. @param {number} length_m @param {string} units */
export function lengthWords(length_m, units, digits = 1) {
  return withUnit(written(toShown(length_m, 'm', units), digits), shownUnit('m', units));
}

export const STAGE_DIGITS = 2; // of a landing, as the stage writes its distance

/** So far spinward or antispinward. @param {number} way_m @param {string} units @param {number} [digits] */
export function whereWords(way_m, units, digits) {
  const length = lengthWords(Math.abs(way_m), units, digits);
  return way_m < 0 ? tr('{length} antispinward', { length }) : tr('{length} spinward', { length });
}

/** @param {number} way_m @param {number | null} round_m */
export function nearestWay(way_m, round_m) {
  return round_m ? way_m - round_m * Math.round(way_m / round_m) : way_m;
}

// Places of a ring as places of a line, in order, cut where none is for the longest way.
function unrolled(/** @type {number[]} */ marks, /** @type {number | null} */ round_m) {
  const line = [...marks].sort((a, b) => a - b);
  if (!round_m) return line;
  const ring = line.map(mark => mark - round_m * Math.floor(mark / round_m)).sort((a, b) => a - b);
  const gapAfter = (/** @type {number} */ k) => (k + 1 < ring.length ? ring[k + 1] - ring[k] : ring[0] + round_m - ring[k]);
  const cut = ring.reduce((best, _, k) => (gapAfter(k) > gapAfter(best) ? k : best), ring.length - 1);
  return [...ring.slice(cut + 1), ...ring.slice(0, cut + 1).map(mark => mark + round_m)];
}

// Between neighbours along a straight line: definition 7 of Hyndman and Fan, The American Statistician 50 (1996), 361.
function quantile(/** @type {number[]} */ sorted, /** @type {number} */ share) {
  const at = share * (sorted.length - 1),
    low = Math.floor(at),
    high = Math.min(low + 1, sorted.length - 1);
  return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
}
