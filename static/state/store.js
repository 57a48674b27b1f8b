// The one store: document, answer, view and notice, and who wants to hear of them.

import { createDeckMover } from './decks.js';
import { getAt, motionName, putAt, readAt } from './fields.js';
import { createGuesses } from './guesses.js';
import { createLag } from './lag.js';
import { TUMBLE_PRESETS, craftRequest, isTumble, tumbler } from './ship.js';
import { PLACE, aimRequest, renamedAim } from './shot.js';

// What people would feel depends on these parts of a document; where everything goes, on all but the scene's own words and wishes.
const FELT_PARTS = ['habitat', 'air', 'person', 'own_limits'];
const NO_PATHS = ['title', 'person', 'own_limits', 'craft'];

/** The part of a document that the question about what people feel takes. */
export const feltPart = document => ({
  ...Object.fromEntries(FELT_PARTS.filter(name => name in document).map(name => [name, document[name]])),
  ...letGo(document),
});
// that it tumbles is told with what is felt
const letGo = ({ craft = null, motions }) => (motions?.some(isTumble) ? { craft, motions: motions.filter(isTumble) } : {});
// a craft's masses are where everything goes only while it tumbles
const pathPart = document =>
  Object.fromEntries(Object.entries(document).filter(([name]) => !NO_PATHS.includes(name) || (name === 'craft' && tumbler(document) >= 0)));

const aimPart = ({ document, shot }) => aimRequest(document, shot.aim);

const UNDO_STEPS = 200;
const ANSWERS_KEPT = 4; // of scenes left for another one: undo shows each with its own

/** What place 5 is busy with: an aim and its answer; a request for landings, their answer and the throw of theirs that is looked at.
 *  asked: that somebody chose the aim, and not the page. */
const FIRST_SHOT = {
  aim: null,
  asked: false,
  chosen: 0,
  answer: null,
  problem: null,
  over: null,
  landings: null,
  landingsProblem: null,
  flown: null,
  camera: null,
};

/** What place 6 is busy with: the answer about the craft, and how wide its drawing is asked for. */
const FIRST_SHIP = { answer: null, problem: null, width_px: 360, drawing_px: 360 };

/** No stage is seen through a camera that stands in its seat's stead. */
export const NO_CAMERAS = Object.freeze({ aboard: null, outside: null });
export const FIRST_PRESETS = { aboard: 'b', outside: 'd' };
/** From where both stages are seen when a scene is opened. */
export const firstPresets = document => ({ ...(tumbler(document) < 0 ? FIRST_PRESETS : TUMBLE_PRESETS) });
const FIRST_VIEW = {
  place: 2,
  chosen: 0,
  hidden: [],
  presets: FIRST_PRESETS,
  cameras: NO_CAMERAS,
  split: 'auto',
  alone: null,
  swapped: false,
  merged: false,
  presenting: false,
  steady: false,
  guided: false,
  warned: false,
  withheld: null,
  folded: false,
  units: 'si',
  theme: 'auto',
  type: 'desk',
  tense: 'past',
  arrows: { velocity: true, centrifugal: true, coriolis: true, alone: false },
  driftTable: false,
  companion: true,
  companionOutside: false,
  beads_s: 0.25,
  measure: 'dimensions',
  compare: 'over',
  beside: null,
  served: 0,
  hold: null,
  held: null,
  follower: null,
  keys: true,
  lent: false,
  fixed: false, // nothing of the scene is changed here: it has no handles
  away: { files: {}, picture: {} },
};

