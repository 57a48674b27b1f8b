// A scene in a file of its own that plays by itself: what the server's page would have asked for stands in the file, and nothing is fetched.
// Bundled as one classic script (vendor_build.py); the server puts it into the file (exports/one_file).

import { decodeAnswer } from './api/client.js';
import { createStatusLine } from './panels/status_line.js';
import { createTypeSize } from './panels/looks/theme.js';
import { createAbout } from './panels/player/about.js';
import { createMotions } from './panels/player/motions.js';
import { createPlayerKeys } from './panels/player/keys.js';
import { watchPointer } from './panels/shared/dom.js';
import { createTimeline } from './panels/timeline/timeline.js';
import { createStatus } from './state/status.js';
import { createStore } from './state/store.js';
import { createClock } from './time/clock.js';
import { createStages } from './views/stage.js';

const element = id => document.getElementById(id);
const held = id => JSON.parse(element(id).textContent);

play();

function play() {
  const notes = held('rimfall-notes'),
    shown = held('rimfall-shown'),
    answerOf = readAnswers(shown);
  const store = createStore({ document: notes.scene, fields: shown.fields });
  const clock = createClock({ now: () => performance.now() });
  const status = createStatus();
  store.look({ fixed: true, hidden: shown.hidden });
  watchPointer();
  createStatusLine({ status, home: element('stages') });
  createTypeSize({ store });
  const timeline = createTimeline({ store, clock });
  const stages = createStages({ element: element('stages'), store, clock, tell: status.setDrawing });
  const motions = createMotions({ store, line: element('line') });
  const about = createAbout({ notes, words: shown.answers[0].words });
  element('tools').append(motions.element, about.button);
  createPlayerKeys({ store, clock, timeline, stages, about, motions });
  store.setAnswer(answerOf(0), notes.scene);
  document.body.dataset.ready = '1';
}

// the answers that stand in the file, each read when it is first shown
function readAnswers({ answers, meshes }) {
  const read = [];
  return index => {
    const { trace, mesh, words } = answers[index];
    read[index] ??= { ...decodeAnswer(told(trace, words)), drawn: meshes[mesh].habitats, craft: meshes[mesh].craft ?? null };
    return read[index];
  };
}

function told(trace, words) {
  return { ...trace, motions: trace.motions.map((motion, i) => ({ ...motion, in_short: words[i].short })) };
}
