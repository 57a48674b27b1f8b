// Could this path be? A drawn or filmed path against what any habitat could do: pictures that stay in this browser, or a table of places, marked, scaled
// and asked about; the verdict with its reasons over the picture.

import { footageOf, isFootage } from '../../files/footage.js';
import {
  COLUMNS,
  FIRST_MATCH,
  createPast,
  frameCount,
  hasPicture,
  inOrder,
  knownOfFile,
  noteOfTrack,
  matchRequest,
  pastedRows,
  rowOfField,
  rowOfFrame,
  rowsOfTrack,
  wanting,
  withoutMark,
} from '../../state/match.js';
import { createNewest } from '../../state/newest.js';
import { clamp } from '../../state/scale.js';
import { countWords } from '../../state/words.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { createMatchAnswer } from './match_answer.js';
import { createPicture } from './match_picture.js';
import { createMatchPlot } from './match_plot.js';
import { createRows } from './match_rows.js';
import { sampleOf } from './match_sample.js';
import { createMatchSentence } from './match_sentence.js';
import { createSteps } from './match_steps.js';
import { createStrips } from './match_strips.js';

const ROOMY = '(min-width: 900px) and (min-height: 560px)'; // windows where a picture that is opened is laid large
const EMPTY_ROWS = 5;
const WANTED = {
  marks: 'Press on the thing in each frame. With three marks there is a first answer, with ten a good one.',
  scale: 'Say how large things are: drag a line of known length over the picture, from its foot on the deck up.',
  rows: 'Type or paste where it was: three rows or more, each with its time.',
};

