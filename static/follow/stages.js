// The stages of who follows: a scene and its answer as they come, the presenter's view and clock, or a view of one's own at the same time.

import { createDot } from '../panels/present/dot.js';
import { createStore } from '../state/store.js';
import { questionOf } from '../state/guesses.js';
import { viewOfNow } from '../state/now.js';
import { timeOf } from '../state/server_clock.js';
import { createStages } from '../views/stage.js';

const EVERY_MS = 2000; // the own clock is held against the server's
const OFF_S = 0.08; // that it may be wrong by
const TINY_S = 1e-6;
const ROOM_FOR_BOTH_PX = 480;

/** `marked(along_m)`: a mark was set by a press on the deck, or moved there. `clock` of time/clock.js; `server`: of state/server_clock.js; `fields`: GET api/follow/fields. */
export function createShown({ element, fields, clock, server, marked }) {
  const dot = createDot({ element });
  let store = null,
    stages = null,
    now = null,
    timer = null;
  const shown = {
    own: false,
    /** The stage that is shown alone where there is no room for both, by one's own choice; null: the presenter's. */
    only: null,
    digest: null,
    get store() {
      return store;
    },
    /** Another scene. */
    open(digest, { document, answer }) {
      shown.digest = digest;
      if (store) store.open(structuredClone(document), answer);
      else begin(document, answer);
    },
    /** What the presenter tells, of the scene that is open. */
    follow(told) {
      now = told;
      look();
      keepTime(true);
    },
    /** How long the deck is all round, where something is asked; null: it has ends. */
    round_m: null,
    look,
    keepTime,
    ask,
    /** Whether there is room for both stages. */
    get wide() {
      return element.clientWidth >= ROOM_FOR_BOTH_PX && element.clientWidth > 1.15 * element.clientHeight;
    },
    /** Whether it is up to who looks which stage is shown. */
    get mayChoose() {
      return !shown.wide && !now?.view.alone;
    },
  };

  function begin(document, answer) {
    store = createStore({ document: structuredClone(document), fields });
    store.look({ presenting: true });
    stages = createStages({ element, store, clock, tell: () => {} });
    store.on('answer', span);
    store.on('guesses', one);
    store.setAnswer(answer, store.document);
    new ResizeObserver(look).observe(element);
  }

  function span() {
    const { grid } = store.answer;
    clock.setSpan(store.answer.time_s.at(-1), grid.fps[1] / grid.fps[0]);
  }

  // What the room is asked, on the stages too: a mark of one's own, and all of them once it is down.
  function ask(told, own_m) {
    const { guesses } = store,
      question = told && questionOf(store.answer, told.motion, told.id);
    if (!question) return guesses.close();
    if (guesses.id !== told.id || (told.down && !guesses.revealed)) guesses.ask({ ...question, landing_m: told.landing_m });
    if (own_m !== null && guesses.own[0] !== own_m) own(own_m);
    if (told.down && !guesses.revealed) for (const [k, along_m] of others(told.marks, own_m).entries()) guesses.add(along_m, k);
    if (told.down) guesses.reveal();
    else if (told.revealed) guesses.stop();
    shown.round_m = question.round_m;
  }

  function own(along_m) {
    if (store.guesses.own.length) store.guesses.move(0, along_m);
    else store.guesses.place(along_m);
  }

  // a press on the deck places another; a phone has one
  function one() {
    const { guesses } = store;
    if (guesses.own.length > 1) {
      const along_m = guesses.own.at(-1);
      guesses.drop(1);
      guesses.move(0, along_m);
    } else if (guesses.open && guesses.own.length) marked(guesses.own[0]);
    element.classList.toggle('marking', guesses.open);
  }

  function look() {
    if (!now || !store) return;
    const { clientWidth: width, clientHeight: height } = element;
    const patch = viewOfNow(now, { wide: shown.wide, aspect: (shown.wide && !now.view.alone ? width / 2 : width) / Math.max(height, 1) });
    if (shown.only && shown.mayChoose) patch.alone = shown.only;
    if (shown.own) for (const held of ['presets', 'cameras', 'turned']) delete patch[held];
    store.look(patch);
    element.classList.toggle('own', shown.own);
    element.classList.toggle('dim', now.dark);
    dot.show(shown.own || now.dark ? null : (now.dot ?? null)); // of the presenter's picture
    if (!shown.own) stages.turn(now.view.turned ?? {});
  }

  function keepTime(anew = false) {
    clearTimeout(timer);
    timer = setTimeout(keepTime, EVERY_MS);
    if (!now || !store) return;
    const at_s = timeOf(now.clock, server.now_ms(), clock.end_s),
      plays = now.clock.playing && at_s < clock.end_s - TINY_S;
    if (anew) clock.lendPace(now.clock.pace);
    if (!plays) clock.pause();
    if (!plays || Math.abs(clock.time_s - at_s) > Math.max(OFF_S, 2 * (clock.stride_s ?? 0))) clock.seek(at_s);
    if (plays) clock.play();
  }

  return shown;
}

// all marks but one's own
function others(marks, own_m) {
  const at = own_m === null ? -1 : marks.findIndex(mark => Math.abs(mark - own_m) < 0.05);
  return marks.filter((_, k) => k !== at);
}
