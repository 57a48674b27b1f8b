// A craft in a scene: its parts and what is asked of it, changed as a document is. No elements, and nothing worked out: what comes of it
// is the server's.

import { freshName } from './words.js';

export const PLACE = 6;

/** What the question about the craft takes of a document: null where no craft is in it. */
export function craftRequest(document) {
  const { habitat, craft } = document;
  return craft ? { rimfall: 1, habitat, motions: [], craft } : null;
}

/** The document with a craft of the server's list, its radius and spin the habitat's from now on. */
export function withCraft(draft, { craft, radius_m, spin_rpm }) {
  draft.craft = structuredClone(craft);
  draft.habitat.radius_m = radius_m;
  draft.habitat.spin_rpm = spin_rpm;
}

/** A part of a solid, named as no other is. */
export function newPart({ solids }, solid, parts) {
  const part = structuredClone(solids[solid].new);
  return { ...part, name: freshName(part.name, names(parts)) };
}

/** A part as another solid: what both have stays. */
export function asSolid({ solids }, solid, part) {
  const { fields, new: fresh } = solids[solid];
  const common = ['name', 'group', 'mass_kg', 'place_m'];
  const kept = Object.entries(part).filter(([name]) => common.includes(name) || fields.includes(name));
  return { ...structuredClone(fresh), ...Object.fromEntries(kept), solid };
}

/** A block as it is added: a part's name that it leaves open is the first one's, which stays where it is. */
export function newBlock(block, parts) {
  const value = structuredClone(block.new);
  for (const part of value.parts ?? []) {
    if (part.name) continue;
    part.name = parts[0].name;
    part.place_m = parts[0].place_m ?? [0, 0, 0];
  }
  return value;
}

/** A part renamed, and every block that names it. */
export function rename(craft, index, name) {
  const before = craft.parts[index].name;
  craft.parts[index].name = name;
  for (const part of craft.deploy?.parts ?? []) if (part.name === before) part.name = name;
}

/** A part taken away, and what a block says of it. */
export function removePart(craft, index) {
  const [{ name }] = craft.parts.splice(index, 1);
  if (!craft.deploy) return;
  craft.deploy.parts = craft.deploy.parts.filter(part => part.name !== name);
  if (!craft.deploy.parts.length) craft.deploy = null;
}

/** Where a part is after its handle was dragged so far in a view, metres to the right and up. */
export function movedPlace(view, [x, y, z], right_m, up_m) {
  const round = metres => Number(metres.toFixed(2));
  return view === 'side' ? [round(x + up_m), y, round(z + right_m)] : [round(x + right_m), round(y + up_m), z];
}

const names = parts => parts.map(part => part.name);
