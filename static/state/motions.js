// Motions in a document: their kinds as GET /api/fields tells them, the axes a ball spins about, and a motion's mirror image.

import { tr, trLater } from './language.js';
import { getAt } from './fields.js';
import { showQuantity } from './units.js';
import { freshName } from './words.js';

/** [[heading, kinds]] as they are offered, in the order in which they are told. */
export function kindGroups(kinds) {
  const groups = new Map();
  for (const [kind, { group }] of Object.entries(kinds)) groups.set(group, [...(groups.get(group) ?? []), kind]);
  return [...groups];
}

const ASIDE_M = 1.2,
  SAME_M = 0.5; // nearer than this, in each direction, two begin at one place

/** Where a new motion begins: at `place`, or where another begins there already, aside along the ground, so that neither hides the other. */
export function clearPlace(place, motions) {
  const places = motions.map(motion => motion.place ?? {}).filter(other => (other.floor ?? null) === (place.floor ?? null));
  const near = (other, along_m) =>
    Math.abs((other.along_m ?? 0) - along_m) < SAME_M && ['height_m', 'axial_m'].every(key => Math.abs((other[key] ?? 0) - (place[key] ?? 0)) < SAME_M);
  for (let step = 0; step <= 2 * places.length; step += 1) {
    const along_m = Number(((place.along_m ?? 0) + (step % 2 ? 1 : -1) * Math.ceil(step / 2) * ASIDE_M).toFixed(3)) + 0;
    if (!places.some(other => near(other, along_m))) return { ...place, along_m };
  }
  return place;
}

/** A kind's sentence for a motion with its defaults, names of fields still in braces. Its parts are texts, lists of parts, and what is said
 *  where a field has something, {field, say, otherwise}, and perhaps equals, least or above. */
export function sentenceOf(part, motion) {
  if (typeof part === 'string') return part;
  if (Array.isArray(part)) return part.map(one => sentenceOf(one, motion)).join('');
  return sentenceOf(holds(part, motion) ? part.say : part.otherwise, motion);
}

function holds({ field, equals, least, above }, motion) {
  const value = getAt(motion, field);
  if (equals !== undefined) return value === equals;
  if (least !== undefined) return value >= least;
  if (above !== undefined) return value > above;
  return Array.isArray(value) ? value.length > 0 : Boolean(value);
}

/** A finding's value in words: '0.52 m/s² antispinward', '0.61 g'. */
export function showFinding({ unit, sided }, value, system) {
  if (!sided) return showQuantity(value, unit, system);
  const length = showQuantity(Math.abs(value), unit, system);
  if (value === 0) return length;
  return value > 0 ? tr('{length} spinward', { length }) : tr('{length} antispinward', { length });
}

// About what a ball spins, as (spinward, up, axial): the axes that have words. A forward roll turns the top the way it is thrown.

export const OWN = 'own';
const DEG = Math.PI / 180;
export const AXES = {
  forward: [trLater('forward roll'), heading => [Math.sin(heading * DEG), 0, -Math.cos(heading * DEG)]],
  back: [trLater('back spin'), heading => [-Math.sin(heading * DEG), 0, Math.cos(heading * DEG)]],
  upright: [trLater('about the upright'), () => [0, 1, 0]],
  axial: [trLater('about the axis'), () => [0, 0, 1]],
  spinward: [trLater('about spinward'), () => [1, 0, 0]],
};

/** A named axis for something thrown toward `heading` degrees, its figures round. */
export function axisOf(key, heading) {
  return AXES[key][1](heading).map(part => Number(part.toFixed(6)) + 0);
}

/** The name of an axis, whatever its length; 'own' where it has none. */
export function nameOf(axis, heading) {
  if (!axis) return 'forward';
  const size = Math.hypot(...axis);
  const same = key => axisOf(key, heading).every((part, i) => Math.abs(part - axis[i] / size) < 1e-4);
  return Object.keys(AXES).find(same) ?? OWN;
}

/** As it stands in a sentence after the rate. */
export function axisWords(axis, heading) {
  const name = nameOf(axis, heading);
  return { forward: tr('in a forward roll'), back: tr('in a back spin'), [OWN]: tr('about an axis of its own') }[name] ?? tr(AXES[name][0]);
}

// The same motion the other way round the wheel: its image in a mirror that stands across the deck at its place.

/** A copy whose headings, and whose ball's spin, are those of the mirror image. Its place stays: the same hand throws it. */
export function mirrored(motion) {
  const out = structuredClone(motion);
  for (const part of [out, out.carried, out.ramp]) {
    if (part) part.heading_deg = otherWay(part.heading_deg ?? 0);
  }
  if (out.target) out.target.along_m = 2 * (out.place?.along_m ?? 0) - (out.target.along_m ?? 0);
  if (Array.isArray(out.ball_spin_axis)) out.ball_spin_axis = imageOf(out.ball_spin_axis);
  else if (out.ball_spin_rpm) out.ball_spin_rpm = -out.ball_spin_rpm; // about the upright, which lies in the mirror
  return out;
}

/** 180° − heading, from −180 to 180: spinward becomes antispinward, along the axis stays. */
export function otherWay(degrees) {
  const turned = (((180 - degrees) % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
}

/** The word for where the mirror image goes; null for what is its own image, and for kinds that have none. */
export function otherWord(fields, motion) {
  if (!fields.kinds[motion.kind]?.mirrored) return null;
  const heading = motion.heading_deg ?? 0,
    opposite = otherWay(heading);
  const same = { ...mirrored(motion), heading_deg: 0 },
    itself = JSON.stringify(same) === JSON.stringify({ ...motion, heading_deg: 0 });
  if (itself && Math.abs(Math.sin(((opposite - heading) * Math.PI) / 360)) < 1e-9) return null;
  return Math.abs(opposite) < 90 ? tr('spinward') : tr('antispinward');
}

export function sameAgain(fields, motion, name, taken) {
  return { ...mirrored(motion), name: freshName(`${name} ${otherWord(fields, motion)}`, taken) };
}

// a turning has a sense: in a mirror its part across the mirror stays, the parts that lie in it change sign
function imageOf([spinward, up, axial]) {
  return [spinward, 0 - up, 0 - axial];
}
