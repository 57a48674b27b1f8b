// What a file is asked to be, as the page keeps it: only what differs from the server's defaults. No DOM, no ranges.

import { fromSigns, inSigns, listed, locale, tr, trAs, trMany } from './language.js';
import { countWords } from './words.js';

/** The choices as a request has them. `leftOut`: names of motions not to be in the file. */
export function exportPart({ leftOut = [], ...chosen }, names) {
  const motions = names.filter(name => !leftOut.includes(name));
  return motions.length === names.length ? chosen : { ...chosen, motions };
}

/** A choice as it stands: the reader's own, else the server's default. `fields`: the choices of GET /api/fields. */
export function choiceOf(fields, chosen, name) {
  return chosen[name] ?? fields[name]?.default ?? null;
}

/** The choices with one of them set; what equals the default is left out again. */
export function withChoice(fields, chosen, name, value) {
  const { [name]: _before, ...others } = chosen;
  const same = value === null || JSON.stringify(value) === JSON.stringify(fields[name]?.default ?? null);
  return same ? others : { ...others, [name]: value };
}

/** A typed frame rate: a number, or n/d as it was typed. The server knows which may be. */
export function typedRate(text) {
  const plain = fromSigns(text.trim()).replace(',', '.');
  if (plain === '') return null;
  return /^\d+(\.\d+)?$/.test(plain) ? Number(plain) : plain.replace(/\s/g, '');
}

const typedAsFrame = () => new RegExp(`^(?:frame|f|${trAs('before its number', 'frame')})\\s*(-?\\d+)$`, 'i');

/** A typed "frame 1060" as the second that this frame shows; undefined where no frame is typed.
 *  @param {string} text @param {{first_frame: number, fps: number | string | [number, number]}} file */
export function typedFrame(text, { first_frame, fps }) {
  const number = text.trim().match(typedAsFrame())?.[1];
  if (number === undefined) return undefined;
  const [n, d = 1] = Array.isArray(fps) ? fps : String(fps).split('/').map(Number);
  return Number((((Number(number) - first_frame) * d) / n).toFixed(6));
}

/** 24, 23.976 or 12.5 of [24000, 1001]. */
export function rateWords([n, d]) {
  return inSigns(String(Number((n / d).toFixed(3))));
}

/** What the server's notes say of the file, in sentences. */
export function factsOf({ file, counts, says }) {
  const number = value => value.toLocaleString(locale);
  const things = [countWords(counts.bodies, 'body')];
  if (counts.drops) things.push(trMany('{count} drop', '{count} drops', counts.drops, { count: number(counts.drops) }));
  const span = tr('Frames {first} to {last}, {frames} in all; {things}; {rows} rows as a table.', {
    first: file.start_frame,
    last: file.end_frame,
    frames: number(file.frame_count),
    things: listed(things),
    rows: number(counts.csv_rows),
  });
  return [span, driftWords(file), ...says].filter(Boolean);
}

function driftWords({ star_drift_deg_per_frame: first, star_drift_deg_per_frame_last: last }) {
  if (first === null || first === undefined) return '';
  const degrees = value => inSigns(`${Number(value.toPrecision(3))}°`).replace('-', '−');
  return typeof last === 'number' && degrees(last) !== degrees(first)
    ? tr('The stars drift {first} per frame at first, {last} at the end.', { first: degrees(first), last: degrees(last) })
    : tr('The stars drift {angle} per frame.', { angle: degrees(first) });
}

/** When each frame of a file is, s of the scene: [{frame, time_s}]. Frame `first_frame` is time 0, every other k·d/n after it; or each is
 *  where the retime curve has it. */
export function framesOf({ fps: [n, d], first_frame: zero, start_frame: from, end_frame: to, retimed_s: retimed = null }) {
  return Array.from({ length: to - from + 1 }, (_, i) => ({ frame: from + i, time_s: retimed ? retimed[i] : ((from + i - zero) * d) / n }));
}

const KEY = /^(-?\d+)\s*=\s*(-?\d+(?:\.\d+)?)\s*s?$/;

/** A typed retime curve, "1001 = 0, 1049 = 0.5": its keys; null where nothing is typed, undefined where it is none.
 *  @param {string} text */
export function typedRetime(text) {
  const parts = text
    .replace(/[−–]/g, '-')
    .split(/;|,(?=\s*(?:-?\d+\s*=|$))/)
    .map(part => fromSigns(part.trim()))
    .filter(Boolean);
  if (!parts.length) return null;
  const keys = parts.map(part => part.match(KEY)).map(found => found && { frame: Number(found[1]), time_s: Number(found[2]) });
  return keys.length > 1 && keys.every(Boolean) ? keys : undefined;
}

/** The same as it was typed. */
export function retimeWords(retime) {
  return (retime?.keys ?? []).map(({ frame, time_s }) => `${frame} = ${inSigns(String(time_s))}`).join(inSigns('.') === ',' ? '; ' : ', ');
}

export function sizeWords(bytes) {
  if (bytes < 1000) return `${bytes} B`;
  return bytes < 1e6 ? `${Math.round(bytes / 1000)} kB` : `${inSigns((bytes / 1e6).toFixed(1))} MB`;
}
