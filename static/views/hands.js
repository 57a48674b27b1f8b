// What a hand does on a stage: it turns the eye, lays the tape, guesses, points, and presses the buttons over the picture. Always on the half that is
// in the stage's place: a second habitat may lie in Outside's.

import { attachAlone, attachMeasureChoice, attachSteady } from './chooser.js';
import { attachOrbit } from './orbit.js';
import { tapePlaces } from './tape_ends.js';

/** `stages`: of stage.js; `half`: whose elements they are. */
export function attachHands(stages, half) {
  const { store, clock } = stages,
    { dom } = half;
  const seen = () => stages.halfIn(half.slot);
  attachMeasureChoice(dom, store, {
    places: () => tapePlaces(seen().shown ?? [], clock.time_s),
    lay: (which, end) => layTape(stages, seen(), which, end),
  });
  attachAlone(dom, store);
  attachSteady(dom, store);
  attachOrbit(dom.view, half.eye, { changed: () => stages.invalidate(), clicked: (x, y) => click(stages, seen(), x, y) });
  dom.view.addEventListener('focus', () => stages.invalidate());
  for (const type of ['pointermove', 'pointerleave']) {
    dom.view.addEventListener(type, event => {
      if (seen().pointAt(event)) stages.invalidate();
    });
  }
}

function click(stages, half, x, y) {
  const { store, clock } = stages;
  if (guess(stages, half, x, y) || store.view.measure !== 'tape' || !half?.model) return;
  half.tape.click(half, x, y, clock.time_s);
  stages.invalidate();
}

// A click on the deck while the room is asked: whether it was a guess.
function guess({ store, clock, extras, beside }, half, x, y) {
  if (!store.guesses.open || !half?.model || half === beside.half || !extras.has('GuessMarks')) return false;
  const along_m = extras.alongAt(half, x, y, clock.time_s);
  if (along_m !== null) store.guesses.place(along_m);
  return true;
}

function layTape(stages, half, which, end) {
  half.tape.put(which, end);
  stages.invalidate();
  return half.tape.says(half, stages.clock.time_s);
}
