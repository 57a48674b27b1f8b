// A craft in a scene: its parts and what is asked of it, changed as a document is. No elements, and nothing worked out: what comes of it
// is the server's.

import { tr } from './language.js';
import { freshName } from './words.js';

export const PLACE = 6;

const TUMBLE = 'tumble',
  INSIDE = ['drop', 'throw'], // what flies in a craft that tumbles
  LONGEST_S = 120, // on the stages, of one that loses energy: who presents it waits no longer
  FLAT_BY = 0.75, // of that, so that the flat spin is seen
  SECONDS_OF = { least: 20, most: 120 };

/** From where both stages are seen when a craft begins to tumble: its length across the picture. */
export const TUMBLE_PRESETS = { aboard: 'b', outside: 'b' };

/** The number of the motion by which the scene's craft tumbles; -1 where there is none. */
export const tumbler = ({ motions }) => motions.findIndex(isTumble);

/** Whether a motion is the craft itself, let go. */
export const isTumble = ({ kind }) => kind === TUMBLE;

/** Whether a motion of a kind can be worked out among others: in a craft that tumbles only what flies in it. */
export const mayBeAdded = (motions, kind) => INSIDE.includes(kind) || !motions.some(isTumble);

/** What the question about the craft takes of a document: null where no craft is in it. */
export function craftRequest(document) {
  const { habitat, craft } = document;
  return craft ? { rimfall: 1, habitat, motions: [], craft } : null;
}

/** The findings of an answer about a craft, each with its question, in its order; none where there is no answer yet. */
export const findingsOf = answer => Object.values(answer ?? {}).filter(one => one?.question);

/** What findings take for granted and leave out, each once. */
export const restOn = findings => [...new Set(findings.flatMap(({ assumptions }) => assumptions))];

/** What its drawing shows, of a craft called so. */
export const viewsWords = (title, parts) => tr('{title} from its side and from its end: {parts}', { title, parts: names(parts).join(', ') });

/** The document with a craft of the server's list, its radius and spin the habitat's from now on; where `keeps`, the habitat keeps its own. */
export function withCraft(draft, { craft, radius_m, spin_rpm }, keeps = false) {
  draft.craft = structuredClone(craft);
  if (!keeps) Object.assign(draft.habitat, { radius_m, spin_rpm });
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

/** A block as it is asked for, and those that are asked with it: what is at the rim is so at this radius; a part that it leaves open is the
 *  first one, as it is. */
export function askBlock(craft, block, { solids }, radius_m) {
  craft[block.name] = atRim(block.new, block.at_rim, radius_m);
  for (const part of craft[block.name].parts ?? []) if (!part.name) Object.assign(part, partNow(solids, craft.parts[0]));
  for (const other of block.beside) craft[other.name] = structuredClone(other.new);
}

/** A block asked for no more, and those that were asked with it. */
export function leaveBlock(craft, block) {
  for (const { name } of [block, ...block.beside]) craft[name] = null;
}

/** A new value with the floor's radius where it has one that is at the rim. */
export function atRim(fresh, paths, radius_m) {
  const value = structuredClone(fresh);
  for (const path of paths) {
    const steps = path.split('.'),
      last = steps.pop(),
      holder = steps.reduce((inner, step) => inner?.[step], value);
    if (holder?.[last] !== undefined) holder[last] = Number(radius_m.toFixed(2));
  }
  return value;
}

/** A part's name, place, direction and sizes, for a block that changes them: what changes nothing yet. */
export function partNow(solids, part) {
  const defaults = { axis: [0, 0, 1] };
  const sizes = solids[part.solid].fields.filter(name => (part[name] ?? defaults[name]) !== undefined && part[name] !== null);
  return structuredClone({
    name: part.name,
    place_m: part.place_m ?? [0, 0, 0],
    ...Object.fromEntries(sizes.map(name => [name, part[name] ?? defaults[name]])),
  });
}

/** The one of some fields that a block gives. */
export const givenOf = (value, names) => names.find(name => value?.[name] != null) ?? names[0];

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

/** The scene's craft let go as the answer's `tumble` of it tells, the first of its motions: {gone, times}. gone: names of motions that cannot be worked out
 *  in it; asked_s: in which its wobble changes by e, null where no energy is lost; times: how many times as fast as asked it loses its energy, so that it is flat while it is watched. */
export function asMotion(draft, { time_to_flat_s: flat_s, flip_period_s: flip_s }, asked_s) {
  const { rates_rpm, duration_s } = draft.craft.tumble;
  const [about_x_rpm, about_y_rpm, spin_rpm] = rates_rpm;
  const times = asked_s && flat_s ? Math.max(1, flat_s / (FLAT_BY * LONGEST_S)) : 1;
  const losses_s = asked_s ? Math.max(1, rounded(asked_s / times)) : null;
  const before = draft.motions[tumbler(draft)];
  const others = draft.motions.filter(motion => motion !== before);
  const stay = others.filter(({ kind }) => INSIDE.includes(kind)).map(({ ball_spin_rpm, ball_spin_axis, ...motion }) => ({ ...motion, bounces: 0 }));
  const name = before?.name ?? freshName(tr('Tumble'), names(stay));
  draft.motions = [{ kind: TUMBLE, name, about_x_rpm, about_y_rpm, losses_s }, ...stay];
  draft.habitat.spin_rpm = spin_rpm;
  Object.assign(draft.habitat, { spin_ramp: [], axial_thrust_m_s2: 0 });
  const long_s = flip_s && !asked_s ? Math.min(SECONDS_OF.most, Math.max(SECONDS_OF.least, Math.ceil(2 * flip_s))) : LONGEST_S;
  draft.sampling = { ...draft.sampling, duration_s: Math.min(long_s, duration_s ?? long_s) };
  return { gone: others.filter(({ kind }) => !INSIDE.includes(kind)).map(motion => motion.name), times };
}

/** Whether the scene's tumble is the one that the answer's `tumble` of its craft would be made into. */
export function isAsAsked(document, tumble, asked_s) {
  const draft = structuredClone(document);
  asMotion(draft, tumble, asked_s);
  const figures = ({ habitat, motions }) => {
    const { about_x_rpm = 0, about_y_rpm = 0, losses_s = null } = motions[tumbler({ motions })];
    return [habitat.spin_rpm, about_x_rpm, about_y_rpm, losses_s].join();
  };
  return figures(draft) === figures(document);
}

const rounded = value => Number(value.toPrecision(3));

const names = parts => parts.map(part => part.name);
