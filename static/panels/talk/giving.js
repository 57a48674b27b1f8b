// The talk that the page holds, and what puts its steps on the stages. Fetched when a talk is first made, opened or given.

import { createConductor } from '../../state/conductor.js';
import { createTalk } from '../../state/talk.js';

/** `trace(document)` → promise of its answer; `keeper`: keeps what is worked on; ready(place) → promise: its part of the page is there; shown(document): as the keeper begins with it.
 *  Gives {talk, conductor}. */
export function createGiving({ store, clock, stages, trace, keeper, ready, shown }) {
  const talk = createTalk();
  const conductor = createConductor({
    talk,
    store,
    clock,
    live: true,
    calm: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
    look: move => stages.depart(move),
    answerOf: step => trace(step.scene),
    ready: step => ready(step.place),
  });
  // the scenes of a talk are the talk's: kept is what is changed of one that stands
  conductor.on('begin', keeper.rest);
  for (const topic of ['shown', 'end']) conductor.on(topic, () => keeper.begin(shown(store.document)));
  return { talk, conductor };
}
