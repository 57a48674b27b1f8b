// The lanes of the timeline: ruler, a line a motion in its dash, event marks as buttons, playhead, loop flags. Scrubbed anywhere.

import { motionName } from '../state/fields.js';
import { clamp } from '../state/scale.js';
import { formatFigure } from '../state/units.js';
import { h, onDrag, s, setAttribute } from './dom.js';
import { createFlags } from './loop_flags.js';
import { marker, styleOf } from './path_key.js';

const PAD = 8,
  RULE = 26,
  FIRST = 34,
  STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600];
const LEAST_PX = 24,
  ROOM = 44,
  WIDEST = 15; // px: a target's side; for all lanes together; the most for one
const QUIET = new Set(['release', 'apex', 'axis', 'time_limit']);

/** About six labelled times on the ruler. */
export function majorStep(span) {
  return STEPS.find(step => span / step <= 7) ?? STEPS.at(-1);
}

export function createLanes({ store, clock }) {
  const picture = s('svg', { 'aria-hidden': true });
  const buttons = h('div', { class: 'marks' });
  const scrub = h('input', {
    type: 'range',
    class: 'scrub',
    min: 0,
    max: 1,
    step: 'any',
    'aria-label': 'Time',
    onkeydown,
    oninput: () => clock.seek(Number(scrub.value)),
  });
  const head = h('span', { class: 'playhead', 'aria-hidden': true });
  const flags = createFlags({ clock, at: time => x(time), timeAt: clientX => timeAt(clientX) });
  const element = h('div', { class: 'lanes' }, picture, scrub, flags.element, head, buttons);
  const clip = s('rect', { x: 0, y: 0, width: 0, height: 200 });
  let width = 0,
    height = 0,
    paths = [],
    marks = [];

  new ResizeObserver(([entry]) => {
    width = entry.contentRect.width;
    height = entry.contentRect.height;
    draw();
  }).observe(element);
  const x = time => PAD + (clock.end_s ? time / clock.end_s : 0) * (width - 2 * PAD);
  const timeAt = clientX => clamp((clientX - element.getBoundingClientRect().left - PAD) / (width - 2 * PAD), 0, 1) * clock.end_s;

  function draw(given = paths) {
    paths = given;
    if (!width || !store.answer) return;
    setAttribute(picture, 'width', width);
    setAttribute(picture, 'height', height);
    const lanes = laid();
    marks = eventMarks(lanes);
    picture.replaceChildren(
      s('defs', {}, s('clipPath', { id: 'flown' }, clip)),
      ...ruler(),
      ...lanes.map(lane => line(lane, 'later')),
      s(
        'g',
        { 'clip-path': 'url(#flown)' },
        lanes.map(lane => line(lane, 'flown')),
      ),
      ...marks.map(drawnMark),
      ...labels(lanes),
    );
    drawButtons();
    move();
  }

  // hidden motions keep their lane's style but leave no lane
  function laid() {
    const { motions } = store.answer,
      shown = motions
        .map((motion, index) => ({ motion, index, path: paths[index] }))
        .filter(({ index, path }) => path && !store.view.hidden.includes(motionName(store, index)));
    const gap = Math.min(WIDEST, ROOM / Math.max(1, shown.length));
    return shown.map((lane, row) => ({
      ...lane,
      gap,
      y: FIRST + 4 + row * gap,
      starts: lane.path.starts_s,
      ends: lane.path.ends_s + pouring(lane.motion),
    }));
  }

  function line({ index, y, gap, starts, ends }, kind) {
    const { dash, number } = styleOf(index);
    return s('path', {
      d: `M${x(starts).toFixed(1)} ${y}H${Math.max(x(ends), x(starts) + 1).toFixed(1)}`,
      class: `stage-${number} lane ${kind}`,
      'stroke-width': gap > 6 ? 3 : 1.5,
      'stroke-dasharray': dash,
    });
  }

  function ruler() {
    const major = majorStep(clock.end_s),
      minor = major / 5,
      out = [];
    for (let k = 0; k * minor <= clock.end_s + minor * 1e-6; k += 1) {
      const long = k % 5 === 0,
        at = x(k * minor).toFixed(1);
      out.push(s('path', { d: `M${at} ${RULE}v${long ? -7 : -4}`, class: long ? 'long' : 'short' }));
      if (long)
        out.push(
          s(
            'text',
            { x: at, y: 13, 'text-anchor': k === 0 ? 'start' : k * minor > clock.end_s - minor ? 'end' : 'middle' },
            `${formatFigure(k * minor, Math.min(major, 1))}${k === 0 ? '\u00a0s' : ''}`,
          ),
        );
    }
    return [s('path', { d: `M${x(0)} ${RULE}H${x(clock.end_s)}`, class: 'short' }), ...out];
  }

  function eventMarks(lanes) {
    return lanes.flatMap(({ motion, index, y, gap }) => {
      const first = motion.events.find(event => event.kind === 'deck' || event.kind === 'floor');
      return motion.events
        .filter(event => !QUIET.has(event.kind) || event.kind === 'apex')
        .map(event => ({
          index,
          y,
          time: event.time_s,
          big: event === first,
          quiet: QUIET.has(event.kind),
          gap,
          say: `${motionName(store, index)}: ${eventWords(event, event === first)} at ${event.time_s.toFixed(2)} s`,
        }));
    });
  }

  function drawnMark({ index, y, time, big, quiet, gap }) {
    if (quiet) return s('path', { d: `M${x(time).toFixed(1)} ${y - 4}v8`, class: `stage-${styleOf(index).number} tick` });
    return marker(index, x(time), y, Math.min(big ? 5 : 3, gap * 0.6), 'stage');
  }

  function labels(lanes) {
    return lanes
      .filter(({ gap }) => gap >= 11)
      .map(({ motion, index, y, ends }) => {
        const late = x(ends) > width * 0.72,
          said = motion.landing
            ? `${motionName(store, index)} lands ${motion.landing.time_s.toFixed(2)}`
            : `${motionName(store, index)} ${endWords(motion)}`;
        return s(
          'text',
          { x: x(ends) + (late ? -12 : 12), y: y + 4.5, 'text-anchor': late ? 'end' : 'start', class: 'lane-name' },
          said,
        );
      });
  }

  // a mark under another's button shares it: targets stay large, and the keys [ and ] reach each mark
  function shared() {
    const out = [];
    for (const mark of [...marks].sort((a, b) => b.big - a.big)) {
      const near = out.find(other => Math.abs(x(other.time) - x(mark.time)) < LEAST_PX && Math.abs(other.y - mark.y) < LEAST_PX);
      if (near) near.say += `; ${mark.say}`;
      else out.push({ ...mark });
    }
    return out.sort((a, b) => a.time - b.time);
  }

  function drawButtons() {
    const kept = [...buttons.children],
      wanted = shared();
    wanted.forEach((mark, i) => {
      const button =
        kept[i] ??
        buttons.appendChild(
          h('button', { type: 'button', class: 'mark', onclick: event => clock.seek(Number(event.currentTarget.dataset.time)) }),
        );
      button.dataset.time = String(mark.time);
      setAttribute(button, 'aria-label', mark.say);
      setAttribute(button, 'title', mark.say);
      button.style.left = `${x(mark.time)}px`;
      button.style.top = `${mark.y}px`;
    });
    kept.slice(wanted.length).forEach(button => button.remove());
  }

  function move() {
    if (!width) return;
    head.style.transform = `translateX(${x(clock.time_s)}px)`;
    clip.setAttribute('width', x(clock.time_s));
    scrub.max = String(clock.end_s || 1);
    scrub.value = String(clock.time_s);
    setAttribute(scrub, 'aria-valuetext', `${clock.time_s.toFixed(2)} s`);
    flags.update();
  }

  function onkeydown(event) {
    const frames = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    const to = { Home: 0, End: clock.end_s, PageUp: clock.time_s + clock.end_s / 10, PageDown: clock.time_s - clock.end_s / 10 }[
      event.key
    ];
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

// a pour goes on until its last parcel has landed
function pouring({ stream }) {
  return stream ? Math.max(0, stream.last_leaves_s - stream.first_leaves_s) : 0;
}

function eventWords({ kind }, first) {
  const words = {
    apex: 'highest',
    deck: first ? 'lands' : 'bounces off the deck',
    floor: 'lands',
    ceiling: 'meets the ceiling',
    hub: 'meets the hub',
    wall: 'meets a wall',
    target: 'meets the target',
    grip: 'begins to roll',
    rest: 'rests',
    edge: 'leaves the edge',
  };
  return words[kind] ?? kind;
}

function endWords({ end, no_landing: why }) {
  return (
    {
      met_ceiling: 'meets the ceiling',
      met_hub: 'meets the hub',
      met_wall: 'meets a wall',
      left_edge: 'leaves the edge',
      never_meets: 'never lands',
      duration: 'still flies',
    }[why] ?? end
  );
}
