// What happens in a lane: marks drawn at their time, and the buttons that go there and say what they are.

import { inSigns, tr } from '../../state/language.js';
import { sweeps } from '../../time/findings.js';
import { pathStyle } from '../../state/palette.js';
import { h, s, setAttribute } from '../shared/dom.js';
import { marker } from '../shared/path_key.js';

const LEAST_PX = 24; // a target's side
const APART_PX = 8; // bounces nearer than this are drawn as one
const MANY = 3; // events of one button that are still told one by one
const UNMARKED = new Set(['release', 'axis', 'time_limit']);
// about their place on the lane
const SIGNS = {
  apex: 'M0-4v8',
  grip: 'M-4-5h8M0-5v5',
  slip: 'M-4 5h8M0 5v-5',
  rest: 'M0-6v12M-3 6h6',
  edge: 'M-3-5l6 5-6 5',
  arrives: 'M-5 0h9M0-4l4 4-4 4',
  dock: 'M-5-4h4v8h-4M5-5v10M-1 0h6',
  target: 'M-4-4l1.5 8h5l1.5-8',
  slack: 'M-6 0c2-5 4-5 6 0s4 5 6 0',
  turn: 'M-4-4h5a4 4 0 0 1 0 8h-5',
  sweep: 'M-5 4c2-9 8-9 10 0',
};
const SIGN_PX = 13; // as high as the highest of them

/** Large: the first landing; small: other contacts; drawn signs: highest before it, grip, slip, rest, the edge. */
export function eventMarks(lanes, nameOf, kinds) {
  return lanes.flatMap(({ motion, index, y, gap }) => {
    const first = motion.events.find(event => event.kind === 'deck' || event.kind === 'floor');
    return [...motion.events, ...sweeps(motion)]
      .filter(event => !UNMARKED.has(event.kind) && !(event.kind === 'apex' && first && event.time_s > first.time_s))
      .map(event => ({
        index,
        y,
        time: event.time_s,
        big: event === first,
        sign: SIGNS[event.kind] ?? null,
        gap,
        name: nameOf(index),
        what: eventWords(event, event === first, kinds[motion.kind].events),
      }));
  });
}

/** Those worth drawing: of small ones that would lie on each other one is kept; marks come lane by lane, in order of time. */
export function thinned(marks, x) {
  let last = null;
  return marks.filter(mark => {
    const small = !mark.big && !mark.sign;
    if (small && last && last.y === mark.y && x(mark.time) - x(last.time) < APART_PX) return false;
    if (small || mark.big) last = mark;
    return true;
  });
}

export function drawnMark({ index, y, time, big, sign, gap }, x) {
  if (sign) {
    const size = Math.min(1, gap / SIGN_PX);
    const transform = `translate(${x(time).toFixed(1)} ${y}) scale(${size})`;
    return s('path', { d: sign, transform, class: `stage-${pathStyle(index).number} tick` });
  }
  return marker(index, x(time), y, Math.min(big ? 5 : 3, gap * 0.6), 'stage');
}

export function createMarkButtons({ at, seek }) {
  const element = h('div', { class: 'marks' });
  const make = () => element.appendChild(h('button', { type: 'button', class: 'mark', onclick: event => seek(Number(event.currentTarget.dataset.time)) }));
  function draw(marks) {
    const kept = [...element.children],
      wanted = shared(marks, at);
    wanted.forEach((mark, i) => {
      const button = kept[i] ?? make(),
        say = wordsOf(mark.events);
      button.dataset.time = String(mark.time);
      setAttribute(button, 'aria-label', say);
      setAttribute(button, 'title', say);
      button.style.left = `${at(mark.time)}px`;
      button.style.top = `${mark.y}px`;
    });
    kept.slice(wanted.length).forEach(button => button.remove());
  }
  return { element, draw };
}

// a mark under another's button shares it: targets stay large, and the keys [ and ] reach each mark
function shared(marks, x) {
  const out = [];
  for (const mark of [...marks].sort((a, b) => b.big - a.big || a.time - b.time)) {
    const near = out.find(other => Math.abs(x(other.time) - x(mark.time)) < LEAST_PX && Math.abs(other.y - mark.y) < LEAST_PX);
    if (near) near.events.push(mark);
    else out.push({ ...mark, events: [mark] });
  }
  return out.sort((a, b) => a.time - b.time);
}

// each event, or where there are many how many of each kind and from when to when
function wordsOf(events) {
  if (events.length <= MANY) return events.map(one => spanWords(`${one.name}: ${one.what}`, [one.time])).join('; ');
  const groups = new Map();
  for (const { name, what, time } of events) {
    const words = `${name}: ${what}`;
    groups.set(words, [...(groups.get(words) ?? []), time]);
  }
  return [...groups].map(([words, times]) => spanWords(words, times)).join('; ');
}

function spanWords(event, times) {
  const [from, to] = [Math.min(...times), Math.max(...times)].map(time => inSigns(time.toFixed(2)));
  return times.length === 1
    ? tr('{event} at {time} s', { event, time: from })
    : tr('{event}, {count} times from {from} to {to} s', { event, count: times.length, from, to });
}

/** `own`: the words its kind has for some events. */
export function eventWords({ kind, velocity_after_m_s: after }, first, own) {
  const off = after?.some(Boolean) ?? false;
  const words = {
    apex: tr('highest'),
    deck: first ? tr('lands') : off ? tr('bounces off the deck') : tr('meets the deck'),
    floor: first ? tr('lands') : off ? tr('bounces off the floor') : tr('meets the floor'),
    ceiling: off ? tr('bounces off the ceiling') : tr('meets the ceiling'),
    hub: off ? tr('bounces off the hub') : tr('meets the hub'),
    wall: off ? tr('bounces off a wall') : tr('meets a wall'),
    table: tr('meets the table'),
    target: tr('reaches the cup'),
    arrives: tr('arrives'),
    dock: tr('reaches the dock'),
    slack: tr('its line goes slack'),
    turn: tr('turns back'),
    sweep: tr('the place it left sweeps by'),
    grip: tr('begins to roll'),
    slip: tr('begins to slide'),
    rest: tr('rests'),
    edge: tr('leaves the edge'),
    ...own,
  };
  return words[kind] ?? kind;
}
