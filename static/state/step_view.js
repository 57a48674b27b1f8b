// What a step of a talk says of the page's view, and back: what of the view a step keeps. No elements.

import { ARROW_KINDS } from './arrow_kinds.js';

const ARROWS = ARROW_KINDS.map(({ show }) => show);

/** What a step is where it says nothing, as the document of a talk has it; its scene is its own. */
export const PLAIN_STEP = Object.freeze({
  change: {},
  line: '',
  notes: '',
  place: 2,
  show: 'both',
  merged: false,
  swapped: false,
  seats: { aboard: 'b', outside: 'd' },
  hidden: [],
  companion: false,
  companion_outside: false,
  dimensions: false,
  arrows: [],
  from_s: 0,
  until_s: null,
  pace: 1,
  plays: true,
  ask: null,
});

const STAGES = ['aboard', 'outside'];
const each = of => Object.fromEntries(STAGES.map(stage => [stage, of(stage)]));
const isLetter = seat => typeof seat === 'string';

/** Part of the view: what the step shows, and from which seats; where a camera takes a seat's stead its letter stays as it is in `presets`. */
export function viewOfStep(step, presets) {
  const { place, show, merged, swapped, hidden, companion, companion_outside, dimensions, arrows } = { ...PLAIN_STEP, ...step };
  const seats = { ...PLAIN_STEP.seats, ...step.seats };
  return {
    place,
    alone: show === 'both' ? null : show,
    merged,
    swapped,
    hidden,
    companion,
    companionOutside: companion_outside,
    measure: dimensions ? 'dimensions' : 'off',
    arrows: { ...Object.fromEntries(ARROWS.map(name => [name, arrows.includes(name)])), alone: false },
    chosen: leading(step, hidden),
    presets: each(stage => (isLetter(seats[stage]) ? seats[stage] : presets[stage])),
    cameras: each(stage => (isLetter(seats[stage]) ? null : seats[stage])),
  };
}

const TINY_S = 1e-6;

/** What of the view and the clock a step keeps: where the clock stands at its start or its end, all of it is played. `moved` {aboard, outside}: a camera where it is no longer that of its seat, else null. */
export function stepOfView(view, { time_s, pace, playing = false, end_s = Infinity }, moved = {}) {
  const atRest = !playing && (time_s < TINY_S || time_s > end_s - TINY_S);
  const { place, alone, merged = false, swapped = false, presets, hidden, companion, companionOutside, measure, arrows } = view;
  return {
    place: [2, 4, 5, 6].includes(place) ? place : PLAIN_STEP.place,
    show: alone ?? 'both',
    merged,
    swapped,
    seats: each(stage => moved[stage] ?? presets[stage]),
    hidden: [...hidden],
    companion,
    companion_outside: companionOutside,
    dimensions: measure !== 'off',
    arrows: ARROWS.filter(name => arrows[name]),
    from_s: atRest ? 0 : time_s,
    pace,
    plays: playing || atRest,
  };
}

/** The motion it asks about, or the first that is shown.
 *  @param {{ask?: {motion: string} | null, scene?: any}} step
 *  @param {string[]} hidden */
function leading({ ask = null, scene }, hidden) {
  const names = (scene?.motions ?? []).map(({ name }) => name);
  const found = ask ? names.indexOf(ask.motion) : names.findIndex(name => !hidden.includes(name));
  return Math.max(0, found);
}
