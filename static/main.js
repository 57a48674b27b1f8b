// Builds everything, and is the only module that knows all others.

import { createAsk, createAskFeel } from './api/ask.js';
import { createClient, isThere } from './api/client.js';
import { createOpen, firstScene } from './api/opening.js';
import { createBar, createShare } from './panels/bar.js';
import { createDials } from './panels/dials.js';
import { watchPointer } from './panels/shared/dom.js';
import { download, fileName } from './panels/shared/files.js';
import { createGlossary } from './panels/glossary.js';
import { createTheme, createLooks, looksAnswer } from './panels/looks/looks.js';
import { createHowBig, sizeAnswer } from './panels/how_big/how_big.js';
import { createConnection } from './state/connection.js';
import { createPersistence, createAutosave, fromHash } from './state/persistence.js';
import { createStatus } from './state/status.js';
import { createKeys } from './panels/keys.js';
import { createNotices } from './panels/notices.js';
import { createPlaces } from './panels/places.js';
import { createScenes } from './panels/scenes.js';
import { createStatusLine } from './panels/status_line.js';
import { createTakeAway } from './panels/away/take_away.js';
import { createTimeline } from './panels/timeline/timeline.js';
import { createTitle } from './panels/title.js';
import { createWhatMoves } from './panels/moves/what_moves.js';
import { FIRST_PRESETS, createStore } from './state/store.js';
import { motionsWords } from './state/words.js';
import { createClock } from './time/clock.js';
import { createStudio } from './views/shoot.js';
import { createStages } from './views/stage.js';

const FIRST_PACE = 0.25;
const element = id => window.document.getElementById(id);
const status = createStatus();
const connection = createConnection({ probe: isThere, changed: state => status.setServer(state, connection.retry) });
const client = createClient({ connection });
const autosave = createAutosave(localStorageOrNone());

createStatusLine({ status, home: element('stages') });
for (const event of ['online', 'pageshow']) addEventListener(event, connection.retry);
start().catch(sayDead);

async function start() {
  const fields = await client.fields();
  const first = await firstScene({
    sources: SOURCES,
    example: firstExample,
    trace: client.trace,
    status,
    units: autosave.view({ units: '' }).units,
    seen: entitle,
  });
  const store = createStore({ document: first.document, fields });
  const clock = createClock({ now: () => performance.now() });
  store.look(autosave.view(store.view));
  const ask = createAsk({ store, trace: client.trace, status });
  const { open } = build({ store, clock, ask });
  sayReady();
  store.setAnswer(first.answer, first.document);
  if (first.trouble) tellTrouble(store, open, first.trouble);
  if (first.isExample) firstMinute(clock);
}

// the link's scene, else the one at hand when the page was last left
const SOURCES = [
  { what: 'the scene of the link', find: () => fromHash(location.hash) },
  { what: 'the scene kept in this browser', find: () => autosave.scene() },
];

async function firstExample() {
  const [{ id }] = await client.examples();
  return client.example(id);
}

// its name stands before its answer does
function entitle({ title }) {
  element('title').textContent = title || 'Untitled scene';
  element('direction').textContent = 'Opening the scene…';
}

function tellTrouble(store, open, { say, again }) {
  store.tell({ kind: 'failed', field: null, say, again: again && (() => open(again)) });
}

function build({ store, clock, ask }) {
  const open = createOpen({ store, trace: client.trace, status, left: document => autosave.remember(document, Date.now()), opened });
  function opened() {
    store.look({ chosen: 0, hidden: [], beside: null, presets: { ...FIRST_PRESETS } });
    clock.seek(0);
  }
  const sceneText = () => `${JSON.stringify(store.document, null, 2)}\n`;
  const share = createShare({
    store,
    saveScene: () => download(`${fileName(store.read('title'))}.rimfall.json`, sceneText(), 'application/json'),
  });
  const scenes = createScenes({
    fetchExamples: client.examples,
    fetchExample: client.example,
    open,
    recent: () => autosave.recent(),
    recover: client.recover,
    status,
  });

  watchPointer();
  createTheme({ store });
  createBar({ store, scenes, share });
  createTitle({ store });
  createNotices({ store });
  createPlaces({
    store,
    clock,
    answers: {
      1: () => sizeAnswer(store),
      2: () => motionsWords(store.document.motions, store.fields.kinds),
      3: () => looksAnswer(store, clock),
      4: () => store.feel?.says.short ?? 'not asked yet',
    },
  });
  createHowBig({ store });
  createWhatMoves({ store });
  const glossary = createGlossary({ kinds: store.fields.kinds });
  const looks = createLooks({ store, clock, client, explain: glossary.show });
  const timeline = createTimeline({ store, clock });
  createDials({ store, solve: request => ask.solve(request) });
  const stages = createStages({ element: element('stages'), store, clock, tell: status.setDrawing });
  createTakeAway({ store, clock, exported: client.exported, studio: createStudio(stages), sceneText });
  createKeys({ store, clock, timeline, looks, stages, glossary });
  createPersistence({ store, autosave, open });
  createAskFeel({ store, feel: client.feel });
  whenOpened(store, 4, async () => {
    const { createFeel } = await import('./panels/feel/feel.js');
    await createFeel({ store, client, glossary });
  });
  return { open };
}

// what belongs to a place that few open at once is fetched with its first opening, once the server is there
function whenOpened(store, place, make) {
  const off = store.on('view', async () => {
    if (store.view.place !== place) return;
    off();
    const job = status.begin({ say: 'Fetching this place' });
    try {
      await client.health();
      await make();
    } catch {
      whenOpened(store, place, make);
      store.tell({ kind: 'failed', field: null, say: 'This place could not be fetched.', again: () => store.look({ place }) });
    }
    job.end();
  });
}

// ready once the first answer is drawn; the flat plates that stand in without WebGL draw at once and announce nothing
function sayReady() {
  const { body } = window.document,
    element = window.document.getElementById('stages');
  const ready = () => {
    body.dataset.ready = '1';
  };
  if (element.classList.contains('stages-flat')) requestAnimationFrame(ready);
  else element.addEventListener('rimfall:drawn', ready, { once: true });
}

// once at a quarter of the speed, then it rests; still for those who asked for less motion
function firstMinute(clock) {
  clock.setPace(FIRST_PACE);
  if (!matchMedia('(prefers-reduced-motion: reduce)').matches) clock.play();
}

function localStorageOrNone() {
  try {
    return window.localStorage;
  } catch {
    return { getItem: () => null, setItem: () => {} };
  }
}

function sayDead(problem) {
  const say = `${problem.message} Rimfall needs its server: start it again, then reload this page.`;
  window.document.getElementById('alert').textContent = say;
  const place = window.document.getElementById('notice');
  place.className = 'notice failed';
  place.textContent = say;
  throw problem;
}
