// The habitats of a scene, its own first and then those in which the same motions are shown too; which of them the dials and the lanes
// serve (`view.served`), which stands in the place of Outside, and what a further one is at first.

import { tr, trLater } from './language.js';
import { movedDecks } from './decks.js';
import { fieldOf } from './fields.js';
import { shapeFacts, shapeOf } from './shapes.js';
import { showQuantity, threeFigures } from './units.js';
import { freshName } from './words.js';

export const MOST_OTHERS = 3;
export const NOTHING_HELD = { hold: null, held: null, follower: null };
const OWN = trLater('This habitat');
const NAMES = [trLater('Second habitat'), trLater('Third habitat'), trLater('Fourth habitat')];
const TIMES = 2; // as large as the scene's own

export function homeCount({ document }) {
  return 1 + (document.compare?.length ?? 0);
}

/** Where the habitat is in the document: 'habitat', 'compare.0.habitat'. */
export function homePath(index) {
  return index ? `compare.${index - 1}.habitat` : 'habitat';
}

const DIAL = /^(habitat|compare\.(\d+)\.habitat)\.(radius_m|spin_rpm)$/;
const OTHERS = { radius_m: 'spin_rpm', spin_rpm: 'radius_m' };

/** The other dial of the same habitat: {home, other} for 'compare.0.habitat.radius_m' is {home: 1, other: 'compare.0.habitat.spin_rpm'}; null
 *  for what is no dial. */
export function dialOf(path) {
  const [, at, further, name] = DIAL.exec(path ?? '') ?? [];
  return at ? { home: further === undefined ? 0 : Number(further) + 1, other: `${at}.${OTHERS[name]}` } : null;
}

/** The habitat in which something is held, or null: its dial follows the other. */
export function heldHome(store) {
  const { hold, follower } = store.view;
  const home = dialOf(follower)?.home ?? 0;
  return hold && home < homeCount(store) ? home : null;
}

/** The one that the dials and the lanes serve; the scene's own where that is gone. */
export function servedHome(store) {
  const { served = 0 } = store.view;
  return served < homeCount(store) ? served : 0;
}

/** The one whose inside stands in the place of Outside, or null. */
export function homeBeside(store) {
  const { compare, beside } = store.view;
  return compare === 'beside' && homeCount(store) > 1 ? Math.min((beside ?? 0) + 1, homeCount(store) - 1) : null;
}

/** 'This habitat', or the name that the other one has. */
export function homeName({ document }, index) {
  return index ? document.compare[index - 1].name : tr(OWN);
}

/** '112 m, 2.12 rpm'; with its shape where that is another than the scene's own. */
export function homeFacts({ fields, view }, own, habitat) {
  const shape = shapeOf(habitat) === shapeOf(own) ? null : shapeFacts(fields, habitat).label;
  return [shape, showQuantity(habitat.radius_m, 'm', view.units), `${threeFigures(habitat.spin_rpm)}\u00a0rpm`].filter(Boolean).join(', ');
}

/** 'Second habitat, 112 m, 2.12 rpm', as it is answered; null where it is not. */
export function homeWords(store, index) {
  const answer = homeAnswer(store.answer, index);
  if (!answer) return null;
  const name = index ? store.answer.compare[index - 1].name : tr(OWN);
  return `${name}, ${homeFacts(store, store.answer.scene.habitat, answer.scene.habitat)}`;
}

/** The answer of that habitat alone, as the scene's own answer is: `scene.habitat`, `habitat`, `motions`; null before there is one. */
export function homeAnswer(answer, index) {
  if (!index || !answer) return answer;
  const other = answer.compare?.[index - 1];
  return other ? { ...answer, habitat: other.habitat, motions: other.motions, scene: { ...answer.scene, habitat: other.habitat_part } } : null;
}

/** A further habitat with its name: like the scene's own, at twice the radius with the same gravity, so that something differs. */
export function furtherHome({ document, fields }) {
  const own = document.habitat,
    taken = (document.compare ?? []).map(({ name }) => name);
  const { max } = fieldOf(fields, 'habitat.radius_m');
  const times = own.radius_m * TIMES > max ? 1 / TIMES : TIMES;
  const slower = spin => round(spin / Math.sqrt(times)); // gravity goes as radius times spin squared
  const habitat = { ...structuredClone(own), radius_m: own.radius_m * times, spin_rpm: slower(own.spin_rpm) };
  if (habitat.spin_ramp) habitat.spin_ramp = habitat.spin_ramp.map(point => ({ ...point, spin_rpm: slower(point.spin_rpm) }));
  if (habitat.decks) habitat.decks = movedDecks(habitat.decks, own.radius_m, habitat.radius_m);
  return { name: freshHomeName(taken), habitat };
}

/** A name that none of the others has. */
export function freshHomeName(taken) {
  const names = NAMES.map(name => tr(name));
  return names.find(one => !taken.includes(one)) ?? freshName(names[0], taken);
}

// five figures hold the gravity to all three that are shown
function round(value) {
  return Number(value.toPrecision(5));
}
