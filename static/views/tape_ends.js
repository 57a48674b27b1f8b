// Places that the tape can be laid from and to by name, for whoever has no pointer: where each motion is released, what it meets, where it
// is now, and the deck under it.

import { tr } from '../state/language.js';
import { figure } from './spoken.js';
import { WORDS } from './touches.js';

const MOST_EVENTS = 8; // of one motion

/** [{key, say, end}]; `end` is what the tape keeps: a moment of a path, or a place on the deck. `shown` motions of the stage. */
export function tapePlaces(shown, time_s) {
  return shown.filter(m => m.path.count).flatMap(m => placesOf(m, Math.min(Math.max(time_s, m.starts_s), m.ends_s)));
}

function placesOf(m, now_s) {
  const moment = (what, say, time_s) => ({ key: `${m.i} ${what}`, say: `${m.name} ${say}`, end: { motion: m.i, time_s } });
  const { along_m, axial_m } = m.release;
  const events = m.motion.events.filter(({ kind }) => WORDS[kind]).slice(0, MOST_EVENTS);
  return [
    moment('starts', tr('at the start'), m.starts_s),
    { key: `${m.i} under`, say: tr('the ground under the start of {motion}', { motion: m.name }), end: { along_m, axial_m, floor: m.floor } },
    ...events.map((event, k) => moment(`event ${k}`, `${tr(WORDS[event.kind])}, ${figure(event.time_s, 's', 'si')}`, event.time_s)),
    moment('now', tr('at {time}, the clock', { time: figure(now_s, 's', 'si') }), now_s),
  ];
}
