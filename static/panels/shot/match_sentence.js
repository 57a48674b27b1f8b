// How the pictures or rows are to be read and what is known, as sentences whose figures are fields.

import { tr, trParts } from '../../state/language.js';
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
    tr('At what pace it is shown'),
    () => [
      [false, tr('runs as it was filmed')],
      [true, tr('may be slowed or sped up')],
    ],
    () => get().slowed,
    chosen => figures.put({ slowed: chosen }),
  );
  const first = h('p', { class: 'words aim-sentence' }),
    second = h('p', { class: 'words aim-sentence' });
  const element = h('div', { class: 'match-sentence' }, first, second);
  let builtFor = null;

  function ofPictures(match) {
    const parts = { rate, slowed, px };
    const read =
      match.source.count === null
        ? trParts('At {rate} exposures a second it {slowed}. A mark is good to {px}.', parts)
        : trParts('At {rate} frames a second it {slowed}. A mark is good to {px}.', parts);
    return [...read, ' ', ...scale(match)];
  }
  function ofRows(match) {
    return match.slowed
      ? trParts('A row is good to {metres}. It {slowed}, at {rate} frames a second.', { metres, slowed, rate })
      : trParts('A row is good to {metres}. It {slowed}.', { metres, slowed });
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