/** `element`: the section under its heading; update() is called while the place is open. `open(document)` opens another scene. */
export function createMatch({ element, store, client, heard, large, open }) {
  let match = FIRST_MATCH,
    source = null, // of the pictures
    turn = 'mark', // or 'scale': what a drag over the picture does
    onward = true, // to the next frame after each mark
    row = 0, // of a table, in hand
    dragging = false,
    answer = null,
    problem = null,
    busy = false,
    lastQuestion = null,
    offered = []; // tracks of a file with several
  const past = createPast();

  const { want, drop } = createNewest({
    request: question,
    ask: ({ body, units }, signal) => client.match(body, { units, signal }),
    answered(next, of) {
      settle(next, null, of);
      if (!busy) heard.say(next.says);
      update();
    },
    failed(why, of) {
      settle(null, why, of);
      toRefused(why);
      update();
    },
  });

  // busy still, where something newer than `of` waits for its answer
  function settle(next, why, of = null) {
    answer = next;
    problem = why;
    busy = of !== null && lastQuestion !== null && JSON.stringify(of) !== lastQuestion;
  }

  function question() {
    return { body: matchRequest(match, store.read), units: store.view.units };
  }

  function ask() {
    const next = question(),
      key = JSON.stringify(next);
    if (key === lastQuestion) return;
    lastQuestion = key;
    if (next.body) {
      busy = true;
      return want();
    }
    drop();
    settle(null, null);
  }

  function edit(next, live = false) {
    if (!dragging && next !== match) past.push(match);
    dragging = live;
    match = next;
    ask();
    update();
  }

  function undo() {
    if (!past.any) return;
    match = past.back(match);
    if (match.source !== source) match = { ...match, source };
    dragging = false;
    ask();
    update();
    heard.say('Undone.');
  }

  function toFrame(frame) {
    const count = frameCount(match);
    match = { ...match, frame: clamp(Math.round(frame), 0, Math.max(0, count - 1)) };
    update();
  }
  const step = by => toFrame(match.frame + by);
  const placed = () => onward && step(1);

  function choose(at) {
    if (hasPicture(match)) toFrame(match.marks[at]?.frame ?? 0);
    else {
      row = at;
      update();
    }
  }

  // the frame of the row that a refusal names
  function toRefused(why) {
    const at = rowOfField(why.errors?.[0]?.field);
    if (at !== null && hasPicture(match) && match.marks[at]) toFrame(match.marks[at].frame);
  }

  // --- what it is of ---

  const chooser = h('input', {
    type: 'file',
    multiple: true,
    accept: 'image/*,video/*,.csv,.txt,.usda,.usdc,.usdz,.glb',
    class: 'unseen',
    tabindex: -1,
    'aria-hidden': true,
    onchange: () => take([...chooser.files]),
  });
  const button = (words, onclick, kind = 'btn') => h('button', { type: 'button', class: kind, onclick }, words);
  const openFiles = () => {
    chooser.value = '';
    chooser.click();
  };
  const offers = h('p', { class: 'links match-offers', hidden: true });
  const trouble = h('p', { class: 'refusal', role: 'alert', hidden: true });
  const beginning = h(
    'div',
    { class: 'empty match-begin' },
    h('p', { class: 'lead' }, 'Drop stills, a clip or a table of places here: could anything fly like that in a turning habitat?'),
    h(
      'p',
      { class: 'links' },
      button('Open files', openFiles),
      button('Type rows', () => beginRows()),
    ),
    h(
      'p',
      { class: 'links' },
      button('Try the sample', () => trySample(true)),
      button('Try one that cannot be', () => trySample(false)),
    ),
    h('p', { class: 'small' }, 'Pictures stay in this browser: only the marks are sent.'),
  );
  const again = h(
    'p',
    { class: 'links match-again' },
    h('span', { class: 'small match-name' }),
    button('Open others', openFiles, 'link'),
    button('Close', close, 'link'),
  );

  function complain(say) {
    setText(trouble, say);
    trouble.hidden = false;
  }

  function beginWith(next, patch = {}) {
    const before = source;
    before?.close();
    source = next;
    past.clear();
    offered = [];
    trouble.hidden = true;
    const { known, given } = match; // what is known of the habitat is known of the next take too
    match = { ...FIRST_MATCH, known, given, ...patch, source: next };
    turn = next && !patch.plane ? 'scale' : 'mark';
    row = 0;
    dragging = false;
    answer = null;
    ask();
    const { camera } = store.shot; // whoever shows the pictures hears of it
    store.setShot(camera?.plate && camera.plate === before ? { camera: { ...camera, plate: next } } : {});
    update();
    if (next || match.rows) element.parentElement.querySelector('#shot-match-title').scrollIntoView({ block: 'start' });
    if (next && matchMedia(ROOMY).matches && !drawn.closest('#large')) enlarge.click();
  }

  async function take(files) {
    if (!files.length) return;
    try {
      const footage = inOrder(files.filter(isFootage));
      if (footage.length) {
        const next = await footageOf(footage);
        beginWith(next, next.rate ? { frame_rate: clamp(next.rate, 1, 240) } : {});
        heard.say(`${next.name}, ${next.count ? countWords(next.count, 'frame') : 'one picture'}.`);
      } else await takeTracks(files[0]);
    } catch (why) {
      complain(`${why.message} Nothing was changed.`);
    }
  }

  async function takeTracks(file) {
    try {
      beginTracks(file.name, await client.tracks(file));
    } catch (why) {
      throw new Error(`${file.name}: ${why.message}`);
    }
  }

  async function trySample(possible) {
    try {
      const sample = await sampleOf({ trace: document => client.trace(document), possible });
      beginWith(sample.source, sample.match);
    } catch (why) {
      complain(`The sample could not be made: ${why.message}`);
    }
  }

  function beginRows(rows = { name: 'Typed rows', columns: COLUMNS.track, items: emptyRows() }, patch = {}) {
    beginWith(null, { rows, ...patch });
  }
  const emptyRows = () => Array.from({ length: EMPTY_ROWS }, () => Object.fromEntries(COLUMNS.track.map(name => [name, null])));

  // a file's tracks: the first is taken, the others are offered
  function beginTracks(name, { tracks, known }) {
    if (tracks[0].points) return takePoints(tracks[0].points);
    beginTrack(tracks[0], name, known);
    offered = tracks.length > 1 ? tracks : [];
    offers.replaceChildren(...offered.map(track => button(track.name, () => (beginTrack(track, name, known), update()), 'link')));
    update();
  }
  function beginTrack(track, name, known) {
    const kept = offered;
    beginRows({ name: track.name ?? name, ...rowsOfTrack(track) }, { note: noteOfTrack(track), ...knownOfFile(match, known) });
    offered = kept;
  }
  // pixels are of a picture
  function takePoints(points) {
    if (!source) throw new Error('It holds pixels: open the pictures that they are of first, then this table.');
    const marks = points.map(({ frame, time_s, x_px, y_px }) => ({ frame: frame ?? Math.round(time_s * match.frame_rate), x_px, y_px }));
    edit({ ...match, marks: marks.toSorted((a, b) => a.frame - b.frame) });
  }

  function close() {
    if (drawn.closest('#large')) large.toggle(store.view.place);
    beginWith(null);
    beginning.querySelector('button').focus({ preventScroll: true });
  }

  // --- the parts ---

  const picture = createPicture({ get: () => ({ match, answer, source, turn }), edit, placed, choose });
  const plot = createMatchPlot({ get: () => ({ match, answer, row }), choose, units: () => store.view.units });
  const steps = createSteps({
    get: () => ({ match, turn, onward, canUndo: past.any }),
    step,
    toFrame,
    undo,
    turnTo: next => {
      turn = next;
      update();
    },
    remove: () => edit(withoutMark(match, match.frame)),
    clear: () => edit({ ...match, marks: [] }),
    goOnward: next => {
      onward = next;
      update();
    },
  });
  const strips = createStrips({
    get: () => ({ answer: wanting(match) ? null : answer, current: hasPicture(match) ? rowOfFrame(match, match.frame) : row }),
    choose,
    units: () => store.view.units,
  });
  const drawn = h('div', { class: 'match-view', onkeydown }, picture.element, plot.element, steps.element, strips.element);
  const enlarge = large.button({ place: 5, title: () => match.source?.name ?? match.rows?.name ?? 'The path', part: drawn });
  const sentence = createMatchSentence({ store, get: () => match, edit });
  const rows = createRows({ get: () => ({ match, refusal: refusal() }), edit, tell: say => store.tell({ kind: 'told', field: null, say }) });
  const verdict = createMatchAnswer({ store, get: () => ({ answer, says: instead(), busy }), choose, open, heard });
  const asked = h('div', { hidden: true }, again, offers, drawn, h('p', { class: 'links' }, enlarge), verdict.element, rows.element, sentence.element);
  element.append(chooser, beginning, trouble, asked);

  function refusal() {
    const [first] = problem?.errors ?? [];
    return first ? { row: rowOfField(first.field), say: first.say } : null;
  }
  function instead() {
    const lack = wanting(match);
    if (lack) return WANTED[lack];
    if (problem) return problem.message;
    return answer ? null : 'Looking for the nearest free path…';
  }

  // not in fields; the keys of a picture go before those of the page
  function onkeydown(event) {
    if (event.target.closest('input:not([type=range])') || event.altKey) return;
    const meta = event.ctrlKey || event.metaKey;
    if (meta && event.key.toLowerCase() === 'z' && !event.shiftKey && past.any) undo();
    else if (meta || !hasPicture(match) || !store.view.keys) return;
    else if (event.key === ',') step(-1);
    else if (event.key === '.') step(1);
    else if (event.key === 'Delete' || event.key === 'Backspace') edit(withoutMark(match, match.frame));
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  element.addEventListener('dragover', event => {
    event.preventDefault();
    beginning.classList.add('over');
  });
  element.addEventListener('dragleave', () => beginning.classList.remove('over'));
  element.addEventListener('drop', event => {
    beginning.classList.remove('over');
    if (!event.dataTransfer?.files.length) return;
    event.preventDefault();
    event.stopPropagation();
    take([...event.dataTransfer.files]);
  });
  // pictures dropped anywhere while the place is open are no scene
  document.addEventListener(
    'drop',
    event => {
      const files = [...(event.dataTransfer?.files ?? [])];
      if (store.view.place !== 5 || element.contains(event.target) || !files.some(isFootage)) return;
      event.preventDefault();
      event.stopPropagation();
      take(files);
    },
    true,
  );
  element.addEventListener('paste', event => {
    const text = event.clipboardData?.getData('text') ?? '';
    if (match.rows || hasPicture(match) || event.target.closest('input')) return;
    const items = pastedRows(text, COLUMNS.track);
    if (items) beginRows({ name: 'Pasted rows', columns: COLUMNS.track, items });
  });

  function update() {
    const begun = hasPicture(match) || match.rows !== null;
    setAttribute(beginning, 'hidden', begun);
    setAttribute(asked, 'hidden', !begun);
    if (!begun) return;
    ask();
    setText(again.querySelector('.match-name'), match.source?.name ?? match.rows.name);
    setAttribute(offers, 'hidden', !offered.length);
    drawn.classList.toggle('busy', busy);
    picture.update();
    plot.update();
    steps.update();
    strips.update();
    verdict.update();
    sentence.update();
    rows.update();
  }
  return {
    update,
    /** The pictures that are open, or null. */
    footage: () => source,
    /** The path is seen through these rows of a camera. */
    through(rows) {
      edit({ ...match, by: 'camera', own_camera: rows });
      element.parentElement.querySelector('#shot-match-title').scrollIntoView({ block: 'start' });
    },
  };
}
