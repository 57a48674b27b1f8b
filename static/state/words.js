// Small words the page sets itself: headings, counts, camera presets.

import { parseFigure } from './units.js';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
const PRESETS = { a: 'over the shoulder', b: 'from the side', c: 'at the hub', d: 'down the axis', e: 'following the object', w: 'whole wheel' };

const ALONG_THE_AXIS = ['along the axis', 'back along the axis'];

/** 0 spinward, 180 antispinward, 90 and 270 the two ways `across` the ground; between them the nearest and how far off. */
export function headingWords(degrees, [over, back] = ALONG_THE_AXIS) {
  const turned = ((degrees % 360) + 360) % 360;
  const names = ['spinward', over, 'antispinward', back];
  const quarter = Math.round(turned / 90) % 4;
  const off = Math.abs(turned - (turned > 315 ? 360 : quarter * 90));
  if (off < 0.05) return names[quarter];
  return `${Number(off.toFixed(1))}° off ${names[quarter]}`;
}

/** A heading typed as a word that names one way alone ('axial', 'back', 'anti'), or in degrees; null where it is neither. */
export function typedHeading(typed, [over, back] = ALONG_THE_AXIS) {
  const said = typed.trim().toLowerCase();
  const ways = [['spinward'], [over, over.replace(/^along the /, ''), 'axial', 'axially'], ['antispinward', 'anti-spinward'], [back]];
  const fits = ways.flatMap((words, k) => (words.some(word => said && word.startsWith(said)) ? [k] : []));
  if (fits.length === 1) return fits[0] * 90;
  return parseFigure(typed, { unit: 'deg' }).value ?? null;
}

/** Up or down so steeply that no heading is to be seen. */
export const isStraight = elevation_deg => Math.abs(elevation_deg) > 89.95;

export function elevationWords(degrees) {
  if (Math.abs(degrees) < 0.05) return 'level';
  if (isStraight(degrees)) return degrees > 0 ? 'straight up' : 'straight down';
  const size = `${Number(Math.abs(degrees).toFixed(1))}°`;
  return degrees > 0 ? `${size} up` : `${size} down`;
}

/** 'once', 'twice', 'twelve times'. */
export function timesWords(number) {
  return ['never', 'once', 'twice'][number] ?? `${COUNTS[number] ?? number} times`;
}

export function countWords(number, one, many = one.endsWith('s') ? one : `${one}s`) {
  return `${COUNTS[number] ?? number} ${number === 1 ? one : many}`;
}

/** 'two throws', 'three motions', 'nothing yet'. */
export function motionsWords(motions, kinds) {
  if (!motions.length) return 'nothing yet';
  const same = motions.every(motion => motion.kind === motions[0].kind);
  if (!same) return countWords(motions.length, 'motion');
  const { one, many } = kinds[motions[0].kind];
  return countWords(motions.length, one, many);
}

export function presetWords(letter) {
  return PRESETS[letter] ?? letter;
}

export function paceWords(pace) {
  return { 1: 'full speed', 0.5: '½ speed', 0.25: '¼ speed', 0.1: '1/10 speed' }[pace] ?? `${pace} of full speed`;
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
  made[name] ??= new Intl.DateTimeFormat('en-GB', /** @type {Intl.DateTimeFormatOptions} */ (TIMES[name]));
  return made[name].format(when);
}

/** 'today 14:05', 'yesterday 09:12', 'Tuesday 21:40', '3 March 08:00', '3 March 2025': by the calendar of whoever looks. */
export function whenWords(when_ms, now_ms) {
  const [when, now] = [new Date(when_ms), new Date(now_ms)];
  if (!Number.isFinite(when_ms) || when_ms <= 0) return 'earlier';
  const days = Math.round((midnight(now) - midnight(when)) / DAY_MS);
  if (days < 0 || when.getFullYear() !== now.getFullYear()) return timeWords('wholeDate', when);
  const day = days === 0 ? 'today' : days === 1 ? 'yesterday' : days < 7 ? timeWords('weekday', when) : timeWords('date', when);
  return `${day} ${timeWords('clock', when)}`;
}

function midnight(date) {
  return new Date(date.getFullYear(), date.getMonth(), date.getDate()).getTime();
}
