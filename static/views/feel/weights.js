// What everybody on a stage feels at the feet at time t, as the server tells it: at the clock for who walks or rides, nothing while in
// the air, and where people stand the figure of the place What would people feel. Where none was given, none is shown.

import { inSigns, tr, trAs } from '../../state/language.js';
import { written } from '../../state/units.js';
import { findingAt, findingRange } from '../../time/findings.js';
import { sampleTime } from '../../time/track.js';
import { triad } from '../ground.js';
import { PERSON_M } from '../lay_figure.js';
import { svg } from '../overlay.js';
import { standing, turnAt } from '../model.js';
import { apart } from '../line_plate.js';
import { moved, standOf } from '../reach.js';

const ALIKE = 0.0025; // so near in distance from the axis, or in spin, what is felt standing is told by the same two figures

/** [{key, name, weight_g, person | motion}] of the `people` who stand and of the shown motions that are people; weight in g. `feel`: the
    answer to what people would feel, or null. */
export function weighed(model, people, shown, feel, time_s) {
  const standing = people.map((person, k) => ({
    key: `standing ${k}`,
    name: trAs('at the feet', 'standing'),
    person,
    weight_g: standingAt(model, feel, person, time_s),
  }));
  const moving = shown
    .filter(m => m.stage.mover === 'person' && m.path.count && time_s >= m.starts_s - 1e-6)
    .map(motion => ({ key: `moving ${motion.i}`, name: motion.name, motion, weight_g: movingAt(model, feel, motion, time_s) }));
  return [...standing, ...moving].filter(({ weight_g }) => weight_g !== null);
}

function movingAt(model, feel, m, time_s) {
  if (m.stage.weight) return findingAt(m.motion, model.answer.grid, m.stage.weight, time_s);
  if (time_s < m.ends_s) return 0;
  return m.landing ? standingAt(model, feel, { ...m.landing, floor: m.floor }, time_s) : null;
}

// The figure holds for this habitat's floor 0 at along 0, and for the spin at time 0.
function standingAt({ answer, ground, radius_m, name }, feel, { along_m, axial_m, floor }, time_s) {
  if (!feel || name || !alike(spinAt(answer, time_s), spinAt(answer, 0))) return null;
  const out_m = (along, axial, on) => {
    const { x, y } = ground.on(along, 0, axial, 0, {}, on);
    return Math.hypot(x, radius_m - y);
  };
  return alike(out_m(along_m, axial_m, floor), out_m(0, ground.level ? radius_m : 0, 0)) ? feel.figures.feet_g : null;
}

function spinAt({ spin_rad_s, grid }, time_s) {
  return spin_rad_s[Math.min(spin_rad_s.length - 1, Math.floor(time_s / sampleTime(grid, 1) + 1e-6))];
}

function alike(a, b) {
  return Math.abs(a - b) <= ALIKE * Math.abs(b);
}

/** The most that who moves is told to feel on the whole way, g. */
export function mostOf({ motion, stage }) {
  return findingRange(motion, stage.weight)?.[1] ?? 0;
}

/** The highest a post reaches, g: three times as tall as a person. What is felt beyond that its white does not measure: it goes through
    to the top, parted there by a break (postBreak), and the label alone tells how much it is. */
export const POST_TOP_G = 3;

/** How far up, in g, a post reaches. */
export function postTop(weight_g) {
  return Math.min(POST_TOP_G, Math.max(1, weight_g));
}

/** Where on a post that is too short for a weight it is parted, [from, to] in g; null on one that measures all of it. */
export function postBreak(weight_g) {
  return weight_g > POST_TOP_G ? [POST_TOP_G - 0.5, POST_TOP_G - 0.35] : null;
}

/** '0.56'; '14.2', as the words have it */
export function weightFigure(weight_g) {
  if (weight_g >= 99.95) return written(weight_g, 0);
  return inSigns(weight_g.toFixed(weight_g >= 9.995 ? 1 : weight_g > 0 && weight_g < 0.0995 ? 3 : 2));
}

/** 'at the feet, standing 0.56 g, running back 0.36 g' */
export function weightWords(people) {
  const weights = people.map(({ name, weight_g }) => `${name} ${weightFigure(weight_g)}\u00a0g`).join(', ');
  return people.length ? tr('at the feet, {weights}', { weights }) : '';
}

/** The feet of somebody standing, and which way is up there; `turn`: the habitat's angle on the stage. */
export function onDeck({ ground }, { along_m, axial_m, floor }, turn) {
  return { feet: ground.on(along_m, 0, axial_m, turn, {}, floor), up: triad(ground.azimuth(along_m, floor) + turn, ground.level).up };
}

// The posts of place 4 on a flat plate: beside everybody a slate line as tall as one g, its white core what they feel at the feet.

const INK = '#182024';
const SLATE = '#465157';
const ASIDE_PX = 12;
const OVER_PX = 8;
const LEAST_TICK_PX = 4; // nearer to each other they would run together

/** Draws into the plate's moving part what everybody feels at time t; gives the words for it. `feel`: the answer, or null. */
export function drawWeights({ lines, model, shown, frame }, feel, time_s) {
  const people = weighed(
    model,
    standing(shown, model.ground).filter(({ floor }) => PERSON_M < model.ground.headroom(floor)),
    shown,
    feel,
    time_s,
  );
  const taken = [...lines.taken];
  for (const one of people) {
    const { feet, up } = one.motion ? standOf(model, one.motion, frame, time_s) : onDeck(model, one.person, turnAt(model, frame, time_s));
    if (!model.ground.level) drawPost(lines, feet, up, one.weight_g);
    const [x, y] = lines.at(model.ground.level ? feet : moved(feet, up, PERSON_M * postTop(one.weight_g)));
    const words = `${one.name} ${weightFigure(one.weight_g)}\u00a0g`;
    taken.push(lines.text(lines.moving, [x, apart({ ...lines, taken }, x, y - OVER_PX, words)], words, INK));
  }
  return weightWords(people);
}

function drawPost(lines, feet, up, weight_g) {
  const [fx, fy] = lines.at(feet);
  const base = [fx + ASIDE_PX * up[1], fy + ASIDE_PX * up[0]];
  const at = (g, aside = 0) => {
    const far = lines.px * PERSON_M * g;
    return [base[0] + up[0] * far + aside * up[1], base[1] - up[1] * far + aside * up[0]].map(c => c.toFixed(1)).join(' ');
  };
  const line = (d, look) => svg('path', { d, fill: 'none', ...look }, lines.moving);
  const top_g = postTop(weight_g);
  line(`M${at(0)}L${at(top_g)}`, { stroke: SLATE, 'stroke-width': 8, class: 'weight-post' });
  if (weight_g > 0) line(`M${at(0)}L${at(Math.min(weight_g, top_g))}`, { stroke: '#FFF', 'stroke-width': 5, class: 'weight-felt' });
  const parted = postBreak(weight_g);
  if (parted) line(`M${at(parted[0])}L${at(parted[1])}`, { stroke: SLATE, 'stroke-width': 8, class: 'weight-break' });
  const ticks =
    lines.px * PERSON_M > 10 * LEAST_TICK_PX ? Array.from({ length: Math.floor(10 * top_g) }, (_, k) => `M${at((k + 1) / 10, 4)}L${at((k + 1) / 10, 7)}`) : [];
  line([...ticks, `M${at(1, -7)}L${at(1, 7)}`].join(''), { stroke: INK, 'stroke-width': 1.2 });
}
