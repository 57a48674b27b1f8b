// Where the ticks of a rule lie and how their letters make room for each other: numbers only.

import { makeScale } from '../../state/scale.js';

const WIDE = 20; // times: over it the rule is spread by decades
const SPARE = 1.6, // of its ends beyond the outermost, where it is spread so
  MARGIN = 0.12; // and of its length, where it is even
const INSET = 8,
  LETTER = 7, // px
  BETWEEN = 3,
  GAP = 4,
  SAME = 3; // ticks closer than this are one place
const LINES = [0, 1];
const SIGNS = { at_most: 'right', at_least: 'left', optimum: 'diamond' };

/** {scale, wide, ticks: [{x, sign}], labels: [{x, line, say}]}: `rows` of one quantity (letter, limit, bound), `value` ours or null. */
export function ruleOf(rows, value, wide) {
  const scale = scaleOf(rows.map(row => row.limit), value);
  const place = limit => round(INSET + scale.toFraction(limit) * (wide - 2 * INSET));
  const ticks = rows.map(row => ({ x: place(row.limit), sign: SIGNS[row.bound] ?? 'ring', letter: row.letter }));
  return { scale, wide, ticks: unlike(ticks), labels: labelled(ticks, wide) };
}

/** px of our value; null where it has none. What lies past an end of the rule stays at that end. */
export function notchOf({ scale, wide }, value) {
  return value === null || value === undefined ? null : INSET + scale.toFraction(value) * (wide - 2 * INSET);
}

// the ends are those of the limits, and of our value where that lies past them; a value of nothing has no place by decades
function scaleOf(limits, value) {
  const least = Math.min(...limits),
    most = Math.max(...limits);
  const low = value > 0 ? Math.min(least, value) : least,
    high = value > 0 ? Math.max(most, value) : most;
  if (high / low > WIDE) {
    const [from, to] = [tidy(low / SPARE, Math.floor), tidy(high * SPARE, Math.ceil)];
    return makeScale({ min: value > 0 && value < least ? from : least / SPARE, max: value > most ? to : most * SPARE, scale: 'log' });
  }
  return makeScale({ min: 0, max: value > most ? tidy(high * (1 + MARGIN), Math.ceil) : most * (1 + MARGIN), scale: 'linear' });
}

// ends that move with our value do so by steps: the ticks stand still for most of a drag
function tidy(value, turn) {
  const step = 10 ** Math.floor(Math.log10(value)) / 2;
  return turn(value / step) * step || value;
}

// two studies that say the same make one tick
function unlike(ticks) {
  const seen = new Set();
  return ticks.filter(({ x, sign }) => !seen.has(`${x} ${sign}`) && seen.add(`${x} ${sign}`)).map(({ x, sign }) => ({ x, sign }));
}

// letters that would touch go to a second line; where that is taken too they are set together under their middle: 'e f g'
function labelled(ticks, wide) {
  const groups = [...ticks].sort((a, b) => a.x - b.x).map(({ x, letter }) => settled([letter], x, x, wide));
  for (let i = 1; i < groups.length; ) {
    if (groups[i].from - groups[i - 1].to < SAME || !placed(groups.slice(0, i + 1))) {
      const [a, b] = groups.splice(i - 1, 2);
      groups.splice(i - 1, 0, settled([...a.letters, ...b.letters], a.from, b.to, wide));
      i = Math.max(1, i - 1);
    } else i += 1;
  }
  const lines = placed(groups);
  return groups.map(({ letters, x }, i) => ({ x: round(x), line: lines[i], say: letters.join('\u00a0') }));
}

// the line of each group, 0 where it has room there; null where one has room on neither
function placed(groups) {
  const ends = LINES.map(() => -Infinity);
  const lines = groups.map(({ x, wide }) => {
    const at = LINES.find(line => x - wide / 2 >= ends[line] + GAP);
    if (at !== undefined) ends[at] = x + wide / 2;
    return at;
  });
  return lines.includes(undefined) ? null : lines;
}

function settled(letters, from, to, wide) {
  const own = letters.length * LETTER + (letters.length - 1) * BETWEEN,
    half = own / 2;
  const x = Math.min(wide - half, Math.max(half, (from + to) / 2));
  return { letters: [...letters].sort(), from, to, x, wide: own };
}

function round(px) {
  return Math.round(px * 10) / 10;
}
