// One question in flight, the newest waits, what belongs to another scene is dropped: of the paths, and of what people would feel.

import { tr } from '../state/language.js';
import { RADIUS, SPIN, readAt } from '../state/fields.js';
import { dialOf, heldHome } from '../state/homes.js';
import { createNewest } from '../state/newest.js';
import { completed, movingParts } from '../state/parts.js';
import { createStatus } from '../state/status.js';
import { feltPart } from '../state/store.js';
import { formatFigure } from '../state/units.js';
import { ValidationError } from './errors.js';

const REST_MS = 100; // after which a dial that is still held counts as left where it stands
const SLOW_MS = 300; // a scene that took as long is asked so that it tells how far it is

/** trace(document, {units, hold, signal, told}) → promise of the answer; timers {later, forget} and now(), ms, for tests. */
export function createAsk({ store, trace, status = createStatus(), timers = {}, now = () => performance.now() }) {
  let following = null, // what a moved dial asks for, until it is answered or taken back
    solving = null,
    took_ms = 0,
    moving = false, // a dial, under the hand: paths alone are asked for
    resting = null;
  const { later = (fn, ms) => setTimeout(fn, ms), forget = timer => clearTimeout(timer) } = timers;
  const { want: ask, drop } = createNewest({ request, ask: put, answered: arrived, failed, overtaken, ...timers });

  function request() {
    const hold = solving ?? following,
      parts = moving && store.answer ? movingParts(store, hold) : 'all';
    const question = { document: store.document, units: store.view.units, hold, solved: solving !== null, notice: store.notice, parts, before: store.answer };
    solving = null;
    return question;
  }

  async function put({ document, units, hold, parts }, signal) {
    const job = status.begin({ say: tr('Working out the paths'), dims: true, aside: () => shownFor(store), cancel: store.stale ? cancel : null });
    const began_ms = now();
    try {
      return await trace(document, { units, hold, signal, told: took_ms > SLOW_MS ? job.progress : null, parts });
    } finally {
      took_ms = now() - began_ms;
      job.end();
    }
  }

  // what was refused since it was asked for, such as a figure that cannot be, is not answered by it
  function arrived(answer, { document, hold, solved, notice, parts, before }) {
    if (store.notice === notice) clear();
    const wanted = hold && (solved || following !== null); // undone meanwhile, nothing follows
    const value = wanted && readAt(store.fields, answer.scene, hold.follower);
    answered(hold);
    store.setAnswer(parts === 'all' ? answer : completed(answer, before, parts), document, wanted ? { path: hold.follower, value, step: solved } : null);
    if (store.stale || (store.answer.partial && !moving)) ask(); // back at a scene answered before, nobody has asked for it again
  }

  function answered(hold) {
    if (hold === following) following = null;
  }

  // a dial that was to be set is still to be
  function overtaken({ hold, solved }) {
    if (solved) solving ??= hold;
  }

  // given up: the answer that is shown stands with its own inputs again
  function cancel() {
    drop();
    solving = following = null;
    if (!store.stale) return;
    store.revert();
    store.tell({ kind: 'told', say: tr('Cancelled: everything is back at the values that were worked out.'), field: null, again: store.redo });
  }

  // what was merely told stays until its reader is done with it
  function clear() {
    if (store.notice && store.notice.kind !== 'told') store.tell(null);
  }

  function failed(problem, { hold }) {
    if (problem instanceof ValidationError) {
      answered(hold);
      const first = problem.errors[0];
      return store.tell({ kind: 'refused', say: first.say, more: problem.tooHeavy ? shownFor(store) : '', field: first.field ?? null, held: Boolean(hold) });
    }
    store.tell({ kind: 'failed', say: problem.message, more: shownFor(store), field: null, again: ask });
  }

  // once it rests, all the rest of the answer is asked for
  function moves(live) {
    forget(resting);
    moving = live;
    if (live) resting = later(rest, REST_MS);
  }
  function rest() {
    moving = false;
    if (store.stale || store.answer?.partial) ask();
  }

  store.on('document', ({ path, followed, replaced, live }) => {
    if (replaced) drop();
    if (followed && !store.stale) return;
    if (!followed) moves(Boolean(live));
    if (path === null) following = null; // set back, or changed as a whole
    if (!store.stale && !store.answer?.partial) return clear();
    if (!followed && store.stale) following = follower(store, path) ?? following;
    ask();
  });
  store.on('view', patch => {
    if ('units' in patch && store.answer) ask();
  });

  return {
    ask,
    /** A dial set by what it should give: {hold, held, follower}. */
    solve(request) {
      solving = request;
      return ask();
    },
  };
}

// with gravity or rim speed held, moving one dial of that habitat makes its other follow
function follower(store, path) {
  const { hold, held } = store.view;
  const dial = dialOf(path);
  if (!dial || dial.home !== heldHome(store) || (hold !== 'gravity' && hold !== 'rim_speed')) return null;
  return { hold, held, follower: dial.other };
}

function shownFor(store) {
  if (!store.answered) return '';
  const read = path => readAt(store.fields, store.answer.scene, path);
  return tr('The dimmed picture is for {radius}\u00a0m and {spin}\u00a0rpm.', {
    radius: formatFigure(read(RADIUS), 0.1),
    spin: formatFigure(read(SPIN), 0.01),
  });
}

// What people would feel, asked once its place was opened, and from then on with every change of the habitat or the person.

export function createAskFeel({ store, feel }) {
  let opened = false,
    lastQuestion = null;
  const newest = createNewest({
    request,
    ask: ({ body, units }, signal) => feel(body, { units, signal }),
    answered: (answer, { body }) => store.setFeel(answer, null, body),
    // an error of the scene is told by the question about the paths; the figures stay those of the last scene that stood
    failed: problem => {
      if (!(problem instanceof ValidationError)) lastQuestion = null; // asked again when the place is opened again
      store.setFeel(null, problem);
    },
  });

  const now = () => ({ body: feltPart(store.document), units: store.view.units });

  function request() {
    const question = now();
    lastQuestion = JSON.stringify(question);
    return question;
  }

  function ask() {
    if (opened && JSON.stringify(now()) !== lastQuestion) newest.want();
  }

  store.on('document', ({ replaced }) => {
    if (replaced) {
      newest.drop();
      lastQuestion = null;
    }
    ask();
  });
  store.on('view', patch => {
    if (patch.place === 4) opened = true;
    ask();
  });
}
