// The lanes of the timeline: ruler, a line a motion in its dash, event marks as buttons, playhead, loop flags. Scrubbed anywhere.

import { inSigns, tr } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { isWithheld } from '../../state/shown.js';
import { homeAnswer, homeName, servedHome } from '../../state/homes.js';
import { clamp } from '../../state/scale.js';
import { pathStyle } from '../../state/palette.js';
import { lastParcel } from '../../time/track.js';
import { h, onDrag, s, setAttribute } from '../shared/dom.js';
import { endWords, dashOf } from '../shared/path_key.js';
import { createAxis } from './axis.js';
import { createMarkButtons, drawnMark, eventMarks, thinned } from './lane_marks.js';
import { laneRows, placeWords } from './rows.js';
import { createFlags, ruler } from './ruler.js';

const PAD = 8; // px beside the ruler
const LONGEST = 24; // letters of a name in a lane
const SAYS_EVERY_MS = 250; // while it plays

export function createLanes({ store, clock }) {
  const picture = s('svg', { 'aria-hidden': true });
  const words = s('svg', { 'aria-hidden': true, class: 'lane-words' }); // over the playhead
  const scrub = h('input', {
    type: 'range',
    class: 'scrub',
    min: 0,
    max: 1,
    step: 'any',
    'aria-label': tr('Time'),
    onkeydown,
    oninput: () => clock.seek(Number(scrub.value)),
  });
  const head = h('span', { class: 'playhead', 'aria-hidden': true });
  const flags = createFlags({ clock, at: time => x(time), timeAt: clientX => timeAt(clientX) });
  const buttons = createMarkButtons({ at: time => x(time), seek: time => clock.seek(time) });
  const element = h('div', { class: 'lanes' }, picture, scrub, flags.element, head, words, buttons.element);
  const clip = s('rect', { x: 0, y: 0, width: 0, height: 2000 });
  const letters = document.createElement('canvas').getContext('2d');
  let width = 0,
    height = 0,
    homes = [],
    type = 1,
    styledFor = null,
    said_ms = 0, // what only those hear who do not see the playhead
    axis = createAxis([], 1),
    paths = [],
    marks = [];

  new ResizeObserver(([entry]) => {
    width = entry.contentRect.width;
    height = entry.contentRect.height;
    styledFor = null;
    draw();
  }).observe(element);
  addEventListener('resize', () => {
    styledFor = null;
  });
  const x = time => PAD + axis.at(time) * (width - 2 * PAD);
  const timeAt = clientX => axis.timeAt(clamp((clientX - element.getBoundingClientRect().left - PAD) / (width - 2 * PAD), 0, 1));

  // `given`: paths of each habitat, its own first
  function draw(given = homes) {
    homes = given;
    paths = homes[servedHome(store)] ?? homes[0] ?? [];
    if (!width || !store.answer) return;
    if (styledFor !== store.view.type) readStyle();
    for (const svg of [picture, words]) {
      setAttribute(svg, 'width', width);
      setAttribute(svg, 'height', height);
    }
    const lanes = shownLanes();
    document.documentElement.style.setProperty('--lanes', Math.max(2, lanes.length));
    axis = createAxis(
      told(lanes).flatMap(({ motion, ends }) => [...motion.events.map(event => event.time_s), ends]),
      clock.end_s,
    );
    const nameOf = index => {
      const motion = motionName(store, index);
      return servedHome(store) ? tr('{motion} in {habitat}', { motion, habitat: homeName(store, servedHome(store)) }) : motion;
    };
    marks = eventMarks(told(lanes), nameOf, store.fields.kinds);
    picture.replaceChildren(
      s('defs', {}, s('clipPath', { id: 'flown' }, clip)),
      ...ruler(axis, clock.end_s, x, type),
      ...told(lanes).map(lane => line(lane, 'later')),
      s(
        'g',
        { 'clip-path': 'url(#flown)' },
        lanes.map(lane => line(lane, 'flown')),
      ),
      ...thinned(marks, x).map(mark => drawnMark(mark, x)),
    );
    words.replaceChildren(...lanes.map(lettering).filter(Boolean));
    buttons.draw(marks);
    flags.update(true);
    move();
  }

  // with another size of words, or of the window: a style that is read while a dial moves has the whole page worked out
  function readStyle() {
    styledFor = store.view.type;
    const style = getComputedStyle(words);
    type = Number(style.getPropertyValue('--type')) || 1;
    letters.font = `${style.fontSize} ${style.fontFamily}`;
  }

  // all but those whose way is held back: of them no more is drawn than has been flown
  const told = lanes => lanes.filter(({ index }) => !isWithheld(store.view, motionName(store, index)));

  // of the habitat that is served
  const served = () => homeAnswer(store.answer, servedHome(store)) ?? store.answer;

  // hidden motions keep their lane's style but leave no lane
  function shownLanes() {
    const { motions } = served(),
      shown = motions
        .map((motion, index) => ({ motion, index, path: paths[index] }))
        .filter(({ index, path }) => path && !store.view.hidden.includes(motionName(store, index)));
    const { first, gap, lettered } = laneRows(shown.length, height, type);
    return shown.map((lane, row) => ({
      ...lane,
      gap,
      lettered,
      y: first + row * gap,
      starts: lane.path.starts_s,
      ends: lastParcel(lane.motion, lane.path.ends_s),
    }));
  }

  function line({ index, y, gap, starts, ends }, kind) {
    const wide = (gap > 6 ? 3 : 1.5) * type,
      { number } = pathStyle(index);
    return s('path', {
      d: `M${x(starts).toFixed(1)} ${y}H${Math.max(x(ends), x(starts) + 1).toFixed(1)}`,
      class: `stage-${number} lane ${kind}`,
      'stroke-width': wide,
      'stroke-dasharray': dashOf(index, wide),
    });
  }

  // with little room only those of the chosen motion
  function lettering({ motion, index, y, starts, ends, lettered }) {
    if (!lettered && index !== store.view.chosen) return null;
    const name = shortName(motionName(store, index));
    if (isWithheld(store.view, motionName(store, index))) return s('text', { x: width, y: y + 4.5 * type, 'text-anchor': 'end', class: 'lane-name' }, name);
    const does = laneWords(motion, ends, store.fields.kinds[motion.kind].stays);
    const put = placeWords([`${name} ${does}`, does, name], { from: x(starts), to: x(ends), width, widthOf: text => letters.measureText(text).width });
    return put && s('text', { x: put.x, y: y + 4.5 * type, 'text-anchor': put.anchor, class: 'lane-name' }, put.words);
  }

  function move() {
    if (!width) return;
    const at = x(clock.time_s);
    head.style.transform = `translateX(${at}px)`;
    clip.setAttribute('width', at);
    flags.update(false);
    const now_ms = performance.now();
    if (clock.playing && now_ms - said_ms < SAYS_EVERY_MS) return;
    said_ms = now_ms;
    scrub.max = String(clock.end_s || 1);
    scrub.value = String(clock.time_s);
    setAttribute(scrub, 'aria-valuetext', `${inSigns(clock.time_s.toFixed(2))} s`);
  }

  function onkeydown(event) {
    const frames = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    const to = { Home: 0, End: clock.end_s, PageUp: clock.time_s + clock.end_s / 10, PageDown: clock.time_s - clock.end_s / 10 }[event.key];
    if (frames) clock.stepFrame(frames * (event.shiftKey ? 10 : 1));
    else if (to !== undefined) clock.seek(to);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
  onDrag(scrub, {
    start(event) {
      event.preventDefault();
      scrub.focus({ preventScroll: true });
      clock.pause();
      clock.seek(timeAt(event.clientX));
      return true;
    },
    move(event) {
      clock.seek(timeAt(event.clientX));
    },
  });
  return { element, draw, move, marks: () => marks.map(mark => mark.time).sort((a, b) => a - b) };
}

// a stream lands for as long as it is poured
function laneWords(motion, ends, stays) {
  const { landing, stream } = motion;
  return stream && landing
    ? tr('lands from {from} to {to}', { from: inSigns(landing.time_s.toFixed(2)), to: inSigns(ends.toFixed(2)) })
    : endWords(motion, stays);
}

function shortName(name) {
  return name.length > LONGEST ? `${name.slice(0, LONGEST - 1)}…` : name;
}
