// Builds everything, and is the only module that knows all others.

import { tr } from './state/language.js';
import { createAsk, createAskFeel } from './api/ask.js';
import { createAskShip } from './api/ask_ship.js';
import { createAskShot } from './api/ask_shot.js';
import { createClient, isThere } from './api/client.js';
import { ValidationError } from './api/errors.js';
import { createExamples } from './api/examples.js';
import { createOpen, firstScene } from './api/opening.js';
import { createBar, createShare } from './panels/bar.js';
import { createComfort } from './panels/comfort.js';
import { createBehind } from './panels/behind.js';
import { createDials } from './panels/dials.js';
import { watchPointer } from './panels/shared/dom.js';
import { download, fileName } from './panels/shared/files.js';
import { createLarge } from './panels/shared/large.js';
import { createGlossary } from './panels/glossary.js';
import { createHeard } from './panels/heard.js';
import { createHomes } from './panels/homes.js';
import { PACES, createLooks, looksAnswer } from './panels/looks/looks.js';
import { createTheme, createTypeSize } from './panels/looks/theme.js';
import { createHowBig, sizeAnswer } from './panels/how_big/how_big.js';
import { createKeeper } from './kept/keeper.js';
import { NO_STORAGE, createKept, lent } from './kept/kept.js';
import { createConnection } from './state/connection.js';
import { aimIn } from './state/aim_link.js';
import { comesByItself } from './state/first_time.js';
import { createAddress, createViewStorage, fromHash } from './state/persistence.js';
import { hiddenNames, shownIn } from './state/shown.js';
import { NOTHING_HELD } from './state/homes.js';
import { PLACE } from './state/shot.js';
import { createStatus } from './state/status.js';
import { createKeys } from './panels/keys.js';
import { createNotices } from './panels/notices.js';
import { createPlaces } from './panels/places.js';
import { createPresentLater } from './panels/present_later.js';
import { createScenes } from './panels/scenes.js';
import { createStatusLine } from './panels/status_line.js';
import { createTalkLater } from './panels/talk_later.js';
import { createTakeAway } from './panels/away/take_away.js';
import { createTimeline } from './panels/timeline/timeline.js';
import { createTitle, focusScene } from './panels/title.js';
import { createUnkept } from './panels/unkept.js';
import { createWhatMoves } from './panels/moves/what_moves.js';
import { NO_CAMERAS, createStore, firstPresets } from './state/store.js';
import { motionsWords } from './state/words.js';
import { createClock } from './time/clock.js';
import { createStudio } from './views/shoot.js';
import { createStages } from './views/stage.js';
import { vignetteOf } from './views/vignette.js';

const OPENING = window.document.body.dataset.opening; // the scene that is shown first
const SOON_MS = 100;
const MID_FLIGHT = 0.14; // of what is played: both throws of the first scene are on their way up
const element = id => window.document.getElementById(id);
const status = createStatus();
const connection = createConnection({ probe: isThere, changed: state => status.setServer(state, connection.retry) });
const client = createClient({ connection });
const examples = createExamples({ client });
const local = lent('localStorage', NO_STORAGE);
const views = createViewStorage(local);
const kept = createKept({
  local,
  session: lent('sessionStorage', NO_STORAGE),
  indexedDB: lent('indexedDB'),
  locks: navigator.locks,
  Channel: window.BroadcastChannel,
  fromHash,
  refusalOf: problem => (problem instanceof ValidationError ? problem.message : null),
  version: window.document.body.dataset.version,
});
const trace = (document, options) => kept.shelf.opening(document, () => client.trace(document, options)); // of a scene that is opened

createStatusLine({ status, home: element('stages') });
// a page that was hidden or cut off looks at once, not only when it is due
for (const event of ['online', 'pageshow', 'visibilitychange']) addEventListener(event, connection.retry);
start().catch(sayDead);

async function start() {
  const { hash: written } = kept.tab.read(); // by this tab before it was left or loaded again
  const { hash } = location;
  const [fields, letGo] = await Promise.all([client.fields(), kept.prepare()]);
  const first = await firstScene({
    sources: kept.shelf.sources(hash),
    example: options => examples.opened(OPENING, options),
    trace,
    status,
    units: views.view({ units: '' }).units,
    seen: entitle,
  });
  letGo();
  if (first.isExample) examples.shown = OPENING;
  const store = createStore({ document: first.document, fields });
  const clock = createClock({ now: () => performance.now() });
  store.look(views.view(store.view));
  const ask = createAsk({ store, trace: client.trace, status });
  const { open, lookRound } = build({ store, clock, ask, shown: hash });
  sayReady();
  store.setAnswer(first.answer, first.document);
  if (!first.isExample && !first.trouble) showAs(hash || (written ?? ''), store, clock);
  tellShared(store, first.document);
  if (first.trouble) tellTrouble(store, open, first.trouble);
  if (first.isExample) firstMinute(store, clock, lookRound);
}

// its name stands before its answer does
function entitle({ title }) {
  element('title').textContent = title || tr('Untitled scene');
  element('direction').textContent = tr('Opening the scene…');
}

