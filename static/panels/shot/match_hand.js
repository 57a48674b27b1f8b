// The path that is in hand: its marks or rows with steps back, the frame or row that is looked at, and the answer to the question it makes.

import { tr } from '../../state/language.js';
import { FIRST_MATCH, frameCount, hasPicture } from '../../state/match.js';
import { matchRequest, rowOfField } from '../../state/match_request.js';
import { createNewest } from '../../state/newest.js';
import { createPast } from '../../state/past.js';
import { clamp } from '../../state/scale.js';

/** changed(): anything of it did. */
export function createHand({ store, client, heard, changed }) {
  const past = createPast();
  let dragging = false,
    lastQuestion = null;
  const { want, drop } = createNewest({
    request: question,
    ask: ({ body, units }, signal) => client.match(body, { units, signal }),
    answered(next, of) {
      settle(next, null, of);
      if (!hand.busy) heard.say(next.says);
      changed();
    },
    failed(why, of) {
      settle(null, why, of);
      toRefused(why);
      changed();
    },
  });

  const hand = {
    match: FIRST_MATCH,
    turn: 'mark', // or 'scale': what a drag over the picture does
    onward: true, // to the next frame after each mark
    row: 0, // of a table
    answer: null,
    problem: null,
    busy: false,
    get canUndo() {
      return past.any;
    },
    /** Another path, without an answer and without steps back. */
    begin(match, turn) {
      past.clear();
      Object.assign(hand, { match, turn, row: 0, answer: null });
      dragging = false;
      ask();
    },
    /** A change; `live`: by a drag that goes on, which is one step back. */
    edit(next, live = false) {
      if (!dragging && next !== hand.match) past.push(hand.match);
      dragging = live;
      hand.match = next;
      ask();
      changed();
    },
    undo() {
      if (!past.any) return;
      hand.match = past.back(hand.match);
      dragging = false;
      ask();
      changed();
      heard.say(tr('Undone.'));
    },
    toFrame(frame) {
      const last = Math.max(0, frameCount(hand.match) - 1);
      hand.match = { ...hand.match, frame: clamp(Math.round(frame), 0, last) };
      changed();
    },
    step: by => hand.toFrame(hand.match.frame + by),
    placed: () => hand.onward && hand.step(1),
    /** Shows a row of the question, in its frame or in the table. */
    choose(at) {
      if (hasPicture(hand.match)) return hand.toFrame(hand.match.marks[at]?.frame ?? 0);
      hand.row = at;
      changed();
    },
    put(patch) {
      Object.assign(hand, patch);
      changed();
    },
    ask,
  };

  // busy still, where something newer than `of` waits for its answer
  function settle(answer, problem, of = null) {
    const busy = of !== null && lastQuestion !== null && JSON.stringify(of) !== lastQuestion;
    Object.assign(hand, { answer, problem, busy });
  }

  function question() {
    return { body: matchRequest(hand.match, store.read), units: store.view.units };
  }

  function ask() {
    const next = question(),
      key = JSON.stringify(next);
    if (key === lastQuestion) return;
    lastQuestion = key;
    if (next.body) {
      hand.busy = true;
      return want();
    }
    drop();
    settle(null, null);
  }

  // the frame of the row that a refusal names
  function toRefused(why) {
    const at = rowOfField(why.errors?.[0]?.field);
    if (at !== null && hasPicture(hand.match) && hand.match.marks[at]) hand.toFrame(hand.match.marks[at].frame);
  }
  return hand;
}
