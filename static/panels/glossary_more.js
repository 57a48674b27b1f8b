// What a term's entry shows where it is pressed, beside its words: how it is worked out, a small sketch, and where it can be read up (chapters and
// sections from memory).

import { tr, trLater } from '../state/language.js';

const ROTATING = trLater('J. R. Taylor, Classical Mechanics (2005), chapter 9');
const GOLDSTEIN = trLater('H. Goldstein, C. Poole and J. Safko, Classical Mechanics (3rd edition, 2002)');
const OF_SECTION = trLater('{book}, section {section}');
const FROM_SECTIONS = trLater('follows from {book}, sections {section} and {next}');
const SI = trLater('ISO 80000-3, Quantities and units: space and time');
const RADIANS = trLater('with the spin in radians a second: rpm × 0.1047');

// term: [how it is worked out, sketch, source: a text, or one with a book and its sections]
// biome-ignore format: a row is a term
export const MORE = {
  Centrifugal: [trLater('spin² × distance from the axis, {radians}'), 'outward', [OF_SECTION, ROTATING, '9.6']],
  Coriolis: [trLater('2 × spin × the speed across the axis, at a right angle to it, {radians}'), 'sideways', [OF_SECTION, ROTATING, '9.7']],
  'Coriolis ratio': [trLater('2 × walking speed ÷ rim speed'), 'sideways', [OF_SECTION, ROTATING, '9.7']],
  Euler: [trLater('how fast the spin changes × distance from the axis'), 'along', [OF_SECTION, GOLDSTEIN, '4.10']],
  Drag: [trLater('½ × air density × drag coefficient × area × speed², against the way it goes'), 'against', trLater('F. M. White, Fluid Mechanics, chapter 7')],
  'Plain gravity': [trLater('½ × gravity × time², straight down, the same everywhere'), 'plain', trLater('J. R. Taylor, Classical Mechanics (2005), chapter 1')],
  Drift: [trLater('where it lands less the place straight under the release, along the ground'), 'drift', [trLater('{book}, section {section} (free fall)'), ROTATING, '9.8']],
  Spinward: [trLater('the way the deck goes: outside, at spin × radius'), 'along', SI],
  Antispinward: [trLater('against the way the deck goes'), 'back', SI],
  'Rim speed': [trLater('spin × radius, {radians}'), 'along', SI],
  Spin: [trLater('turns a minute: 60 ÷ the time of one turn in seconds'), 'turn', SI],
  Period: [trLater('60 ÷ the spin in turns a minute, in seconds'), 'turn', SI],
  'Apparent gravity': [trLater('spin² × radius ÷ 9.80665 m/s², in g, {radians}'), 'outward', trLater('the standard acceleration: 3rd General Conference on Weights and Measures, 1901')],
  Gravity: [trLater('spin² × radius ÷ 9.80665 m/s², in g, {radians}'), 'outward', trLater('the standard acceleration: 3rd General Conference on Weights and Measures, 1901')],
  'Gravity gradient': [trLater('the height of a person ÷ the radius, as a share of the weight at the feet'), 'gradient', [trLater('follows from {book}, section {section}'), ROTATING, '9.6']],
  'Sideways push': [trLater('2 × spin × the speed toward or away from the axis, {radians}'), 'sideways', [OF_SECTION, ROTATING, '9.7']],
  Lean: [trLater('the angle whose tangent is the sideways push ÷ the apparent gravity'), 'lean', [FROM_SECTIONS, ROTATING, '9.6', '9.7']],
  [trLater('Apparent tilt')]: [trLater('the angle whose tangent is the sideways push ÷ the apparent gravity'), 'lean', [FROM_SECTIONS, ROTATING, '9.6', '9.7']],
  'Floats at': [trLater('the rim speed, antispinward: then it stands still, seen from outside'), 'back', [FROM_SECTIONS, ROTATING, '9.6', '9.7']],
  'Cross-coupling': [trLater('the head’s turn × the spin, where they are about different directions'), 'turn', [OF_SECTION, GOLDSTEIN, '4.9']],
  Apex: [trLater('where the speed toward the axis is nothing'), 'plain', trLater('J. R. Taylor, Classical Mechanics (2005), chapter 1')],
};

// Lines on a field of 96 by 64: [path, dashed]
const DECK = ['M6 44Q48 66 90 44', false];
const head = (x, y, dx, dy) => `M${x - 4 * dx + 3 * dy} ${y - 4 * dy - 3 * dx}L${x} ${y}L${x - 4 * dx - 3 * dy} ${y - 4 * dy + 3 * dx}`;
const SKETCHES = {
  outward: [DECK, ['M48 4V26', true], ['M45 26a3 3 0 1 0 6 0a3 3 0 1 0 -6 0', false], [`M48 30V50${head(48, 50, 0, 1)}`, false]],
  sideways: [DECK, [`M48 44V14${head(48, 14, 0, -1)}`, false], [`M50 30H78${head(78, 30, 1, 0)}`, true]],
  along: [DECK, [`M20 40Q48 54 76 40${head(76, 40, 0.9, -0.45)}`, false], ['M48 4V34', true]],
  back: [DECK, [`M76 40Q48 54 20 40${head(20, 40, -0.9, -0.45)}`, false], ['M48 4V34', true]],
  against: [
    ['M56 32a6 6 0 1 0 12 0a6 6 0 1 0 -12 0', false],
    [`M68 32H88${head(88, 32, 1, 0)}`, false],
    [`M54 32H22${head(22, 32, -1, 0)}`, true],
  ],
  plain: [
    ['M6 54H90', false],
    ['M10 54Q48 -14 86 54', true],
  ],
  drift: [DECK, ['M62 12V50', true], ['M62 12Q56 34 34 52', false], ['M30 52h8', false]],
  gradient: [DECK, [`M40 52V26${head(40, 52, 0, 1)}`, false], [`M58 24V38${head(58, 38, 0, 1)}`, false], ['M49 8V54', true]],
  lean: [DECK, ['M48 54V10', true], ['M48 54L62 14', false]],
  turn: [
    ['M48 32m-22 0a22 22 0 1 1 22 22', false],
    [head(48, 54, -1, 0), false],
    ['M46 32h4', false],
  ],
};

/** {formula, sketch: [[path, dashed]], source} of a term, or null. */
export function moreOf(term) {
  const row = MORE[term] ?? MORE[Object.keys(MORE).find(key => tr(key) === term)]; // terms of kinds are in the language of the page
  if (!row) return null;
  const [formula, sketch, source] = row;
  return { formula: tr(formula, { radians: tr(RADIANS) }), sketch: SKETCHES[sketch], source: sourceWords([source].flat()) };
}

function sourceWords([text, book, section, next]) {
  return tr(text, { book: book && tr(book), section, next });
}
