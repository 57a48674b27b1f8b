// The page to follow by: what the presenter's page tells, step by step, on the stages of a phone; and a mark where something may land.

import { tr, trLater } from './state/language.js';
import { createFollowClient } from './api/follow.js';
import { createConnection } from './state/connection.js';
import { createMark } from './follow/mark.js';
import { createShown } from './follow/stages.js';
import { nameOfPhone } from './follow/phone.js';
import { setAttribute, setText } from './panels/shared/dom.js';
import { filling, verdictOf } from './state/now.js';
import { createServerClock } from './state/server_clock.js';
import { createClock } from './time/clock.js';

const LOOKS = 5, // at the server's clock, when it begins
  LOOK_AGAIN_MS = 60_000;
const SAID = {
  following: trLater('following'),
  connected: trLater('connected'),
  lost: trLater('Connection lost, trying again…'),
  refused: trLater('not following'),
  '': trLater('no key'),
};
const NAMES = { aboard: trLater('See it from aboard'), outside: trLater('See it from outside') };
const element = id => document.getElementById(id);
const key = location.hash.slice(1);
const server = createServerClock({ now: Date.now });
const clock = createClock({ now: () => performance.now() });
const connection = createConnection({ probe: () => client.clock(Date.now).then(() => true) });
const client = createFollowClient({ key, connection });
const mark = createMark({
  element: element('guess'),
  place: (ask, along_m) => client.guess({ ask, who: nameOfPhone(), along_m }),
  moved: along_m => shown?.ask(now.ask, along_m),
});
const fields = key ? client.fields() : null;
fields?.catch(() => {}); // the stream tells why
let shown = null,
  now = null, // the newest
  room = { followers: 0, ask: null, count: 0 },
  last = { line: '', ask: '' }; // what was read out

if (key) follow();
else say('', tr('Scan the code on the presenter’s screen: its address has the key to follow by.'));

function follow() {
  const stream = client.listen({ heard, changed });
  for (const event of ['online', 'pageshow', 'visibilitychange']) addEventListener(event, () => document.visibilityState === 'visible' && stream.again());
  addEventListener('offline', stream.lost); // a connection that is cut is silent for long
  document.addEventListener('visibilitychange', () => shown?.keepTime());
  element('own').addEventListener('click', () => {
    shown.own = !shown.own;
    refresh();
  });
  element('other').addEventListener('click', () => {
    shown.only = otherStage();
    refresh();
  });
  addEventListener('resize', refresh);
}

function changed(state) {
  if (state === 'on') {
    say(now ? 'following' : 'connected', now ? null : tr('Waiting for the presenter…'));
    lookAtTheClock();
  } else if (state === 'lost') say('lost', now ? null : tr('The connection is lost; trying again…'));
  else {
    now = null;
    say('refused', state.refused);
  }
}

function say(state, waiting) {
  setText(element('state'), tr(SAID[state]));
  element('state').classList.toggle('on', state === 'following');
  document.body.dataset.follows = state;
  if (waiting === null) return;
  setText(element('waiting'), waiting);
  element('waiting').hidden = waiting === '';
}

async function lookAtTheClock() {
  clearTimeout(lookAtTheClock.timer);
  lookAtTheClock.timer = setTimeout(lookAtTheClock, LOOK_AGAIN_MS);
  try {
    for (let k = 0; k < LOOKS; k += 1) server.answered(await client.clock(Date.now));
  } catch {
    return; // the stream tells that it is lost
  }
  shown?.keepTime();
}

function heard(name, data) {
  if (name === 'clock') server.heard(data.at_ms);
  if (name === 'room') room = data;
  if (name === 'now') take(data);
  else refresh();
}

// The newest is shown once its scene is there; what comes meanwhile takes its place.
async function take(told) {
  now = told;
  say('following', shown ? '' : tr('Loading the scene…'));
  refresh();
  if (!told.scene) return;
  try {
    if (shown?.digest !== told.scene) {
      const [known, scene] = await Promise.all([fields, client.scene(told.scene)]);
      if (now.scene !== told.scene) return;
      shown ??= createShown({ element: element('stages'), fields: known, clock, server, marked: mark.put });
      if (shown.digest !== told.scene) shown.open(told.scene, scene);
    }
    say('following', '');
    shown.follow(now);
    refresh();
    if (now.next) client.scene(now.next).catch(() => {});
  } catch {
    if (now === told) say('following', shown ? '' : tr('The scene could not be loaded; it is asked for again with the next step.'));
  }
}

const otherStage = () => ((shown.only ?? filling(now.view)) === 'aboard' ? 'outside' : 'aboard');

function refresh() {
  if (!now) return;
  const { ask } = now,
    off = ask?.down && ask.landing_m !== null && mark.placed_m !== null ? verdictOf(mark.placed_m, ask, shown?.round_m) : null;
  setText(element('title'), now.title || 'Rimfall');
  setText(element('line'), now.line);
  setText(element('step'), now.of ? tr('step {step} of {of}', { step: now.step, of: now.of }) : '');
  mark.update(ask, { units: now.view.units ?? 'si', off, round_m: shown?.round_m ?? null });
  const counts = ask && room.ask === ask.id && room.count > 0;
  setText(
    element('holds'),
    counts
      ? tr('{count} of {all} marks placed', { count: room.count, all: Math.max(room.followers, room.count) })
      : now.over
        ? tr('The presenter has left the talk.')
        : tr('The presenter holds the clock.'),
  );
  if (shown) {
    if (shown.digest === now.scene) shown.ask(ask, ask && mark.along_m !== null ? mark.along_m : null);
    tools();
  }
  document.title = now.line ? `${now.line} · Rimfall` : tr('Following · Rimfall');
  readOut(ask);
}

function tools() {
  shown.look();
  element('other').hidden = !shown.mayChoose;
  setText(element('other'), tr(NAMES[otherStage()]));
  element('own').hidden = false;
  setAttribute(element('own'), 'aria-pressed', shown.own);
  setText(element('own'), shown.own ? tr('Back to the presenter’s view') : tr('Look around on my own'));
  for (const view of document.querySelectorAll('.stage-view')) view.tabIndex = shown.own ? 0 : -1;
  element('waiting').hidden = !now.dark;
  if (now.dark) setText(element('waiting'), tr('The screen is dark: look up.'));
}

// each once: the line, what is asked, and how it came out
function readOut(ask) {
  const asked = ask ? `${ask.id} ${ask.revealed} ${ask.down}` : '';
  if (now.line !== last.line) setText(element('heard'), now.line);
  else if (asked !== last.ask && ask)
    setText(
      element('heard'),
      ask.down
        ? '' // the mark's own words say where
        : ask.revealed
          ? tr('No more marks are taken.')
          : tr('Where will “{motion}” land? You can place a mark.', { motion: ask.motion }),
    );
  last = { line: now.line, ask: asked };
}
