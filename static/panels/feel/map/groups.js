// Which limits the map draws: those on gravity and spin, all of them, those on one quantity, or the user's own; no study is
// singled out.

import { isLimit } from '../say.js';

const BOTH = ['gravity', 'spin']; // what the map's two axes are chosen for; few enough lines to read from afar
export const FIRST_GROUP = 'both';

/** What may be chosen: [[group, words]]; a quantity only where there is a limit on it. */
export function groupsOf({ map, quantities }) {
  const drawn = new Set(map.limits.map(limit => limit.quantity));
  return [
    [FIRST_GROUP, 'gravity and spin'],
    ['all', 'all of them'],
    ...quantities.filter(({ name }) => drawn.has(name)).map(({ name, in_text: words }) => [name, words]),
    ...(map.limits.some(limit => limit.mine) ? [['mine', 'your own']] : []),
  ];
}

export function inGroup(row, group) {
  if (group === FIRST_GROUP) return BOTH.includes(row.quantity);
  return group === 'all' || (group === 'mine' ? row.mine === true : row.quantity === group);
}

/** How this habitat lies to the limits of a group: "Inside 22 of 25 limits". */
export function countWords({ limits }, group) {
  const counted = limits.filter(row => inGroup(row, group) && isLimit(row)),
    inside = counted.filter(row => row.inside).length;
  if (!counted.some(row => typeof row.inside === 'boolean')) return 'No limit to hold this habitat against';
  return `Inside ${inside} of ${counted.length} ${counted.length === 1 ? 'limit' : 'limits'}`;
}

/** A group as the server is asked for it: quantities, or `mine`; none of them is all. */
export function drawnOf(group) {
  return { [FIRST_GROUP]: BOTH, all: [] }[group] ?? [group];
}
