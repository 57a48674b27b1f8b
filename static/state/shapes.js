// What the page knows of a habitat's shape, and how one shape becomes another. Its fields and its words are the catalogue's.

import { tr } from './language.js';
import { getAt } from './fields.js';

const HOME = 'habitat';

export function shapeOf(habitat) {
  return habitat?.shape ?? 'cylinder';
}

/** What the server says of a habitat's shape: label, thing, whole, weighed, fades, fields, required, new, ground. */
export function shapeFacts(fields, habitat) {
  return fields.shapes[shapeOf(habitat)];
}

/** By what the page's own sentences tell one ground from another: 'deck', 'floor' or 'turntable'.
 *  @param {{level: boolean, surface: string}} ground */
export const groundKey = ({ level, surface }) => (level ? 'turntable' : surface);

/** What is stood on: {name, along, across, side, level}; level: it lies across the axis. */
export function groundOf(fields, habitat) {
  return shapeFacts(fields, habitat).ground;
}

export function floorName(floor, index) {
  return floor?.name || tr('Floor {number}', { number: index + 1 });
}

/** The habitat as another shape: what both have is kept, the rest is the catalogue's. */
export function reshaped(fields, habitat, shape) {
  const { fields: known, new: fresh } = fields.shapes[shape];
  const kept = Object.entries(habitat).filter(([key]) => known.includes(key) && !(key in fresh));
  const next = { ...structuredClone(fresh), ...Object.fromEntries(kept), shape };
  // a tube that a small ring has room for
  if (next.tube_radius_m > next.radius_m / 4) next.tube_radius_m = next.radius_m / 4;
  return next;
}

/** In a draft of the scene: the habitat at `at` ('habitat', 'compare.0.habitat') gets another shape. */
export function reshape(draft, at, shape, fields) {
  const holder = at === HOME ? draft : getAt(draft, at.slice(0, -HOME.length - 1));
  holder.habitat = reshaped(fields, holder.habitat, shape);
  if (at === HOME) keepFloors(draft, index => index);
}

/** Every motion to the floor `move` gives for its own; to the first where there is none. */
export function keepFloors(draft, move) {
  const count = draft.habitat.floors?.length ?? 1;
  for (const { place } of draft.motions) {
    if (!place?.floor) continue;
    const floor = move(place.floor);
    place.floor = floor >= 0 && floor < count ? floor : 0;
  }
}
