// The kinds of motion, as GET /api/fields tells them: the page has no list of its own. What it is told of each is in kinds/kind.py.

import { getAt } from './paths.js';
import { showQuantity } from './units.js';

/** [[heading, kinds]] as they are offered, in the order in which they are told. */
export function kindGroups(kinds) {
  const groups = new Map();
  for (const [kind, { group }] of Object.entries(kinds)) groups.set(group, [...(groups.get(group) ?? []), kind]);
  return [...groups];
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
  const way = value > 0 ? ' spinward' : value < 0 ? ' antispinward' : '';
  return `${showQuantity(Math.abs(value), unit, system)}${way}`;
}
