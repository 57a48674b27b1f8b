// What is asked of an aim: which throw, at whom, what is kept of it; and what a way that arrives does to a scene. No elements, no answers
// worked out: how far round is a share of the deck's length, all else is the server's.

import { inSigns, tr, trLater } from './language.js';
import { RADIUS, motionName } from './fields.js';
import { freshName } from './words.js';
import { isTumble } from './ship.js';
import { otherWay } from './motions.js';

export const PLACE = 5;
const HANDS_M = 1.4; // over the deck, where a catcher's are; lower where that is much of the radius
const HANDS_SHARE = 0.25;
const FIRST_SHARE = 0.8; // of the way to where the throw lands now, for a first catcher: within reach of a low and a high throw
const FIRST_TURN = 1 / 8; // of a turn, where it does not land
const WITHIN_M = 0.15;
const FLIGHT_S = 3;
const SAME = 1e-9;
const FIGURES = ['speed_m_s', 'heading_deg', 'elevation_deg']; // of a throw

/** How a throw may be kept: by its name in a request. */
export const KEPT = ['speed_m_s', 'elevation_deg', 'flight_s', 'least'];
const LEAST = 'speed_m_s';

/** The share of a turn, and how it is said.
 *  @type {[number, string][]} */
export const SHARES = [
  [1 / 8, trLater('an eighth')],
  [1 / 4, trLater('a quarter')],
  [1 / 3, trLater('a third')],
  [1 / 2, trLater('half')],
];

/** The motions that can be aimed: [{index, name}]. */
export function aimable(store) {
  return store.document.motions.flatMap((motion, index) => (store.fields.kinds[motion.kind]?.stage.aimed ? [{ index, name: motionName(store, index) }] : []));
}

/** Those that may be met: every other one. */
export function meetable(store, name) {
  return store.document.motions.flatMap((motion, index) => (isTumble(motion) ? [] : [motionName(store, index)])).filter(other => other !== name);
}

export function indexOf(store, name) {
  return store.document.motions.findIndex((_, index) => motionName(store, index) === name);
}

/** Where a motion begins, every coordinate filled in. */
export function placeOf(store, index) {
  const read = key => store.read(`motions.${index}.place.${key}`) ?? 0;
  return { along_m: read('along_m'), height_m: read('height_m'), axial_m: read('axial_m'), floor: read('floor') };
}

/** The length of a whole turn along the deck; null on flat floors, which have none. */
export function turnLength(store) {
  return store.document.habitat.floors ? null : 2 * Math.PI * store.read(RADIUS);
}

/** An aim for a scene nobody has aimed in; null where there is no throw. */
export function firstAim(store) {
  const throws = aimable(store),
    chosen = throws.find(({ index }) => index === store.view.chosen) ?? throws[0];
  if (!chosen) return null;
  const { index, name } = chosen;
  return { motion: name, to: firstCatcher(store, index), within_m: within(store), fixed: { speed_m_s: store.read(`motions.${index}.speed_m_s`) ?? 0 } };
}

function firstCatcher(store, index) {
  const from = placeOf(store, index),
    landing = store.stale ? null : store.answer?.motions[index]?.landing,
    turn_m = turnLength(store),
    { level } = store.fields.shapes[store.document.habitat.shape ?? 'cylinder'].ground;
  const away_m = landing ? FIRST_SHARE * landing.drift_m : FIRST_TURN * (turn_m ?? store.read(RADIUS)) * heading(store, index),
    aside_m = landing ? FIRST_SHARE * (landing.axial_m - from.axial_m) : 0;
  const hands_m = level ? from.height_m : Math.min(HANDS_M, HANDS_SHARE * store.read(RADIUS));
  return withoutFloor({ ...from, along_m: rounded(from.along_m + away_m), height_m: rounded(hands_m), axial_m: rounded(from.axial_m + aside_m) });
}

// 1 spinward, −1 antispinward
function heading(store, index) {
  return Math.cos(((store.read(`motions.${index}.heading_deg`) ?? 0) * Math.PI) / 180) < -SAME ? -1 : 1;
}

// no farther than a hand, and much less where that is much of the habitat
function within(store) {
  return Math.min(WITHIN_M, rounded(store.read(RADIUS) / 20));
}

const rounded = metres => Number(metres.toFixed(metres > 1 || metres < -1 ? 1 : 3));
const withoutFloor = place => (place.floor ? place : { along_m: place.along_m, height_m: place.height_m, axial_m: place.axial_m });

/** The aim as it may stay in the scene as it is: the same, or a first one where what it was of is gone. */
export function heldAim(store) {
  const { aim } = store.shot;
  if (!aim || !aimable(store).some(({ name }) => name === aim.motion)) return firstAim(store);
  if (aim.to.motion && !meetable(store, aim.motion).includes(aim.to.motion)) return { ...aim, to: firstCatcher(store, indexOf(store, aim.motion)) };
  return aim;
}

/** The same aim where a motion {before, after} has another name. */
export function renamedAim(aim, { before, after }) {
  if (!aim) return aim;
  const named = name => (name === before ? after : name);
  return { ...aim, motion: named(aim.motion), to: aim.to.motion ? { motion: named(aim.to.motion) } : aim.to };
}