// what an address says besides the scene
function showAs(hash, store, clock) {
  const { hidden, speed } = shownIn(hash, PACES);
  if (hidden.length) store.look({ hidden: hiddenNames(store, hidden) });
  if (speed !== null) clock.setPace(speed);
  const aimed = aimIn(hash, store);
  if (!aimed) return;
  store.setShot({ aim: aimed.aim, asked: true }, { step: false });
  if (aimed.open) store.look({ place: PLACE });
}

function tellTrouble(store, open, { say, more, again }) {
  store.tell({ kind: 'failed', field: null, say, more, again: again && (() => open(again)) });
}

function build({ store, clock, ask, shown }) {
  const keeper = createKeeper({
    ...kept,
    store,
    first: kept.shelf.shown(store.document),
    picture: () => vignetteOf(store.answer, store.fields),
    told: say => store.tell({ kind: 'told', say }),
  });
  const { open, openExample } = createOpen({
    store,
    trace,
    openedExample: examples.opened,
    status,
    left: (_, next) => keeper.begin(kept.shelf.shown(next)),
    opened,
  });
  const addresses = new WeakMap(); // of documents that came with one
  function opened(document, id) {
    examples.shown = id;
    store.look({ chosen: 0, hidden: [], beside: null, served: 0, ...NOTHING_HELD, presets: firstPresets(document), cameras: NO_CAMERAS });
    clock.seek(0);
    if (addresses.has(document)) showAs(addresses.get(document), store, clock);
    focusScene();
    tellShared(store, document);
  }
  const sceneText = (document = store.document) => `${JSON.stringify(document, null, 2)}\n`;
  const saveScene = (document = store.document) => download(`${fileName(document.title)}.rimfall.json`, sceneText(document), 'application/json');
  const share = createShare({ store, clock, saveScene: () => saveScene() });
  let readyTalks = null; // asked for once
  const talkList = () => (readyTalks ??= client.talks().catch(() => ((readyTalks = null), [])));
  const talks = createTalkLater({ store, status, client, load: makeTalk });
  const scenes = createScenes({
    examples,
    open,
    openExample,
    units: () => store.view.units,
    kept: keptScenes({ store, keeper, open, saveScene }),
    saveScene: () => saveScene(),
    recover: client.recover,
    status,
    talks: { list: talkList, openReady: talks.openReady, open: talks.open },
  });

  watchPointer();
  createBehind({ store });
  createTheme({ store });
  createTypeSize({ store });
  const room = () => roomOf({ store, clock, turned: () => stages.turned() });
  const present = createPresentLater({ store, clock, status, element: element('frame'), room, given: talks.given });
  createBar({ store, scenes, share, present, talks });
  createTitle({ store });
  createNotices({ store });
  createComfort({ store, clock });
  const heard = createHeard({ store, write: say => element('heard').replaceChildren(say) });
  createUnkept({ kept: keeper, saveScene: () => saveScene() });
  createPlaces({
    store,
    clock,
    answers: {
      1: () => sizeAnswer(store),
      2: () => motionsWords(store.document.motions, store.fields.kinds),
      3: () => looksAnswer(store, clock),
      4: () => store.feel?.says.short ?? tr('not asked yet'),
      5: () => store.shot.answer?.short ?? tr('not asked yet'),
      6: () => (store.document.craft ? (store.ship.answer?.short ?? tr('not asked yet')) : tr('no craft yet')),
    },
  });
  createHowBig({ store });
  const large = createLarge({ store });
  const glossary = createGlossary({ kinds: store.fields.kinds });
  createWhatMoves({ store, large, explain: glossary.explain });
  const looks = createLooks({ store, clock, client, explain: glossary.explain, large });
  const timeline = createTimeline({ store, clock });
  createDials({ store, solve: request => ask.solve(request), add: createHomes({ store }).add });
  const stages = createStages({ element: element('stages'), store, clock, tell: status.setDrawing });
  const lookRound = (options = {}) => import('./panels/guide.js').then(({ showGuide }) => showGuide({ store, ...options }));
  createKeys({ store, clock, timeline, looks, stages, glossary, heard, scenes, large, present, lookRound, talks });
  const { settled } = createAddress({
    store,
    clock,
    views,
    shown,
    open,
    moved: (document, hash) => addresses.set(document, hash),
    written: ({ hash, fits }) => kept.tab.note({ hash, opened: fits || keeper.id ? null : store.document }),
  });
  createTakeAway({
    store,
    clock,
    exported: client.exported,
    studio: createStudio(stages),
    cameras: () => stages.cameras?.() ?? [],
    sceneText,
    settled,
  });
  // beside the stages, in the page's column
  async function makeTalk() {
    const [{ createGiving }, { createMaker }, { createTalkKeeping }] = await Promise.all([
      import('./panels/talk/giving.js'),
      import('./panels/talk/maker.js'),
      import('./kept/talks.js'),
    ]);
    const trace = one => client.trace(one, { units: store.view.units });
    return createMaker({
      store,
      clock,
      stages,
      giving: createGiving({ store, clock, stages, trace, keeper, ready: place => later[place]?.().catch(() => {}), shown: kept.shelf.shown }),
      trace,
      present: present.enter,
      openFile: scenes.chooseFile,
      ready: talkList,
      openReady: talks.openReady,
      draw: (answer, hidden) => vignetteOf(answer, store.fields, hidden),
      takenAway: document => client.talkFile(document),
      keep: parts => createTalkKeeping({ ...parts, local, factory: lent('indexedDB'), claims: kept.claims, tab: kept.tab, word: kept.word }),
      keepWhenLeft,
    });
  }
  keepWhenLeft(keeper);
  createAskFeel({ store, feel: client.feel });
  const later = {}; // by place: fetches it ahead of its opening
  later[4] = whenOpened(store, 4, async () => {
    const [{ createFeel }] = await Promise.all([import('./panels/feel/feel.js'), import('./views/feel/posts.js')]);
    await createFeel({ store, client, glossary, large });
  });
  createAskShot({ store, aim: client.aim, status });
  later[5] = whenOpened(store, 5, async () => {
    const [{ createShot }] = await Promise.all([import('./panels/shot/shot.js'), import('./views/shot/aimed.js')]);
    await createShot({ store, clock, client, heard, large, open, explain: glossary.explain });
  });
  createAskShip({ store, craft: client.craft });
  later[6] = whenOpened(store, 6, async () => {
    const { createShip } = await import('./panels/ship/ship.js');
    await createShip({ store, clock, client, heard, large, explain: glossary.explain });
  });
  return { open, lookRound };
}

