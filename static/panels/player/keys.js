// The keys of a scene that plays from a file.

import { trLater } from '../../state/language.js';
import { PACES } from '../looks/looks.js';
import { toggleLoop } from '../timeline/timeline.js';

/** [key, as it is written, what it does, act(what it acts on)] */
const KEYS = [
  [' ', trLater('Space'), trLater('play or pause'), ({ clock }) => clock.toggle()],
  [',', ',', trLater('one frame back'), ({ clock }) => clock.stepFrame(-1)],
  ['.', '.', trLater('one frame on'), ({ clock }) => clock.stepFrame(1)],
  ['[', '[', trLater('to the mark before'), on => toMark(on, -1)],
  [']', ']', trLater('to the next mark'), on => toMark(on, 1)],
  ['s', 'S', trLater('slower, then full speed again'), ({ clock }) => clock.setPace(PACES[(PACES.indexOf(clock.pace) + 1) % PACES.length])],
  ['l', 'L', trLater('loop'), ({ clock }) => toggleLoop(clock)],
  ['v', 'V', trLater('seats'), ({ store, stages }) => stages.openPresets(store.view.alone ?? 'aboard')],
  ['p', 'P', trLater('present: the stages fill the window, and the keys are a clicker’s'), ({ present }) => present.enter()],
  ['?', '?', trLater('about this file'), ({ about }) => about.show()],
];

/** Beside these, of a scene. */
const SCENE_KEYS = [['h', 'H', trLater('hold back where things go, then reveal it'), ({ motions }) => motions.turnBack()]];
/** And of a talk. */
const TALK_KEYS = [
  ['PageDown', trLater('Page Down'), trLater('on: what is held back, then the next step'), ({ talk }) => talk.next()],
  ['PageUp', trLater('Page Up'), trLater('back to the step before'), ({ talk }) => talk.back()],
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