/** As POST /api/aim takes it; null without an aim. What is sought of the throw is left out: it asks the same whatever that is now. */
export function aimRequest(scene, aim) {
  if (!aim) return null;
  const asked = sceneOf(scene, [aim.motion, aim.to.motion], aim.motion, FIGURES);
  return { scene: asked, motion: aim.motion, to: aim.to, within_m: aim.within_m, fixed: aim.fixed };
}

/** Of a scene what a question about a throw depends on: no other motions than those named and the tumble that all of it turns with, and of the throw no
 *  figures that it sets itself. */
export function sceneOf({ title, person, own_limits, compare, motions, ...scene }, names, throwName, without) {
  const named = motions.map((motion, index) => ({ ...motion, name: motion.name || `${motion.kind} ${index + 1}` }));
  const bare = Object.fromEntries(without.map(key => [key, 0]));
  const asked = named.filter(motion => names.includes(motion.name) || isTumble(motion));
  return { ...scene, motions: asked.map(motion => (motion.name === throwName ? { ...motion, ...bare } : motion)) };
}

/** What is kept by name, with the figure it had, or that the throw has now. */
export function keptAs(store, aim, kept) {
  if (kept === 'least') return { least: LEAST };
  if (kept in aim.fixed) return aim.fixed;
  const index = indexOf(store, aim.motion);
  if (kept === 'flight_s') return { flight_s: FLIGHT_S };
  return { [kept]: store.read(`motions.${index}.${kept}`) ?? 0 };
}

/** How far the catcher is round from the throw, as a share of a turn, spinward above 0; null where that says nothing. */
export function shareOf(store, aim) {
  const turn_m = turnLength(store);
  return turn_m === null || aim.to.motion ? null : (aim.to.along_m - placeOf(store, indexOf(store, aim.motion)).along_m) / turn_m;
}

/** The catcher so far round. */
export function atShare(store, aim, share) {
  const { along_m } = placeOf(store, indexOf(store, aim.motion));
  return { ...aim, to: { ...aim.to, along_m: Number((along_m + share * (turnLength(store) ?? 0)).toFixed(4)) } };
}

/** 'a third', '28.4 %' */
export function shareWords(share) {
  const size = Math.abs(share),
    named = SHARES.find(([part]) => Math.abs(part - size) < 5e-4);
  return named ? tr(named[1]) : inSigns(`${Number((100 * size).toFixed(1))}\u00a0%`);
}

/** What a typed share means: '1/3', '33 %', '120°', 'a third', 'half', or these words in the language of the page; null where it means nothing. */
export function parseShare(text) {
  const plain = text.trim().toLowerCase().replace(',', '.').replace('⅓', '1/3').replace('¼', '1/4').replace('½', '1/2');
  const spoken = word => [word, tr(word)].flatMap(said => [said.toLowerCase(), said.toLowerCase().split(' ').at(-1)]);
  const named = SHARES.find(([, word]) => spoken(word).includes(plain));
  if (named) return named[0];
  const [, top, bottom, unit] = /^(\d*\.?\d+)(?:\s*\/\s*(\d*\.?\d+))?\s*(%|°|deg|turns?)?$/.exec(plain) ?? [];
  if (top === undefined || Number(bottom) === 0) return null;
  const value = Number(top) / Number(bottom ?? 1);
  if (bottom || unit?.startsWith('turn')) return value;
  return unit === '°' || unit === 'deg' ? value / 360 : value / 100;
}

/** A draft's throw as a way has it. */
export function takeWay(draft, index, { speed_m_s, heading_deg, elevation_deg }) {
  Object.assign(draft.motions[index], { speed_m_s, heading_deg, elevation_deg });
}

/** Whether a throw is already that of a way. */
export function isWay(motion, way) {
  return FIGURES.every(key => Math.abs((motion?.[key] ?? 0) - way[key]) < SAME * Math.max(1, Math.abs(way[key])));
}

/** Which of the new ways is the one that was chosen: the nearest in time of flight. */
export function stillChosen(before, ways) {
  if (!before || !ways.length) return 0;
  const off = way => Math.abs(way.flight_s - before.flight_s);
  return ways.reduce((best, way, k) => (off(way) < off(ways[best]) ? k : best), 0);
}

/** The throw back: from where it was caught, once it was, to where it came from. {motion, aim} */
export function throwBack(store, aim, way) {
  const index = indexOf(store, aim.motion),
    first = store.document.motions[index],
    from = placeOf(store, index);
  const names = store.document.motions.map((_, i) => motionName(store, i));
  const motion = {
    ...structuredClone(first),
    name: freshName(tr('{motion} back', { motion: aim.motion }), names),
    start_s: Number((store.read(`motions.${index}.start_s`) + way.flight_s).toFixed(3)),
    place: { ...aim.to },
    heading_deg: otherWay(way.heading_deg),
    elevation_deg: way.elevation_deg,
    speed_m_s: way.speed_m_s,
  };
  delete motion.carried; // whoever catches stands
  return { motion, aim: { ...aim, motion: motion.name, to: withoutFloor(from) } };
}
