// Play, frame back and on, loop; the lanes; the clock and its pace.

import { inSigns, tr } from '../../state/language.js';
import { paceWords } from '../../state/words.js';
import { endOf, pathPoints } from '../../time/track.js';
import { $, h, setAttribute, setText, icon } from '../shared/dom.js';
import { createLanes } from './lanes.js';
import { PACES } from '../looks/looks.js';
import { majorStep } from './ruler.js';

export function createTimeline({ store, clock }) {
  const button = (label, title, sign, onclick, kind = '') => h('button', { type: 'button', class: kind, 'aria-label': label, title, onclick }, icon(sign));
  const play = button(tr('Play'), tr('Play (Space)'), 'play', () => clock.toggle(), 'play');
  const loop = button(tr('Loop'), tr('Loop (L)'), 'loop', () => toggleLoop(clock));
  const figure = h('b', {}),
    pace = h('button', { type: 'button', class: 'pace', title: tr('Slower, then full speed again'), onclick: nextPace });
  const lanes = createLanes({ store, clock });
  $('#timeline').append(
    h(
      'div',
      { class: 'transport' },
      play,
      button(tr('One frame back'), tr('One frame back (,)'), 'back', () => clock.stepFrame(-1), 'step'),
      button(tr('One frame on'), tr('One frame on (.)'), 'on', () => clock.stepFrame(1), 'step'),
      loop,
    ),
    lanes.element,
    h('div', { class: 'clock' }, h('span', { class: 'time' }, figure, h('small', {}, '\u00a0s')), pace),
  );

  const shown = { hundredths: -1, pace: 0, playing: null, loop: undefined }; // of the clock
  let span = 0,
    homes = [], // the answer's habitats, its own first
    paths = [], // of each
    hidden = null,
    cast = null; // of the scene whose playback speed suits its length

  function nextPace() {
    clock.setPace(PACES[(PACES.indexOf(clock.pace) + 1) % PACES.length]);
  }

  // With every frame: what is asked of the page, or put there again, takes time.
  function tick() {
    const hundredths = Math.round(100 * clock.time_s);
    if (hundredths !== shown.hundredths) setText(figure, inSigns(clock.time_s.toFixed(2)));
    if (clock.pace !== shown.pace) setText(pace, tr('at {pace}', { pace: paceWords(clock.pace) }));
    if (clock.playing !== shown.playing) {
      play.dataset.playing = String(clock.playing);
      play.replaceChildren(icon(clock.playing ? 'pause' : 'play'));
      setAttribute(play, 'aria-label', clock.playing ? tr('Pause') : tr('Play'));
    }
    if (clock.loop !== shown.loop) setAttribute(loop, 'aria-pressed', clock.loop !== null);
    shown.hundredths = hundredths;
    shown.pace = clock.pace;
    shown.playing = clock.playing;
    shown.loop = clock.loop;
    if (clock.end_s !== span) {
      span = clock.end_s;
      lanes.draw();
    } else lanes.move();
  }

  function answered() {
    const { answer } = store;
    homes = [answer, ...(answer.compare ?? [])];
    paths = homes.map(({ motions }) => motions.map(motion => pathPoints(motion, answer.grid)));
    setSpan();
    const now = answer.motions.map(motion => motion.kind).join();
    if (now !== cast) clock.suitPace();
    cast = now;
    lanes.draw(paths);
  }

  // as long as what is shown goes on
  function setSpan() {
    const { answer, view } = store,
      isShown = motion => !view.hidden.includes(motion.name),
      end = Math.max(...homes.map((home, i) => endOf(home, paths[i], isShown)), 0.5),
      step = majorStep(end);
    hidden = view.hidden;
    clock.setSpan(Math.ceil(end / step - 1e-6) * step, answer.grid.fps[1] / answer.grid.fps[0]);
    span = clock.end_s;
  }
  store.on('document', ({ replaced }) => {
    if (replaced) cast = null;
  });
  store.on('answer', answered);
  store.on('view', () => {
    if (!store.answer || homes[0] !== store.answer) return;
    if (store.view.hidden !== hidden) setSpan();
    lanes.draw();
  });
  clock.on(tick);
  tick();
  return { marks: lanes.marks };
}

/** The whole span at first; its flags are dragged from there. */
export function toggleLoop(clock) {
  clock.setLoop(clock.loop ? null : { from_s: 0, to_s: clock.end_s });
}
