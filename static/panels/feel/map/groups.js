// Which limits the map draws: those on gravity and spin, all of them, those on one quantity, or the user's own; no study is
// singled out.

import { showQuantity, shownUnit } from '../../../state/units.js';
import { BOUNDS, isLimit, lowerFirst, studyWords } from '../say.js';

const BOTH = ['gravity', 'spin']; // what the map's two axes are chosen for; few enough lines to read from afar
export const FIRST_GROUP = 'both';

/** What may be chosen: [[group, words]]; a quantity only where there is a limit on it. */
export function groupsOf({ map, quantities }) {
  const drawn = new Set(map.limits.map(limit => limit.quantity));
  return [
    [FIRST_GROUP, 'gravity and spin'],
    ['all', 'all of them'],
    ...quantities.filter(({ name }) => drawn.has(name)).map(({ name, label }) => [name, lowerFirst(label)]),
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

/** Who says so, for each limit of the map: [{limit, who, here}], from the rows of the answer that say the same. */
export function tableRows({ map, limits }, group) {
  return map.limits
    .filter(limit => inGroup(limit, group))
    .map(limit => {
      const rows = limits.filter(row => limit.ids.includes(row.id));
      return { limit, who: rows.map(studyWords).join('; '), here: rows[0]?.state ?? '' };
    });
}

/** A limit of the map in full, `quantities` those of the answer: "Spin at most 6 rpm". */
export function limitWords({ quantity, bound, limit, unit, short }, quantities, units) {
  const { label } = quantities.find(({ name }) => name === quantity);
  const value = shownUnit(unit, units) === unit ? short : showQuantity(limit, unit, units);
  return `${label} ${BOUNDS[bound]} ${value}`;
}
