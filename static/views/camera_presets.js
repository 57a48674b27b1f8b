// The camera presets a stage can be watched from, framed so that everything shown is in the picture. Their directions of view are the server's
// (`cameras` of GET /api/fields), which frames the cameras of files by the same table.

import { tr, trLater } from '../state/language.js';
import { angleAt } from '../time/track.js';
import { craftPoints, sweptPoints } from './craft_reach.js';
import { fitBetween } from './framing.js';
import { followed } from './following.js';
import { asFarAsHeld } from './held_back.js';
import { bodyAt, deckAt, standing } from './model.js';
import { azimuthOf } from './place.js';
import { reachOf } from './reach.js';
import { PERSON_M } from './lay_figure.js';

const RAD = Math.PI / 180;

export const PRESETS = {
  a: { name: trLater('Over the shoulder'), plan: [-31, 47] },
  b: { name: trLater('From the side'), plan: [-9, 24] },
  c: { name: trLater('From the hub'), plan: [0, 0] },
  d: { name: trLater('From the axis'), plan: [52, -52] },
  e: { name: trLater('Follow the object'), plan: [25, 38] },
  w: { name: trLater('Whole wheel'), plan: [-52, -52] },
};

const LEVEL = { c: trLater('From above'), d: trLater('From across') }; // where up is the axis

// `facts` of the habitat's shape (state/shapes.js); without them a wheel's.
export function presetName(letter, facts) {
  if (facts && letter === 'w') return facts.whole;
  return tr((facts?.ground.level && LEVEL[letter]) || PRESETS[letter].name);
}

/** A name within a sentence.
 *  @param {string} name */
export const lowered = name => name.slice(0, 1).toLowerCase() + name.slice(1);

// Which of them stay with what happens, where all of it would be too small to see.
const FOLLOW = new Set(['b', 'd']);

const ASIDE_RAD = -50 * RAD; // from the side, of what swings along the line of sight

// Whether what hangs swings more along the axis than across it.
function swingsAway(shown) {
  const hung = shown.filter(m => m.pivot_m && m.path.count);
  const wide = (m, c) => {
    const values = m.lines.aboard.points.filter((_, i) => i % 3 === c);
    return Math.max(...values) - Math.min(...values);
  };
  return hung.length > 0 && Math.max(...hung.map(m => wide(m, 2))) > 1.5 * Math.max(...hung.map(m => wide(m, 0)));
}

const BROADSIDE = { yaw: -52 * RAD, tilt: 14 * RAD, fov: 30 };
const EMPTY_S = 0.5; // the clock of a scene in which nothing moves: so long the wheel is seen to turn
const MOST_OF_WHEEL = 1.3; // times as far away for all of it
const HIGH = 0.2; // of the radius: who flies so high crosses the wheel, and that is seen in the whole of it

// How a stage is framed: {rig} that stays as it is, or {rigAt(time_s)}. `stage` {frame, width, height, inset, corners, calm, still}; `shown` motions;
// `chosen` one of them or null. calm: nothing goes along with what moves; still: all of it is to be seen at once. What the `view` holds back
// is framed as far as the clock may go, with room for guesses.
export function framing(preset, stage, model, all, chosen) {
  const shown = asFarAsHeld(model, all, stage.view);
  const lead = shown[all.indexOf(chosen)] ?? shown[0] ?? null;
  const { ground } = model;
  const { level } = ground;
  const azimuth = lead && stage.frame === 'outside' && !model.tumbling ? lead.release_rad : ground.azimuth(lead?.release.along_m ?? 0, lead?.floor);
  const inset = { ...stage.inset, side: model.cameras.margin };
  const aspect = stage.width / stage.height;
  const framed = ({ fov, ...view }, points) => ({
    azimuth,
    ...view,
    level,
    fov,
    ...fitBetween(points, { azimuth, ...view, level }, fov, stage, inset, stage.corners ?? []),
  });
  const view = viewOf(model, preset, aspect);
  if (model.tumbling && (stage.frame === 'outside' || lead?.tumbles || !lead))
    return { rig: tumblingWhole(framed, view, preset, stage.frame === 'outside' ? sweptPoints(model) : craftPoints(model)) };
  if (preset === 'b' && swingsAway(shown)) view.yaw += ASIDE_RAD;
  if (preset === 'w') return { rig: framed(view, ground.outline()) };
  if (preset === 'e' && lead) return { rigAt: time_s => withBall(stage, model, lead, time_s) };
  const points = seenPoints({ ...stage, lead }, model, preset === 'a' && lead ? [lead] : shown);
  if (preset === 'a') return { rig: framed({ ...view, yaw: behind(lead) + view.yaw }, points) };
  if (preset === 'c' && !level) return { rig: fromHub(framed, view, points, model) };
  if (stage.frame === 'aboard' || !FOLLOW.has(preset) || stage.calm || stage.still || level) return { rig: nearlyWhole(framed, view, points, ground) };
  const carried = seenPoints({ ...stage, frame: 'aboard', companion: false, others: null, lead }, model, shown);
  const crosses = climbs(points, model) || shown.some(m => m.outside || highest(m, ground) > HIGH * model.radius_m);
  return followed({ model, lead, view, aspect, inset, azimuth, framed, still: points, carried, whole: ground.outline(), crosses });
}

