// The page to print: the scene of the link, or the one at hand, in words, line plates, plots and figures.

import { tr, trLater, trParts } from './state/language.js';
import { createClient, isThere } from './api/client.js';
import { askCraft, craftOf } from './brief/craft.js';
import { linkOf, sourcesOf, movesOf } from './brief/scene_words.js';
import { feltOf, whyOf } from './brief/felt.js';
import { figuresOf, tableOf } from './brief/tables.js';
import { platesOf, plotsOf } from './brief/drawings.js';
import { $, $$, h } from './panels/shared/dom.js';
import { stageDirection } from './state/habitat_words.js';
import { NO_STORAGE, createKept, lent } from './kept/kept.js';
import { createConnection } from './state/connection.js';
import { createViewStorage, fromHash } from './state/persistence.js';
import { hiddenNames, shownIn } from './state/shown.js';
import { createStatus } from './state/status.js';
import { createStore, feltPart } from './state/store.js';

const UNTITLED = trLater('Untitled scene');
const status = createStatus();
const connection = createConnection({ probe: isThere, changed: state => status.setServer(state, connection.retry) });
const client = createClient({ connection });
const views = createViewStorage(lent('localStorage', NO_STORAGE));

// browsers that draw the foot of every page by the style sheet know these rules as objects too
if ('CSSMarginRule' in window) setFeet();

status.on(showWaiting);
waitedFor(start);
addEventListener('hashchange', () => location.reload());

function setFeet() {
  const { document } = window;
  const margins = [...document.styleSheets].flatMap(sheet => [...sheet.cssRules]).flatMap(rule => (rule instanceof CSSPageRule ? [...rule.cssRules] : []));
  const pages = trParts('page {page} of {pages}', { page: { counter: 'page' }, pages: { counter: 'pages' } });
  const says = {
    'bottom-left': JSON.stringify($('.caution').textContent),
    'bottom-right': pages.map(part => (typeof part === 'string' ? JSON.stringify(part) : `counter(${part.counter})`)).join(' '),
  };
  for (const { name, style } of margins) if (says[name]) style.content = says[name];
  document.documentElement.dataset.feet = '';
}

async function start() {
  const fields = await client.fields();
  const scene = await sceneAtHand();
  if (!scene) return tell(new Error(tr('There is no scene to print: none in the address, and none kept in this browser.')));
  const store = createStore({ document: scene, fields });
  const { hidden } = shownIn(location.hash, []);
  store.look({ units: views.view(store.view).units ?? 'si', hidden: hiddenNames(store, hidden) });
  const [plots, link] = await Promise.all([plotsOf(client, store), linkOf(store)]);
  setTools(store, link, () => fill(store, plots, link));
  await fill(store, plots, link);
}

async function sceneAtHand() {
  try {
    return (await fromHash(location.hash)) ?? (await keptScene());
  } catch {
    throw new Error(tr('The link could not be opened: it holds no whole scene.'));
  }
}

// what the workbench's tab has open, or the scene kept last
async function keptScene() {
  const { records, tab, prepare } = createKept({
    local: lent('localStorage', NO_STORAGE),
    session: lent('sessionStorage', NO_STORAGE),
    indexedDB: lent('indexedDB'),
    fromHash,
  });
  await prepare();
  const { id, opened } = tab.read();
  const list = await records.list().catch(() => []);
  return opened ?? (list.find(record => record.id === id) ?? list[0])?.document ?? null;
}

// asked anew in the units shown: the server's sentences have them too
async function fill(store, plots, link) {
  const { units } = store.view;
  const [answer, feel, craft] = await Promise.all([
    client.trace(store.document, { units }),
    client.feel(feltPart(store.document), { units }),
    askCraft(client, store.document, units),
  ]);
  store.setAnswer(answer, store.document);
  $('#title').textContent = store.read('title') || tr(UNTITLED);
  window.document.title = `${store.read('title') || tr(UNTITLED)} · ${tr('Brief')} · Rimfall`;
  $('#direction').textContent = stageDirection(store);
  const rows = {
    instants: platesOf(store),
    moves: movesOf(store),
    habitat: figuresOf(store),
    events: tableOf(store),
    felt: feltOf(feel, units),
    why: whyOf(feel),
    craft: craftOf(craft),
    plots,
    sources: sourcesOf(store),
    link: link.rows,
  };
  for (const [id, parts] of Object.entries(rows)) show($(`#${id}`), parts);
  $('#sheet').hidden = false;
  await window.document.fonts.ready;
  $('#print').disabled = false;
  window.document.body.dataset.ready = units;
}

// a section with nothing to say is not there
function show(section, rows) {
  section.hidden = !rows.length;
  $('.rows', section).replaceChildren(...rows);
}

function setTools(store, link, again) {
  for (const id of ['back', 'open']) $(`#${id}`).href = link.url;
  $('#print').addEventListener('click', () => print());
  for (const input of $$('input[name=paper]')) {
    input.addEventListener('change', () => {
      window.document.body.dataset.paper = input.value;
    });
  }
  for (const input of $$('input[name=units]')) {
    input.checked = input.value === store.view.units;
    input.addEventListener('change', () => {
      store.look({ units: input.value });
      waitedFor(again);
    });
  }
}

// what takes longer than a second says so
async function waitedFor(work) {
  const job = status.begin({ say: tr('Preparing the brief') });
  try {
    await work();
  } catch (problem) {
    tell(problem);
  }
  job.end();
}

function showWaiting() {
  const { line } = status;
  $('#waiting').hidden = !line;
  $('#waiting').replaceChildren(line?.say ?? '', ...(line?.buttons ?? []).flatMap(({ say, run }) => [' ', h('button', { type: 'button', onclick: run }, say)]));
}

function tell(problem) {
  const place = $('#told');
  const say = `${problem.message} ${tr('Go back to the workbench, open a scene there, and ask for its brief again.')}`;
  place.replaceChildren(h('h1', {}, tr('Nothing to print')), h('p', {}, say));
  place.hidden = false;
}
