// A rule: the limits of one quantity as ticks on a line, our value as a notch. In ink: a foot points to what a limit forbids.

import { tr, trParts } from '../../state/language.js';
import { s, setAttribute, setChildren } from '../shared/dom.js';
import { boundWords, quantityHeading, studyWords } from './figure_words.js';
import { makeScale } from '../../state/scale.js';

const HIGH = 46, // with one line of letters
  LINE = 13,
  BASE = 24,
  TICK = 10,
  FOOT = 6,
  TEXT = 40;

/** update(quantity, rows, width_px, units); only the notch moves while the limits and the scale stay. */
export function createRule() {
  const limits = s('g', {}),
    notch = s('g', { class: 'notch' }, s('path', { d: `M0 ${BASE + 6}V8`, class: 'stem' }), s('path', { d: 'M-6 0H6L0 8Z', class: 'full-ink' }));
  const element = s('svg', { class: 'rule', height: HIGH, role: 'img' }, limits, notch);
  let drawn = '';

  function update(quantity, rows, wide, units) {
    setAttribute(element, 'hidden', !rows.length || !(wide > 0));
    if (!rows.length || !(wide > 0)) return;
    const rule = ruleOf(rows, quantity.value, wide);
    const key = JSON.stringify([wide, rule.ticks, rule.labels]);
    if (key !== drawn) {
      drawn = key;
      setAttribute(element, 'width', wide);
      const high = HIGH + LINE * Math.max(...rule.labels.map(({ line: at }) => at));
      setAttribute(element, 'height', high);
      setAttribute(element, 'viewBox', `0 0 ${wide} ${high}`);
      setChildren(limits, line(wide), rule.ticks.map(tick), rule.labels.map(label));
    }
    const at = notchOf(rule, quantity.value);
    setAttribute(notch, 'visibility', at === null ? 'hidden' : null);
    if (at !== null) setAttribute(notch, 'transform', `translate(${at.toFixed(1)} 0)`);
    setAttribute(element, 'aria-label', spoken(quantity, rows, units));
  }
  return { element, update };
}

const line = wide => s('path', { d: `M0 ${BASE}H${wide}`, class: 'base' });

function tick({ x, sign }) {
  const top = BASE - TICK;
  if (sign === 'ring') return mark(`M${x} ${BASE}V${top}`, s('circle', { cx: x, cy: top - 3, r: 3 }));
  if (sign === 'diamond') return mark(`M${x} ${BASE}V${top}`, s('path', { class: 'full-ink', d: `M${x} ${top - 8}l4 4l-4 4l-4 -4z` }));
  return mark(`M${x} ${BASE}V${top}h${sign === 'right' ? FOOT : -FOOT}`);
}

const mark = (d, sign = null) => s('g', { class: 'tick' }, s('path', { d }), sign);

function label({ x, line: at, say }) {
  return s('text', { x, y: TEXT + LINE * at, 'text-anchor': 'middle' }, say);
}

function spoken(quantity, rows, units) {
  const said = rows.map(row => `${row.letter}, ${studyWords(row)}, ${boundWords(row, units)}`).join('; ');
  return tr('{heading}. On the rule: {rows}.', { heading: quantityHeading(quantity, units), rows: said });
}

/** The signs of the rule, explained once. */
export function ruleKey() {
  const sign = kind => s('svg', { width: 20, height: 28, viewBox: '0 0 20 28', 'aria-hidden': true, class: 'rule' }, line(20), tick({ x: 10, sign: kind }));
  return trParts(
    'A letter is a row of the table below its rule. The signs: {limit}a limit, its foot toward what it forbids; {rate}a rate reached or observed; {optimum}an optimum; the notch is this design.',
    { limit: sign('right'), rate: sign('ring'), optimum: sign('diamond') },
  );
}

// Where the ticks of a rule lie and how their letters make room for each other: numbers only.

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
  const scale = scaleOf(
    rows.map(row => row.limit),
    value,
  );
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
