// Where must it be aimed? A throw, a catcher, and every way that arrives.

import { tr } from '../../state/language.js';
import { heldAim } from '../../state/shot.js';
import { setWorded } from '../shared/worded.js';
import { areStagesFlat, h, setAttribute, setText } from '../shared/dom.js';
import { createByFlight } from './by_flight.js';
import { createAimPlan } from './plan.js';
import { createAimSentence } from './sentence.js';
import { createWays } from './ways.js';

const ASIDE_M = 0.05; // along the axis, that a plan must own up to

/** Each has update(), called while the place is open. */
export function createAim({ element, store, clock, heard, large, explain }) {
  const put = (to, live) => store.setShot({ aim: { ...store.shot.aim, to } }, { live });
  const sentence = createAimSentence({ store }),
    plan = createAimPlan({ store, put }),
    ways = createWays({ store, clock, heard }),
    byFlight = createByFlight({ store });
  const words = h('p', { class: 'lead aim-words', 'data-behind': tr('Looking for every throw that arrives…') });
  const caption = h('p', { class: 'small aim-caption' });
  const drawn = h('div', {}, plan.element, caption);
  const asked = h(
    'div',
    {},
    sentence.element,
    h('div', { class: 'aim-answer' }, words, ways.element),
    drawn,
    h('p', { class: 'links' }, large.button({ place: 5, title: aimTitle, part: drawn })),
    byFlight.element,
  );
  const nothing = h(
    'div',
    { class: 'empty', hidden: true },
    h('p', { class: 'lead' }, tr('There is no throw to aim yet.')),
    h('button', { type: 'button', class: 'btn', onclick: addThrow }, tr('Add a throw')),
  );
  element.append(nothing, asked);
  let told = null;

  function aimTitle() {
    const motion = store.shot.aim?.motion;
    return motion ? tr('Aim of {motion}', { motion }) : tr('Aim of a throw');
  }

  function addThrow() {
    const { new: fresh, title } = store.fields.kinds.throw;
    store.edit(draft => {
      draft.motions.push({ ...structuredClone(fresh), name: title });
    });
    store.look({ chosen: store.document.motions.length - 1 });
  }

  function update() {
    const aim = heldAim(store);
    if (aim !== store.shot.aim) return store.setShot({ aim, chosen: 0, ...(aim ? {} : { answer: null }) }, { step: false });
    setAttribute(nothing, 'hidden', aim !== null);
    setAttribute(asked, 'hidden', aim === null);
    if (!aim) return;
    sentence.update();
    setWorded(words, wordsOf(store.shot), explain);
    ways.update();
    plan.update();
    setText(caption, captionOf(areStagesFlat(), aim, store.shot.answer));
    byFlight.update();
    tell();
  }

  // those who do not see it hear what came of it
  function tell() {
    const { answer } = store.shot;
    if (!answer || answer === told || store.shotBehind) return;
    told = answer;
    heard.say(answer.words[0]);
  }
  return { update };
}

// What the plan shows; without 3D it alone shows the ways, and nothing shows what goes along the axis.
function captionOf(flat, { to }, answer) {
  const said = [tr('The deck seen along the axis.')];
  if (!to.motion) said.push(flat ? tr('Drag the catcher round, here.') : tr('Drag the catcher round, here or on a stage.'));
  if (flat) said.push(hiddenWords(answer));
  return said.join(' ');
}
function hiddenWords(answer) {
  const aside = [...(answer?.ways ?? []), ...[answer?.nearest].filter(Boolean)].some(({ path }) => isAside(path));
  return aside
    ? tr('Without 3D drawing the ways, the catcher and what is in the way are shown on this plan alone; how far they go along the axis only the words say.')
    : tr('Without 3D drawing the ways, the catcher and what is in the way are shown on this plan alone.');
}
const isAside = ({ axial_m }) => axial_m.some(at => Math.abs(at - axial_m[0]) > ASIDE_M);

function wordsOf({ answer, problem }) {
  if (problem) return problem.message;
  if (!answer) return tr('Looking for every throw that arrives…');
  return answer.ways.length ? answer.words[0] : answer.words.join(' '); // the rest of it is told with each way
}
