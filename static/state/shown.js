// Which motions of a scene are shown, the speed chosen for them and what is aimed, as an address carries it after the scene: '&hidden=2,3&speed=0.25', the
// motions counted from one.

import { aimParts } from './aim_link.js';
import { motionName } from './fields.js';

/** Whether what becomes of a motion is held back: neither its path to come nor its landing, distance, mark or words may be shown; the body itself is.
 *  @param {{withheld: {motions: string[]} | null}} view @param {string} name */
export const isWithheld = (view, name) => view.withheld?.motions.includes(name) ?? false;

/** As far as the clock may go while what becomes of a motion is held back: pictures are framed as if it ended there. Infinity where nothing bounds it.
 *  @param {{withheld: {motions: string[], until_s?: number | null} | null}} view @param {string} name */
export const heldUntil = (view, name) => (isWithheld(view, name) ? (view.withheld?.until_s ?? Infinity) : Infinity);

/** Of the motions that are not hidden, in the scene's order. */
export function shownIndexes(store) {
  return store.document.motions.map((_, index) => index).filter(index => !store.view.hidden.includes(motionName(store, index)));
}

/** `hash` of the scene, or '' where there is none, with what is hidden, the speed that was chosen, or null, and the aim that was asked for. */
export function withShown(hash, store, speed = null) {
  const shown = new Set(shownIndexes(store));
  const hidden = store.document.motions.flatMap((_, index) => (shown.has(index) ? [] : [index + 1]));
  const parts = [hidden.length && `hidden=${hidden.join(',')}`, speed !== null && `speed=${speed}`, ...aimParts(store)].filter(Boolean);
  return [hash || (parts.length ? '#' : ''), ...parts].filter(Boolean).join('&').replace('#&', '#');
}

/** {hidden: indexes, speed} that an address carries; nothing and null where it says nothing. `speeds`: those there are. */
export function shownIn(hash, speeds) {
  const said = new URLSearchParams(hash.replace(/^#/, ''));
  const speed = Number(said.get('speed'));
  const hidden = (said.get('hidden') ?? '').split(',').map(Number);
  return { hidden: hidden.filter(n => Number.isInteger(n) && n > 0).map(n => n - 1), speed: speeds.includes(speed) ? speed : null };
}

/** The names of the motions at these indexes, as the view has what is hidden. */
export function hiddenNames(store, indexes) {
  return indexes.filter(index => index < store.document.motions.length).map(index => motionName(store, index));
}