// All of a craft that goes over, its length across the picture but where it is seen along its axis.
function tumblingWhole(framed, view, preset, points) {
  return framed(preset === 'd' ? view : { ...view, ...BROADSIDE }, points);
}

const WIDEST = Math.tan(30 * RAD); // half the field of view, at most

const RAISED = new Set(['b', 'd', 'e']); // with what lies level, or hides what is low in it ('e': where nothing leads)

// {yaw, tilt, fov} of a preset on a stage so broad.
function viewOf({ cameras, ground }, preset, aspect) {
  const { broad, square } = cameras.seats[preset === 'e' ? 'b' : preset];
  const share = Math.min(1, Math.max(0, (cameras.broad - aspect) / (cameras.broad - cameras.square)));
  const between = key => broad[key] + share * (square[key] - broad[key]);
  const over = ground.level ? cameras.level_over_deg : ground.tube_m ? cameras.section_over_deg : 0;
  const tilt = preset === 'w' && ground.level ? cameras.level_whole_deg : between('tilt_deg') + (RAISED.has(preset) ? over : 0);
  return { yaw: between('yaw_deg') * RAD, tilt: tilt * RAD, fov: between('fov_deg') };
}

// All that happens, and where that is most of the wheel, the wheel with it: none that is cut by a hand's breadth.
function nearlyWhole(framed, view, points, ground) {
  const rig = framed(view, points);
  const whole = ground.level ? rig : framed(view, [...points, ...ground.outline()]);
  return whole.distance < MOST_OF_WHEEL * rig.distance ? whole : rig;
}

// From behind the thrower, looking where the throw goes.
function behind(lead) {
  const heading = lead?.input?.speed_m_s ? (lead.input.heading_deg ?? 0) * RAD : 0;
  return Math.atan2(-Math.cos(heading), -Math.sin(heading));
}

// The eye stays by the hub; the field of view is what makes things fit.
function fromHub(framed, view, points, model) {
  const wanted = Math.max(0.3 * model.radius_m, model.radius_m - 3 * model.shape.hub_m);
  let tan = 0.3;
  let rig = null;
  for (let k = 0; k < 6; k += 1) {
    rig = framed({ ...view, fov: (2 * Math.atan(tan)) / RAD }, points);
    tan = Math.min(WIDEST, Math.max(0.012, (tan * rig.distance) / wanted));
  }
  return rig;
}

function withBall(stage, model, lead, time_s) {
  const p = bodyAt(model, lead, stage.frame, time_s, {});
  const { level, floors } = model.ground;
  const azimuth = stage.frame === 'outside' ? lead.release_rad : floors ? model.ground.azimuth(0, lead.floor) : azimuthOf(p, model.radius_m);
  const distance = Math.min(Math.max(5, 14 * lead.diameter_m), Math.max(1.2 * model.radius_m, 1));
  const { yaw_deg, tilt_deg, fov_deg } = model.cameras.seats.e.broad;
  return { target: [p.x, p.y, p.z], azimuth, level, yaw: behind(lead) + yaw_deg * RAD, tilt: tilt_deg * RAD, distance, fov: fov_deg };
}

