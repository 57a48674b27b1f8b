// The same motion the other way round the wheel: its image in a mirror that stands across the deck at its place.

import { freshName } from './words.js';

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
  const here = motion.heading_deg ?? 0,
    there = otherWay(here);
  const same = { ...mirrored(motion), heading_deg: 0 },
    itself = JSON.stringify(same) === JSON.stringify({ ...motion, heading_deg: 0 });
  if (itself && Math.abs(Math.sin(((there - here) * Math.PI) / 360)) < 1e-9) return null;
  return Math.abs(there) < 90 ? 'spinward' : 'antispinward';
}

export function sameAgain(fields, motion, name, taken) {
  return { ...mirrored(motion), name: freshName(`${name} ${otherWord(fields, motion)}`, taken) };
}

// a turning has a sense: in a mirror its part across the mirror stays, the parts that lie in it change sign
function imageOf([spinward, up, axial]) {
  return [spinward, 0 - up, 0 - axial];
}
