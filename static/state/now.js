// What all who follow see, as the presenter's page tells it and a phone's takes it: step, line, clock, and how it is looked at. No elements.

import { nearestWay } from './guesses.js';

/** Of the view: what goes to who follows, as it is. */
const SHARED = ['place', 'alone', 'merged', 'swapped', 'hidden', 'companion', 'companionOutside', 'measure', 'arrows', 'chosen', 'presets', 'cameras', 'units'];
const WIDE = 1.6; // a presenter's stage

/** `talk`: as of state/talk.js, or of one step; `turned` {aboard, outside}: how far a hand has turned each eye from its seat, {yaw, tilt, zoom};
 *  `scene`, `next`: their digests; `ask`: as `askOf` has it, or null; `dot`: the bright dot, {stage, x, y}, or null. Without at_ms, which the server adds. */
export function nowOf({ store, clock, talk, turned = {}, scene = null, next = null, ask = null, dark = false, dot = null }) {
  const { view } = store,
    many = talk.steps.length > 1;
  return {
    step: many ? talk.at + 1 : 0,
    of: many ? talk.steps.length : 0,
    title: cut(talk.title),
    line: cut(talk.step?.line || talk.title),
    clock: { time_s: clock.time_s, pace: clock.pace, playing: clock.playing },
    scene,
    next,
    view: { ...Object.fromEntries(SHARED.map(name => [name, view[name]])), turned },
    withheld: view.withheld ?? null,
    ask,
    dark,
    dot,
  };
}

const cut = (text, most = 200) => (text ?? '').slice(0, most);

/** The part of a phone's view that the presenter holds. `wide`: a window wider than high shows both stages, else the one that fills most. */
export function viewOfNow({ view, withheld }, { wide, aspect }) {
  const shown = Object.fromEntries(SHARED.filter(name => name in view).map(name => [name, view[name]]));
  const cameras = shown.cameras && Object.fromEntries(Object.entries(shown.cameras).map(([stage, camera]) => [stage, camera && steppedBack(camera, aspect)]));
  return {
    ...shown,
    ...(cameras && { cameras }),
    withheld,
    merged: false,
    swapped: false,
    split: 'beside',
    alone: view.alone ?? (wide ? null : filling(view)),
  };
}

/** The stage that fills most of the presenter's window. */
export const filling = ({ alone = null, swapped = false }) => alone ?? (swapped ? 'outside' : 'aboard');

/** A camera from so far that a narrower picture holds as much across. `aspect`: of that picture. */
export function steppedBack(camera, aspect) {
  const by = Math.min(Math.max(1, WIDE / aspect), 3);
  return { ...camera, position_m: camera.position_m.map((part, k) => camera.target_m[k] + by * (part - camera.target_m[k])) };
}

/** What is known once it has come down: {off_m, nearer, of}; `off_m` the nearest way, signed; `nearer`: how many of the other marks lie farther off,
 *  of: how many others there are; `round_m`: how long the deck is all round, null where it has ends.
 *  @param {number} mine @param {{landing_m: number, marks: number[]}} ask @param {number | null} round_m */
export function verdictOf(mine, { landing_m, marks }, round_m = null) {
  const off = (/** @type {number} */ mark) => nearestWay(mark - landing_m, round_m);
  const own = marks.findIndex(mark => Math.abs(nearestWay(mark - mine, round_m)) < 1e-6),
    others = marks.filter((_, k) => k !== own);
  const off_m = off(mine);
  return { off_m, nearer: others.filter(mark => Math.abs(off(mark)) > Math.abs(off_m) + 1e-9).length, of: others.length };
}
