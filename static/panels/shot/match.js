// Could this path be? A drawn or filmed path against what any habitat could do: pictures that stay in this browser, or a table of places, marked, scaled
// and asked about; the verdict with its reasons over the picture.

import { tr, trLater } from '../../state/language.js';
import { hasPicture, rowOfFrame, wanting, withoutMark } from '../../state/match.js';
import { rowOfField } from '../../state/match_request.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { createMatchAnswer } from './match_answer.js';
import { createMatchGrid } from './match_grid.js';
import { createHand } from './match_hand.js';
import { createMatchOpen } from './match_open.js';
import { createPicture } from './match_picture.js';
import { createMatchPlot } from './match_plot.js';
import { createRows } from './match_rows.js';
import { createMatchSentence } from './match_sentence.js';
import { createSteps } from './match_steps.js';
import { createStrips } from './match_strips.js';

const ROOMY = '(min-width: 900px) and (min-height: 560px)'; // windows where a picture that is opened is laid large
const WANTED = {
  marks: trLater('Press on the thing in each frame. With three marks there is a first answer, with ten a good one.'),
  scale: trLater('Say how large things are: drag a line of known length over the picture, from its foot on the deck up.'),
  rows: trLater('Type or paste where it was: three rows or more, each with its time.'),
};

/** `element`: the section under its heading; update() is called while the place is open. `open(document)` opens another scene. */
export function createMatch({ element, store, client, heard, large, open, explain }) {
  const hand = createHand({ store, client, heard, changed: update }),
    { edit, choose, undo, step } = hand,
    units = () => store.view.units,
    get = () => hand.match;
  const opening = createMatchOpen({ element, store, client, heard, hand, begun });
  const grid = createMatchGrid({ store, client, get, changed: update });
  const picture = createPicture({ get: () => ({ ...hand, grid: grid.lines() }), edit, placed: hand.placed, choose, units });
  const plot = createMatchPlot({ get: () => hand, choose, units });
  const steps = createSteps({
    get: () => hand,
    step,
    toFrame: hand.toFrame,
    undo,
    turnTo: turn => hand.put({ turn }),
    remove: () => edit(withoutMark(get(), get().frame)),
    clear: () => edit({ ...get(), marks: [] }),
    goOnward: onward => hand.put({ onward }),
  });
  const strips = createStrips({
    get: () => ({ answer: wanting(get()) ? null : hand.answer, current: hasPicture(get()) ? rowOfFrame(get(), get().frame) : hand.row }),
    choose,
    units,
  });
  const drawn = h('div', { class: 'match-view', onkeydown }, picture.element, plot.element, grid.element, steps.element, strips.element);
  const enlarge = large.button({ place: 5, title: () => get().source?.name ?? get().rows?.name ?? tr('The path'), part: drawn });
  const sentence = createMatchSentence({ store, get, edit });
  const rows = createRows({
    get: () => ({ match: get(), refusal: refusal() }),
    edit,
    tell: say => store.tell({ kind: 'told', field: null, say }),
  });
  const verdict = createMatchAnswer({ store, get: () => ({ answer: hand.answer, says: instead(), busy: hand.busy }), choose, open, heard, explain });
  const link = (words, onclick) => h('button', { type: 'button', class: 'link', onclick }, words);
  const name = h('span', { class: 'small match-name' }),
    again = h('p', { class: 'links match-again' }, name, link(tr('Open others'), opening.choose), link(tr('Close'), close));
  const asked = h('div', { hidden: true }, again, opening.offers, drawn, h('p', { class: 'links' }, enlarge), verdict.element, rows.element, sentence.element);
  element.append(...opening.elements, asked);

  // whoever shows the pictures hears of others
  function begun(before) {
    const { source, rows: table } = get(),
      { camera } = store.shot;
    store.setShot(camera?.plate && camera.plate === before ? { camera: { ...camera, plate: source } } : {});
    update();
    if (source || table) intoView();
    if (source && matchMedia(ROOMY).matches && !drawn.closest('#large')) enlarge.click();
  }
  const intoView = () => element.parentElement.querySelector('#shot-match-title').scrollIntoView({ block: 'start' });

  function close() {
    if (drawn.closest('#large')) large.toggle(store.view.place);
    opening.close();
  }

  function refusal() {
    const [first] = hand.problem?.errors ?? [];
    return first ? { row: rowOfField(first.field), say: first.say } : null;
  }
  function instead() {
    const lack = wanting(get());
    if (lack) return tr(WANTED[lack]);
    if (hand.problem) return hand.problem.message;
    return hand.answer ? null : tr('Looking for the nearest free path…');
  }

  // not in fields; the keys of a picture go before those of the page
  function onkeydown(event) {
    if (event.target.closest('input:not([type=range])') || event.altKey) return;
    const meta = event.ctrlKey || event.metaKey;
    if (meta && event.key.toLowerCase() === 'z' && !event.shiftKey && hand.canUndo) undo();
    else if (meta || !hasPicture(get()) || !store.view.keys) return;
    else if (event.key === ',') step(-1);
    else if (event.key === '.') step(1);
    else if (event.key === 'Delete' || event.key === 'Backspace') edit(withoutMark(get(), get().frame));
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  function update() {
    const { match } = hand,
      isOpen = hasPicture(match) || match.rows !== null;
    opening.update();
    setAttribute(asked, 'hidden', !isOpen);
    if (!isOpen) return;
    hand.ask();
    setText(name, match.source?.name ?? match.rows.name);
    drawn.classList.toggle('busy', hand.busy);
    for (const part of [grid, picture, plot, steps, strips, verdict, sentence, rows]) part.update();
  }
  return {
    update,
    /** The pictures that are open, or null. */
    footage: () => get().source,
    /** The path is seen through these rows of a camera. */
    through(own_camera) {
      edit({ ...get(), by: 'camera', own_camera });
      intoView();
    },
  };
}