export function createStore({ document, fields, timers }) {
  const hearers = new Map();
  const emit = (topic, detail) => {
    for (const hear of [...(hearers.get(topic) ?? [])]) hear(detail);
  };
  let past = [], // {document, aim}
    future = [],
    opened = [], // {document, answer, units}: where one scene was left for another
    dragging = false, // the document
    aiming = false; // the same of a catcher
  const now = () => ({ document: store.document, aim: store.shot.aim });
  function remembered() {
    past = [...past.slice(1 - UNDO_STEPS), now()];
    future = [];
  }
  const withDecksMoved = createDeckMover();

  // one undo step a drag: its first live change is remembered, the later ones only move the present
  function change(wanted, detail) {
    const { live = false } = detail,
      next = withDecksMoved(store.document, wanted);
    if (next !== store.document && !dragging) remembered();
    // a drag begins with its first change, not with its first touch
    dragging = live && (dragging || next !== store.document);
    putDocument(next);
    moved(live);
    emit('document', detail);
  }

  // what is hidden stays so under another name: under the old one too, for the answer that is shown until the next has it
  function putDocument(next) {
    const name = renamed(store, next);
    store.document = next;
    if (!name) return;
    store.shot = { ...store.shot, aim: renamedAim(store.shot.aim, name) };
    if (store.view.hidden.includes(name.before)) store.look({ hidden: [...store.view.hidden, name.after] });
  }

  function forgetOldNames(answer) {
    const names = (answer?.motions ?? []).map(({ name }) => name);
    const hidden = store.view.hidden.filter(name => names.includes(name));
    if (hidden.length < store.view.hidden.length) store.look({ hidden });
  }

  // what is shown besides belongs to the scene before
  function moved(live = false) {
    paths.moved(store.document, live);
    told.moved(store.document, live);
    feel.moved(store.document, live);
    aim.moved(store, live);
    ship.moved(store.document, live);
  }

  function travel(from, to) {
    if (!from.length) return;
    to.push(now());
    const { document: next, aim } = from.pop(),
      moves = next !== store.document,
      aims = aim !== null && aim !== store.shot.aim; // before place 5 was opened there was none
    dragging = false;
    aiming = false;
    if (moves) putDocument(next);
    if (aims) store.shot = { ...store.shot, aim };
    if (moves) travelled();
    if (!aims) return;
    moved();
    emit('shot', { aim, live: false });
    if (!moves && store.view.place !== PLACE) store.look({ place: PLACE }); // what is undone is seen
  }

  function travelled() {
    const known = opened.find(one => one.document === store.document && one.units === store.view.units);
    if (known) answeredBy(known.answer, known.document);
    moved();
    emit('document', { path: null, live: false });
    if (known) emit('answer', { current: true });
  }

  function answeredBy(answer, scene) {
    Object.assign(store, { answer, answered: scene });
    paths.answered(scene);
    if (!answer.partial) told.answered(scene);
  }

  const paths = createLag({ part: pathPart, changed: () => emit('behind'), timers });
  const told = createLag({ part: pathPart, changed: () => emit('told'), timers });
  const feel = createLag({ part: feltPart, changed: () => emit('behind'), timers });
  const aim = createLag({ part: aimPart, changed: () => emit('behind'), timers });
  const ship = createLag({ part: craftRequest, changed: () => emit('behind'), timers });

  function remember(document, answer) {
    opened = [...opened.filter(one => one.document !== document), { document, answer, units: store.view.units }].slice(-ANSWERS_KEPT);
  }

  const store = {
    document,
    fields: { ...fields, kindOf: index => store.document.motions?.[index]?.kind },
    answer: null,
    answered: null,
    feel: null,
    feelProblem: null,
    shot: FIRST_SHOT,
    ship: FIRST_SHIP,
    notice: null,
    /** Where the room thinks that something comes down (guesses.js). Topic `guesses`. */
    guesses: createGuesses({ changed: () => emit('guesses') }),
    view: { ...structuredClone(FIRST_VIEW), presets: firstPresets(document) },
    get stale() {
      return store.document !== store.answered;
    },
    /** The answer is of other inputs than those that stand beside it: nothing of it may be shown, but dimmed and with a word of what it is of.
     *  Topic `behind`: that changed, of this or of what people would feel. */
    get behind() {
      return paths.behind;
    },
    /** The same of what is told of the paths, which comes once a dial rests: words, prose, and why it drifts. Topic `told`. */
    get toldBehind() {
      return told.behind;
    },
    get feelBehind() {
      return feel.behind;
    },
    get shipBehind() {
      return ship.behind;
    },
    get shotBehind() {
      return aim.behind;
    },
    get canUndo() {
      return past.length > 0;
    },
    get canRedo() {
      return future.length > 0;
    },
    read: path => readAt(store.fields, store.document, path),
    set(path, value, { live = false } = {}) {
      const same = getAt(store.document, path) === value;
      change(same ? store.document : putAt(store.document, path, value), { path, live });
    },
    edit(fn, { live = false } = {}) {
      const draft = structuredClone(store.document);
      fn(draft);
      change(draft, { path: null, live });
    },
    /** Another scene with its own answer, both at once: no answer stands beside inputs that are not its own. What was moved live up to there
     *  is one step with it. */
    open(next, answer) {
      if (store.answer && !store.stale && !store.answer.partial) remember(store.document, store.answer);
      if (!dragging) remembered();
      dragging = false;
      store.document = next;
      store.shot = { ...FIRST_SHOT, camera: store.shot.camera }; // a camera of one's own is of no scene
      answeredBy(answer, next);
      moved();
      remember(next, answer);
      emit('document', { path: null, live: false, replaced: true });
      emit('answer', { current: true });
    },
    /** Back to what was answered last; redo brings back what is left. */
    revert() {
      if (!store.answered || !store.stale) return;
      const at = past.findLastIndex(({ document: one }) => one === store.answered);
      future.push(now(), ...(at < 0 ? [] : past.slice(at + 1).reverse()));
      if (at >= 0) past = past.slice(0, at);
      putDocument(store.answered);
      dragging = false;
      moved();
      emit('document', { path: null, live: false });
    },
    undo: () => travel(past, future),
    redo: () => travel(future, past),
    /** `follow`: a value the server solved for, taken into the document without asking again; `scene`: the document that is answered.
     *  @param {{path: string, value: number, step: boolean} | null} follow */
    setAnswer(answer, scene, follow = null) {
      const current = scene === store.document;
      const before = store.document;
      if (follow) {
        if (follow.step) remembered();
        const at = follow.path.slice(0, follow.path.lastIndexOf('.')), // the habitat, whose decks went with a radius that followed
          decks = answer.scene && getAt(answer.scene, `${at}.decks`),
          next = putAt(before, follow.path, follow.value);
        store.document = getAt(before, `${at}.decks`)?.length && decks ? putAt(next, `${at}.decks`, decks) : next;
      }
      answeredBy(answer, current ? store.document : scene);
      if (current) forgetOldNames(answer);
      moved(true);
      emit('answer', { current });
      if (follow) emit('document', { path: follow.path, live: !follow.step, followed: true });
    },
    /** Does what goes by the answer to the document as it stands: at once, or when that answer has come; not any more once the document is set back,
     *  edited as a whole or left for another. */
    whenAnswered(act) {
      if (!store.stale) return act();
      const forget = () => {
        for (const off of heard) off();
      };
      const heard = [
        store.on('answer', ({ current }) => {
          if (!current) return;
          forget();
          act();
        }),
        store.on('document', ({ path }) => path === null && forget()),
      ];
    },
    /** What people would feel, of a document's felt part; or why it could not be told: then the last answer stays. */
    setFeel(answer, problem = null, of = store.document) {
      store.feel = answer ?? store.feel;
      store.feelProblem = problem;
      if (answer) feel.answered(of);
      feel.moved(store.document, true);
      emit('feel', answer);
    },
    /** Part of what place 5 is busy with; `live`: by a drag that goes on; `of`: the {document, shot} that an answer among it is of. Another aim is
     *  a step to undo, unless it comes with one, or of itself (`step` false). */
    setShot(patch, { live = false, of = null, step = true } = {}) {
      const aims = step && patch.aim && JSON.stringify(patch.aim) !== JSON.stringify(store.shot.aim);
      if (aims && store.shot.aim && !aiming) remembered();
      if (patch.aim) aiming = live && (aiming || Boolean(aims));
      store.shot = { ...store.shot, ...patch, ...(aims ? { asked: true } : {}) };
      if (of) aim.answered(of);
      aim.moved(store, live);
      emit('shot', { ...patch, live });
    },
    /** Part of what place 6 is busy with; `of`: the document that an answer among it is of. */
    setShip(patch, of = null) {
      store.ship = { ...store.ship, ...patch };
      if (of) ship.answered(of);
      ship.moved(store.document, true);
      emit('ship', patch);
    },
    look(patch) {
      store.view = { ...store.view, ...patch };
      emit('view', patch);
    },
    tell(notice) {
      if (notice === null && store.notice === null) return;
      store.notice = notice;
      emit('notice', notice);
    },
    on(topic, hear) {
      if (!hearers.has(topic)) hearers.set(topic, new Set());
      hearers.get(topic).add(hear);
      return () => hearers.get(topic).delete(hear);
    },
  };
  return store;
}

// The one motion of the same scene that is called otherwise in `next`: {before, after}, or null.
function renamed({ document, answer }, next) {
  const [was, is] = [document, next].map(one =>
    (one.motions ?? []).map((motion, i) => ({ kind: motion.kind, name: motionName({ document: one, answer }, i) })),
  );
  if (was.length !== is.length || was.some(({ kind }, i) => kind !== is[i].kind)) return null;
  const changed = was.flatMap(({ name }, i) => (name === is[i].name ? [] : [{ before: name, after: is[i].name }]));
  return changed.length === 1 ? changed[0] : null;
}
