// A scene or a talk in a file of its own that plays by itself: what the server's page would have asked for stands in the file, and nothing is
// fetched. Bundled as one classic script (vendor_build.py); the server puts it into the file (exports/one_file).

import { tr } from './state/language.js';
import { createAnswers } from './api/held_answers.js';
import { createStatusLine } from './panels/status_line.js';
import { createTypeSize } from './panels/looks/theme.js';
import { createPresent } from './panels/present/present.js';
import { showSpeaker } from './panels/present/speaker.js';
import { createAbout } from './panels/player/about.js';
import { createChannel, isSpeaker, openSpeaker } from './panels/player/between_windows.js';
import { createMotions } from './panels/player/motions.js';
import { createPlayerKeys } from './panels/player/keys.js';
import { createPresentButton, createSteps } from './panels/player/steps.js';
import { watchPointer } from './panels/shared/dom.js';
import { createTimeline } from './panels/timeline/timeline.js';
import { createConductor } from './state/conductor.js';
import { createStatus } from './state/status.js';
import { createStore } from './state/store.js';
import { createTalk } from './state/talk.js';
import { createClock } from './time/clock.js';
import { createStages } from './views/stage.js';

const element = id => document.getElementById(id);

if (isSpeaker()) speak();
else play();

// the speaker's window is the same file in another dress
function speak() {
  document.title = tr('Speaker · {title}', { title: document.title });
  document.body.replaceChildren(element('speaker-page').content);
  for (const style of document.querySelectorAll('style[data-of]')) style.media = style.dataset.of === 'speaker' ? 'all' : 'not all';
  showSpeaker({ channel: createChannel(window.opener) });
  document.body.dataset.ready = '1';
}

async function play() {
  const notes = JSON.parse(element('rimfall-notes').textContent),
    held = await createAnswers(element('rimfall-shown').textContent);
  const first = notes.talk ? notes.talk.steps[0].scene : notes.scene;
  const store = createStore({ document: first, fields: held.fields });
  const clock = createClock({ now: () => performance.now() });
  const status = createStatus();
  store.look({ fixed: true, hidden: held.hidden });
  watchPointer();
  createStatusLine({ status, home: element('stages') });
  createTypeSize({ store });
  const timeline = createTimeline({ store, clock });
  const stages = createStages({ element: element('stages'), store, clock, tell: status.setDrawing });
  const talk = notes.talk ? givenTalk({ notes, held, store, clock, stages }) : null;
  const present = createPresent({ store, clock, talk, element: element('frame'), notes: openSpeaker, Channel: createSpeakerChannel, left });
  // what is held back is held back again
  function left() {
    talk?.go(talk.at);
    button.element.focus();
  }
  const button = createPresentButton({ present });
  const motions = talk ? null : createMotions({ store, line: element('line') }); // what a talk shows is its steps'
  const about = createAbout({ notes, words: held.words(0) });
  element('tools').append(...[motions?.element, button.element, about.button].filter(Boolean));
  createPlayerKeys({ store, clock, timeline, stages, about, motions, present, talk });
  if (talk) {
    createSteps({ talk, home: element('head'), line: element('line') });
    present.enter(talk);
  } else store.setAnswer(held.answer(0), notes.scene);
  document.body.dataset.ready = '1';
}

// as `new` has it of a BroadcastChannel, whose name a window needs not
function createSpeakerChannel() {
  return createChannel();
}

// The talk on its conductor, which moves the dials where the file has answers on the way.
function givenTalk({ notes, held, store, clock, stages }) {
  const steps = held.steps(notes.talk.steps);
  const talk = createTalk({ ...notes.talk, steps });
  const conductor = createConductor({
    talk,
    store,
    clock,
    answerOf: async step => held.answerOf(step),
    live: (from, to) => held.isOnTheWay(from, to),
    calm: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
    look: move => stages.depart(move),
  });
  store.on('document', ({ live }) => {
    const answer = live && held.onTheWay(store.document);
    if (answer) store.setAnswer(answer, store.document);
  });
  conductor.on('shown', () => {
    const felt = held.feltOf(conductor.shown);
    if (felt) store.setFeel(felt);
  });
  conductor.begin();
  return talk;
}