// What belongs to a place that few open at once is fetched with its first opening, once the server is there, or ahead of it: by the function that
// this gives.
function whenOpened(store, place, make) {
  let making = null,
    off = store.on('view', opened);
  const made = () =>
    (making ??= client
      .health()
      .then(make)
      .catch(problem => {
        making = null;
        throw problem;
      }));

  async function opened() {
    if (store.view.place !== place) return;
    off();
    const job = status.begin({ say: tr('Loading') });
    try {
      await made();
    } catch {
      off = store.on('view', opened);
      store.tell({ kind: 'failed', field: null, say: tr('This part of the page could not be loaded.'), again: () => store.look({ place }) });
    }
    job.end();
  }
  return made;
}

// who follows, where the server lets others
async function roomOf({ store, clock, turned }) {
  const { shared, address } = await client.shared();
  if (!shared) return null;
  const [{ createShareClient }, { createRoom }] = await Promise.all([import('./api/share.js'), import('./panels/present/room.js')]);
  return createRoom({ store, clock, share: createShareClient(), address, turned });
}

// that another tab has the scene too
function tellShared(store, document) {
  const { say } = kept.shelf.shown(document);
  if (say) store.tell({ kind: 'told', say });
}

// what the list of kept scenes needs
function keptScenes({ store, keeper, open, saveScene }) {
  return {
    list: () => kept.list(keeper),
    async open(id) {
      const document = await kept.shelf.take(id);
      if (document) return open(document);
      store.tell({ kind: 'failed', field: null, say: tr('That scene is no longer kept.') });
    },
    openCopy: open,
    remove: keeper.remove,
    restore: keeper.restore,
    save: ({ document }) => saveScene(document),
    get trouble() {
      return keeper.trouble;
    },
    on(hear) {
      keeper.on(hear);
      kept.word.on(hear);
    },
  };
}

// one that is only hidden has time to write
function keepWhenLeft(keeper) {
  addEventListener('pagehide', keeper.go);
  addEventListener('pageshow', event => event.persisted && keeper.comeBack());
  window.document.addEventListener('visibilitychange', () => {
    if (window.document.visibilityState === 'hidden') keeper.flush();
  });
}

// ready once the first answer is drawn; the flat plates that stand in without WebGL draw at once and announce nothing
function sayReady() {
  const { body } = window.document,
    element = window.document.getElementById('stages');
  const ready = () => {
    body.dataset.ready = '1';
    setTimeout(client.soon, SOON_MS); // until then a machine of two cores is the picture's
  };
  if (element.classList.contains('stages-flat')) requestAnimationFrame(ready);
  else element.addEventListener('rimfall:drawn', ready, { once: true });
}

// In mid-flight: once to its end, then it rests; still for those who asked for less motion. A look round comes by itself once, after all else.
function firstMinute(store, clock, lookRound) {
  clock.seek(MID_FLIGHT * clock.end_s);
  if (!matchMedia('(prefers-reduced-motion: reduce)').matches) clock.play();
  if (comesByItself(store.view, true)) element('stages').addEventListener('rimfall:drawn', () => setTimeout(lookRound, SOON_MS), { once: true });
}

function sayDead(problem) {
  const say = `${problem.message} ${tr('Reload this page to try again.')}`;
  window.document.getElementById('alert').textContent = say;
  const place = window.document.getElementById('notice');
  place.className = 'notice failed';
  place.textContent = say;
  throw problem;
}
