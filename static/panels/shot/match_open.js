// What a path is taken from: stills or a clip, a table or an animated object's file, rows that are typed, or one of the samples. Opened, dropped or
// pasted.

import { tr } from '../../state/language.js';
import { footageOf, isFootage } from '../../files/footage.js';
import { FIRST_MATCH, hasPicture, inOrder } from '../../state/match.js';
import { knownOfFile } from '../../state/match_request.js';
import { COLUMNS, noteOfTrack, pastedRows, rowsOfTrack } from '../../state/match_rows.js';
import { clamp } from '../../state/scale.js';
import { countWords } from '../../state/words.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { sampleOf } from './match_sample.js';

const EMPTY_ROWS = 5;
const ACCEPTED = 'image/*,video/*,.csv,.txt,.usda,.usdc,.usdz,.glb';

/** `begun(before)`: another path is in `hand`, whose pictures take the place of those before. */
export function createMatchOpen({ element, store, client, heard, hand, begun }) {
  let offered = []; // tracks of a file with several
  const chooser = h('input', {
    type: 'file',
    multiple: true,
    accept: ACCEPTED,
    class: 'unseen',
    tabindex: -1,
    'aria-hidden': true,
    onchange: () => take([...chooser.files]),
  });
  const button = (words, onclick, kind = 'btn') => h('button', { type: 'button', class: kind, onclick }, words);
  function choose() {
    chooser.value = '';
    chooser.click();
  }
  const offers = h('p', { class: 'links match-offers', hidden: true }),
    trouble = h('p', { class: 'refusal', role: 'alert', hidden: true });
  const beginning = h(
    'div',
    { class: 'empty match-begin' },
    h('p', { class: 'lead' }, tr('Drop stills, a clip or a table of places here: could anything fly like that in a turning habitat?')),
    h(
      'p',
      { class: 'links' },
      button(tr('Open files'), choose),
      button(tr('Type rows'), () => beginRows()),
    ),
    h(
      'p',
      { class: 'links' },
      button(tr('Try the sample'), () => trySample(true)),
      button(tr('Try one that cannot be'), () => trySample(false)),
    ),
    h('p', { class: 'small' }, tr('Pictures stay in this browser: only the marks are sent.')),
  );

  function complain(say) {
    setText(trouble, say);
    trouble.hidden = false;
  }

  // what is known of the habitat is known of the next take too
  function beginWith(source, patch = {}) {
    const before = hand.match.source,
      { known, given } = hand.match;
    before?.close();
    offered = [];
    trouble.hidden = true;
    hand.begin({ ...FIRST_MATCH, known, given, ...patch, source }, source && !patch.plane ? 'scale' : 'mark');
    begun(before);
  }

  async function take(files) {
    if (!files.length) return;
    try {
      const footage = inOrder(files.filter(isFootage));
      if (!footage.length) return await takeTracks(files[0]);
      const source = await footageOf(footage);
      beginWith(source, source.rate ? { frame_rate: clamp(source.rate, 1, 240) } : {});
      heard.say(`${source.name}, ${source.count ? countWords(source.count, 'frame') : tr('one picture')}.`);
    } catch (why) {
      complain(tr('{why} Nothing was changed.', { why: why.message }));
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
      complain(tr('The sample could not be made: {why}', { why: why.message }));
    }
  }

  function beginRows(rows = { name: tr('Typed rows'), columns: COLUMNS.track, items: emptyRows() }, patch = {}) {
    beginWith(null, { rows, ...patch });
  }

  // a file's tracks: the first is taken, the others are offered
  function beginTracks(name, { tracks, known }) {
    if (tracks[0].points) return takePoints(tracks[0].points);
    const begin = track => {
      beginRows({ name: track.name ?? name, ...rowsOfTrack(track) }, { note: noteOfTrack(track), ...knownOfFile(hand.match, known) });
      offered = tracks.length > 1 ? tracks : [];
      update();
    };
    begin(tracks[0]);
    offers.replaceChildren(...offered.map(track => button(track.name, () => begin(track), 'link')));
  }
  // pixels are of a picture
  function takePoints(points) {
    const { match } = hand;
    if (!match.source) throw new Error(tr('It holds pixels: open the pictures that they are of first, then this table.'));
    const marks = points.map(({ frame, time_s, x_px, y_px }) => ({ frame: frame ?? Math.round(time_s * match.frame_rate), x_px, y_px }));
    hand.edit({ ...match, marks: marks.toSorted((a, b) => a.frame - b.frame) });
  }

  element.addEventListener('dragover', event => {
    event.preventDefault();
    beginning.classList.add('over');
  });
  element.addEventListener('dragleave', () => beginning.classList.remove('over'));
  element.addEventListener('drop', event => {
    beginning.classList.remove('over');
    if (event.dataTransfer?.files.length) takeDropped(event);
  });
  // pictures dropped anywhere while the place is open are no scene
  document.addEventListener(
    'drop',
    event => {
      const files = [...(event.dataTransfer?.files ?? [])];
      if (store.view.place === 5 && !element.contains(event.target) && files.some(isFootage)) takeDropped(event);
    },
    true,
  );
  function takeDropped(event) {
    event.preventDefault();
    event.stopPropagation();
    take([...event.dataTransfer.files]);
  }
  element.addEventListener('paste', event => {
    if (hand.match.rows || hasPicture(hand.match) || event.target.closest('input')) return;
    const items = pastedRows(event.clipboardData?.getData('text') ?? '', COLUMNS.track);
    if (items) beginRows({ name: tr('Pasted rows'), columns: COLUMNS.track, items });
  });

  function update() {
    setAttribute(beginning, 'hidden', hasPicture(hand.match) || hand.match.rows !== null);
    setAttribute(offers, 'hidden', !offered.length);
  }
  return {
    elements: [chooser, beginning, trouble],
    offers,
    choose,
    close() {
      beginWith(null);
      beginning.querySelector('button').focus({ preventScroll: true });
    },
    update,
  };
}

const emptyRows = () => Array.from({ length: EMPTY_ROWS }, () => Object.fromEntries(COLUMNS.track.map(name => [name, null])));
