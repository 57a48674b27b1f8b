// Small words the page sets itself: headings, counts, camera presets.

import { inSigns, language, locale, tr, trLater, trMany } from './language.js';
import { parseFigure } from './units.js';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']; // as English has them
const PRESETS = {
  a: trLater('over the shoulder'),
  b: trLater('from the side'),
  c: trLater('at the hub'),
  d: trLater('down the axis'),
  e: trLater('following the object'),
  w: trLater('whole wheel'),
};

const alongTheAxis = () => [tr('along the axis'), tr('back along the axis')];

/** 0 spinward, 180 antispinward, 90 and 270 the two ways `across` the ground; between them the nearest and how far off. */
export function headingWords(degrees, [over, back] = alongTheAxis()) {
  const turned = ((degrees % 360) + 360) % 360;
  const names = [tr('spinward'), over, tr('antispinward'), back];
  const quarter = Math.round(turned / 90) % 4;
  const off = Math.abs(turned - (turned > 315 ? 360 : quarter * 90));
  if (off < 0.05) return names[quarter];
  return tr('{angle} off {way}', { angle: `${inSigns(String(Number(off.toFixed(1))))}°`, way: names[quarter] });
}

/** A heading typed as a word that names one way alone ('axial', 'back', 'anti'), or in degrees; null where it is neither. */
export function typedHeading(typed, [over, back] = alongTheAxis()) {
  const said = typed.trim().toLowerCase();
  const ways = [
    ['spinward', tr('spinward')],
    [over, over.replace(/^along the /, ''), 'axial', 'axially', tr('axial')],
    ['antispinward', 'anti-spinward', tr('antispinward')],
    [back],
  ].map(words => words.map(word => word.toLowerCase()));
  const fits = ways.flatMap((words, k) => (words.some(word => said && word.startsWith(said)) ? [k] : []));
  if (fits.length === 1) return fits[0] * 90;
  return parseFigure(typed, { unit: 'deg' }).value ?? null;
}

/** Up or down so steeply that no heading is to be seen. */
export const isStraight = elevation_deg => Math.abs(elevation_deg) > 89.95;

export function elevationWords(degrees) {
  if (Math.abs(degrees) < 0.05) return tr('level');
  if (isStraight(degrees)) return degrees > 0 ? tr('straight up') : tr('straight down');
  const angle = `${inSigns(String(Number(Math.abs(degrees).toFixed(1))))}°`;
  return degrees > 0 ? tr('{angle} up', { angle }) : tr('{angle} down', { angle });
}

/** 'once', 'twice', 'twelve times'. */
export function timesWords(number) {
  return [tr('never'), tr('once'), tr('twice')][number] ?? tr('{count} times', { count: numberWords(number) });
}

/** How many, as a sentence says it: a word up to twelve where the language is written so.
 *  @param {number} number */
export function numberWords(number) {
  return language === 'en' && COUNTS[number] !== undefined ? COUNTS[number] : inSigns(String(number));
}

const COUNTED = {
  body: (number, count) => trMany('{count} body', '{count} bodies', number, { count }),
  camera: (number, count) => trMany('{count} camera', '{count} cameras', number, { count }),
  file: (number, count) => trMany('{count} file', '{count} files', number, { count }),
  frame: (number, count) => trMany('{count} frame', '{count} frames', number, { count }),
  mark: (number, count) => trMany('{count} mark', '{count} marks', number, { count }),
  motion: (number, count) => trMany('{count} motion', '{count} motions', number, { count }),
  point: (number, count) => trMany('{count} point', '{count} points', number, { count }),
  scene: (number, count) => trMany('{count} scene', '{count} scenes', number, { count }),
  step: (number, count) => trMany('{count} step', '{count} steps', number, { count }),
};

/** 'two scenes', 'one file'.
 *  @param {number} number @param {keyof typeof COUNTED} thing */
export function countWords(number, thing) {
  return COUNTED[thing](number, numberWords(number));
}

/** 'two throws', 'three motions', 'nothing yet'. */
export function motionsWords(motions, kinds) {
  if (!motions.length) return tr('nothing yet');
  const same = motions.every(motion => motion.kind === motions[0].kind);
  if (!same) return countWords(motions.length, 'motion');
  const { one, many } = kinds[motions[0].kind];
  return `${numberWords(motions.length)} ${motions.length === 1 ? one : many}`;
}

export function presetWords(letter) {
  return PRESETS[letter] ? tr(PRESETS[letter]) : letter;
}

export function paceWords(pace) {
  const known = { 1: tr('full speed'), 0.5: tr('½ speed'), 0.25: tr('¼ speed'), 0.1: tr('1/10 speed') };
  return known[pace] ?? tr('{pace} of full speed', { pace: inSigns(String(pace)) });
}

/** A name nobody has yet: 'Throw', 'Throw 2', … */
export function freshName(wanted, taken) {
  const base = wanted.replace(/ \d+$/, '').slice(0, 56);
  for (let n = 1; ; n += 1) {
    const name = n === 1 ? base : `${base} ${n}`;
    if (!taken.includes(name)) return name;
  }
}

const DAY_MS = 86_400_000;
const TIMES = {
  clock: { hour: '2-digit', minute: '2-digit' },
  weekday: { weekday: 'long' },
  date: { day: 'numeric', month: 'long' },
  wholeDate: { day: 'numeric', month: 'long', year: 'numeric' },
};
const made = /** @type {Record<string, Intl.DateTimeFormat>} */ ({}); // when first asked for: the browser takes as long for one as for a picture

/** @param {keyof typeof TIMES} name @param {Date} when */
function timeWords(name, when) {
  made[name] ??= new Intl.DateTimeFormat(locale, /** @type {Intl.DateTimeFormatOptions} */ (TIMES[name]));
  return made[name].format(when);
}

/** 'today 14:05', 'yesterday 09:12', 'Tuesday 21:40', '3 March 08:00', '3 March 2025': by the calendar of whoever looks. */
export function whenWords(when_ms, now_ms) {
  const [when, now] = [new Date(when_ms), new Date(now_ms)];
  if (!Number.isFinite(when_ms) || when_ms <= 0) return tr('earlier');
  const days = Math.round((midnight(now) - midnight(when)) / DAY_MS);
  if (days < 0 || when.getFullYear() !== now.getFullYear()) return timeWords('wholeDate', when);
  const day = days === 0 ? tr('today') : days === 1 ? tr('yesterday') : days < 7 ? timeWords('weekday', when) : timeWords('date', when);
  return `${day} ${timeWords('clock', when)}`;
}

function midnight(date) {
  return new Date(date.getFullYear(), date.getMonth(), date.getDate()).getTime();
}
