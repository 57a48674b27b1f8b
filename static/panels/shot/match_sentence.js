// How the pictures or rows are to be read and what is known, as sentences whose figures are fields.

import { hasPicture } from '../../state/match.js';
import { h, setChildren } from '../shared/dom.js';
import { createFigures } from './match_figures.js';
import { createKnownWords } from './match_known_words.js';
import { createScaleWords } from './match_scale_words.js';

/** get() → the match; edit(match, live). */
export function createMatchSentence({ store, get, edit }) {
  const figures = createFigures({ store, get, edit }),
    scale = createScaleWords({ figures, get }),
    known = createKnownWords({ store, figures, get });
  const rate = figures.own('frame_rate'),
    px = figures.own('accuracy_px'),
    metres = figures.own('accuracy_m');
  const slowed = figures.list(
    'At what pace it is shown',
    () => [
      [false, 'runs as it was filmed'],
      [true, 'may be slowed or sped up'],
    ],
    () => get().slowed,
    chosen => figures.put({ slowed: chosen }),
  );
  const first = h('p', { class: 'words aim-sentence' }),
    second = h('p', { class: 'words aim-sentence' });
  const element = h('div', { class: 'match-sentence' }, first, second);
  let builtFor = null;

  function ofPictures(match) {
    const exposures = match.source.count === null ? 'exposures' : 'frames';
    return ['At ', rate, ` ${exposures} a second it `, slowed, '. A mark is good to ', px, '. ', ...scale(match)];
  }
  function ofRows(match) {
    return ['A row is good to ', metres, '. It ', slowed, ...(match.slowed ? [', at ', rate, ' frames a second'] : []), '.'];
  }

  // Made anew only when it says something else: a figure in hand keeps its focus.
  function build() {
    const match = get(),
      { by, slowed: may, own_camera, source } = match,
      { radius_m, spin_rpm } = match.known;
    const next = [hasPicture(match), by, may, radius_m, spin_rpm, known.airless(match), Boolean(own_camera), source?.count === null].join();
    if (next === builtFor) return;
    builtFor = next;
    setChildren(first, ...(hasPicture(match) ? ofPictures(match) : ofRows(match)));
    setChildren(second, ...known.words(match));
  }

  function update() {
    build();
    figures.update();
  }
  return { element, update };
}
