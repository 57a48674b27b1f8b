// What happens in a lane: marks drawn at their time, and the buttons that go there and say what they are.

import { h, s, setAttribute } from './dom.js';
import { marker, styleOf } from './path_key.js';

const LEAST_PX = 24; // a target's side
const UNMARKED = new Set(['release', 'axis', 'time_limit']);

/** Large: the first landing; small: other contacts; a tick: the highest point. */
export function eventMarks(lanes, nameOf) {
  return lanes.flatMap(({ motion, index, y, gap }) => {
    const first = motion.events.find(event => event.kind === 'deck' || event.kind === 'floor');
    return motion.events
      .filter(event => !UNMARKED.has(event.kind))
      .map(event => ({
        index,
        y,
        time: event.time_s,
        big: event === first,
        quiet: event.kind === 'apex',
        gap,
        say: `${nameOf(index)}: ${eventWords(event, event === first)} at ${event.time_s.toFixed(2)} s`,
      }));
  });
}

export function drawnMark({ index, y, time, big, quiet, gap }, x) {
  if (quiet) return s('path', { d: `M${x(time).toFixed(1)} ${y - 4}v8`, class: `stage-${styleOf(index).number} tick` });
  return marker(index, x(time), y, Math.min(big ? 5 : 3, gap * 0.6), 'stage');
}

export function createMarkButtons({ at, seek }) {
  const element = h('div', { class: 'marks' });
  const make = () =>
    element.appendChild(
      h('button', { type: 'button', class: 'mark', onclick: event => seek(Number(event.currentTarget.dataset.time)) }),
    );
  function draw(marks) {
    const kept = [...element.children],
      wanted = shared(marks, at);
    wanted.forEach((mark, i) => {
      const button = kept[i] ?? make();
      button.dataset.time = String(mark.time);
      setAttribute(button, 'aria-label', mark.say);
      setAttribute(button, 'title', mark.say);
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
  for (const mark of [...marks].sort((a, b) => b.big - a.big)) {
    const near = out.find(other => Math.abs(x(other.time) - x(mark.time)) < LEAST_PX && Math.abs(other.y - mark.y) < LEAST_PX);
    if (near) near.say += `; ${mark.say}`;
    else out.push({ ...mark });
  }
  return out.sort((a, b) => a.time - b.time);
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