// Every visible path, figure and landing.
export function seenPoints(stage, model, shown) {
  const points = [];
  const p = {};
  const push = q => points.push(q.x, q.y, q.z);
  const held_s = Math.min(...shown.map(m => m.held?.until_s ?? Infinity));
  const until_s = Math.min(held_s, Math.max(shown.length ? 0 : EMPTY_S, ...shown.map(m => m.over_s)));
  for (const m of shown) {
    points.push(...m.lines[stage.frame].points);
    if (stage.frame === 'outside') for (const q of riddenOn(model, m, until_s)) push(q);
    if (m.motion.companion?.landing && m.lines.companion && stage.companion) points.push(...companionPointsIn(stage, model, m));
    for (const q of extent(stage, model, m)) push(q);
    for (const along_m of m.held?.guesses_m ?? []) push(deckAt(model, stage.frame, along_m, 0, m.release.axial_m, m.held.until_s, p, m.floor));
    if (m.landing)
      for (const dz of [0, Math.min(1.6, 0.3 * model.radius_m)])
        push(deckAt(model, stage.frame, m.landing.along_m, 0, m.landing.axial_m + dz, m.landing.time_s, p, m.floor));
  }
  for (const person of standing(shown, model.ground))
    for (const turn of turnsOf(stage, model, person, until_s)) {
      for (const [along, up, axial] of aboutPerson(model.ground))
        push(model.ground.on(person.along_m + along, up, person.axial_m + axial, turn, p, person.floor));
    }
  if (stage.others) points.push(...stage.others);
  return climbs(points, model) || shown.some(m => m.outside) ? [...points, ...model.ground.outline()] : points;
}

// Where what has come to its end is carried on to while others still move.
function riddenOn(model, m, until_s) {
  const { path, ends_s } = m;
  if (!path.count || m.stream || m.outside || until_s <= ends_s) return [];
  const steps = Math.min(24, Math.max(1, Math.ceil((angleAt(model.answer, until_s) - angleAt(model.answer, ends_s)) / 0.3)));
  return Array.from({ length: steps }, (_, k) => bodyAt(model, m, 'outside', ends_s + ((until_s - ends_s) * (k + 1)) / steps, {}));
}

// What goes with a motion besides its path: who moves along it from head to feet, the pivot, the line, the cup.
function extent(stage, model, m) {
  return [m.starts_s, (m.starts_s + m.ends_s) / 2, m.ends_s].flatMap(time_s => reachOf(model, m, stage.frame, time_s));
}

// A little room about a person, head to foot; where none fits, about the place a thing starts from.
function aboutPerson(ground) {
  const { radius_m, level } = ground;
  const room = Math.min(1.2, 0.3 * radius_m);
  const tall = Math.min(PERSON_M, 1.6 * radius_m);
  if (level)
    return [
      [-0.3 * room, 0, 0],
      [0.3 * room, 0, 0],
      [0, ground.headroom() > PERSON_M ? PERSON_M : 0.3 * tall, 0],
    ];
  return [
    [-room, 0, 0],
    [room, 0, 0],
    [0, tall, 0],
    [0, 0, 1.2 * room],
    [0, 0, -room],
  ];
}

// Whatever rises most of the way to the axis is only understood with the whole wheel round it; a turntable is always shown whole.
function climbs(points, { radius_m, ground }) {
  if (ground.level) return true;
  for (let i = 0; i < points.length; i += 3) if (Math.hypot(points[i], radius_m - points[i + 1]) < 0.3 * radius_m) return true;
  return false;
}

// Over the ground, which bends up across in a tube.
function highest({ path }, ground) {
  let most = 0;
  path.height_m.forEach((height_m, i) => {
    most = Math.max(most, height_m - ground.surface(path.axial_m[i]));
  });
  return most;
}

// Outside the figure is carried from its ghost to where it is when the chosen path ends.
function turnsOf(stage, model, person, until_s) {
  if (stage.frame === 'aboard') return [0];
  const first = angleAt(model.answer, person.since_s);
  const last = Math.max(first, angleAt(model.answer, until_s));
  const steps = Math.min(24, Math.max(1, Math.ceil((last - first) / 0.3)));
  return Array.from({ length: steps + 1 }, (_, k) => first + ((last - first) * k) / steps);
}

function companionPointsIn(stage, model, m) {
  const { points, time } = m.lines.companion;
  if (stage.frame === 'aboard') return points;
  return companionOutside(model, points, time);
}

export function companionOutside(model, points, time) {
  const out = new Float64Array(points.length);
  for (let i = 0; i < time.length; i += 1) {
    const turn = angleAt(model.answer, time[i]);
    const [x, y] = [points[3 * i], model.radius_m - points[3 * i + 1]];
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    out.set([c * x + s * y, model.radius_m - (c * y - s * x), points[3 * i + 2]], 3 * i);
  }
  return out;
}
