// How far a thing is from its release, as people read it. A way is the answer's: whole turns, the nearest way beyond them, across.

import { tr } from './language.js';
import { showQuantity, written } from './units.js';

const LEAST_SHARE = 0.005; // of the way round: less is none worth a word

/** How far it is by the nearest way: '5.21 m', '88 m, 25 % of the way round', '2.1 times round, ends 25 m away'.
 *  @param {{turns: number, spinward_m: number, axial_m: number, of_turn: number | null}} way @param {string} [system] */
export function howFar(way, system = 'si', figure = showQuantity) {
  const far = figure(Math.abs(way.spinward_m), 'm', system);
  const round = roundOf(way);
  if (way.turns) return tr('{round}, ends {far} away', { round, far });
  return round ? `${far}, ${round}` : far;
}

/** The same with its side, where there is one: '5.21 m spinward', '2.1 times round, ends 25 m spinward'.
 *  @param {{turns: number, spinward_m: number, axial_m: number, of_turn: number | null}} way @param {string} [system] */
export function whichWay(way, system = 'si', figure = showQuantity) {
  const far = figure(Math.abs(way.spinward_m), 'm', system);
  const isAside = /[1-9]/.test(far),
    round = roundOf(way);
  const where = !isAside ? far : way.spinward_m > 0 ? tr('{length} spinward', { length: far }) : tr('{length} antispinward', { length: far });
  if (way.turns) return isAside ? tr('{round}, ends {where}', { round, where }) : tr('{round}, ends {far} away', { round, far });
  return round ? `${where}, ${round}` : where;
}

/** What part of the way round: '25 % of the way round', '3.5 times round'; '' where that is next to nothing, or nothing goes round.
 *  @param {{turns: number, of_turn: number | null}} way */
export function roundOf({ turns, of_turn: part }) {
  if (part === null) return '';
  const all = Math.abs(turns + part);
  if (turns) return tr('{times} times round', { times: written(all, 1) });
  return all < LEAST_SHARE ? '' : tr('{share} of the way round', { share: `${written(100 * all, all < 0.0995 ? 1 : 0)}\u00a0%` });
}
