// The keys of a scene that plays from a file.

import { PACES } from '../looks/looks.js';
import { toggleLoop } from '../timeline/timeline.js';

/** [key, as it is written, what it does, act(what it acts on)] */
const KEYS = [
  [' ', 'Space', 'play or pause', ({ clock }) => clock.toggle()],
  [',', ',', 'one frame back', ({ clock }) => clock.stepFrame(-1)],
  ['.', '.', 'one frame on', ({ clock }) => clock.stepFrame(1)],
  ['[', '[', 'to the mark before', on => toMark(on, -1)],
  [']', ']', 'to the next mark', on => toMark(on, 1)],
  ['s', 'S', 'slower, then full speed again', ({ clock }) => clock.setPace(PACES[(PACES.indexOf(clock.pace) + 1) % PACES.length])],
  ['l', 'L', 'loop', ({ clock }) => toggleLoop(clock)],
  ['v', 'V', 'seats', ({ stages }) => stages.openPresets('aboard')],
  ['p', 'P', 'present: the stages fill the window, and the keys are a clicker’s', ({ present }) => present.enter()],
  ['?', '?', 'about this file', ({ about }) => about.show()],
];

/** Beside these, of a scene. */
const SCENE_KEYS = [['h', 'H', 'hold back where things go, then reveal it', ({ motions }) => motions.turnBack()]];
/** And of a talk. */
const TALK_KEYS = [
  ['PageDown', 'Page Down', 'on: what is held back, then the next step', ({ talk }) => talk.next()],
  ['PageUp', 'Page Up', 'back to the step before', ({ talk }) => talk.back()],
];

export const keysOf = isTalk => [...(isTalk ? TALK_KEYS : SCENE_KEYS), ...KEYS];

/** `on`: what the keys act on; its `talk` is null where there is none. */
export function createPlayerKeys(on) {
  const keys = keysOf(on.talk !== null);
  addEventListener('keydown', event => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]') || on.present.isOn) return;
    if (event.target.closest?.('select, textarea, input:not([type=range])')) return;
    const match = keys.find(([key]) => key === event.key || key === event.key.toLowerCase());
    if (!match) return;
    event.preventDefault();
    match[3](on);
  });
}

function toMark({ clock, timeline }, way) {
  const marks = [0, ...timeline.marks()];
  const next = way > 0 ? marks.find(time => time > clock.time_s + 1e-6) : marks.findLast(time => time < clock.time_s - 1e-6);
  if (next !== undefined) clock.seek(next);
}
