// Where a motion touches something, and where it starts to roll, to slip, to rest or goes over an edge: a small mark each in the
// path's colour, its words when the pointer is near.

import { tr, trLater } from '../state/language.js';
import { isContact, isLanding } from '../time/track.js';
import { Dots, KIND } from './dots.js';
import { drawnPoint } from './place.js';
import { figure } from './spoken.js';
import { rgb } from './materials.js';

const NONE = Object.freeze([]);
const NEAR_PX = 16;
export const WORDS = {
  deck: trLater('meets the deck'),
  floor: trLater('meets the floor'),
  ceiling: trLater('meets the ceiling'),
  hub: trLater('meets the hub'),
  wall: trLater('meets a wall'),
  table: trLater('meets the table'),
  grip: trLater('grips'),
  slip: trLater('slips'),
  rest: trLater('comes to rest'),
  edge: trLater('goes over the edge'),
  arrives: trLater('arrives'),
  dock: trLater('reaches the dock'),
  target: trLater('reaches the cup'),
  slack: trLater('hangs on a slack line'),
};

export class Touches {
  constructor(shared, frame) {
    this.key = frame === 'aboard' ? 'rotating_m' : 'inertial_m';
    this.dots = new Dots(shared, { order: 6, depth: false });
    this.marks = [];
  }

  read(model, shown) {
    this.marks = [];
    this.dots.begin();
    for (const m of shown) {
      const first = m.landing ? m.motion.events.find(isLanding) : null;
      for (const event of m.motion.events)
        if (WORDS[event.kind] && event[this.key]) {
          const point = drawnPoint(event[this.key], 0, model.radius_m, {});
          this.marks.push({ m, event, point });
          if (event !== first) this.dots.add(point, lookOf(event, m));
        }
    }
    this.dots.end();
  }

  // The label of the mark nearest the pointer.
  labels(half) {
    const near = this.near(half);
    if (!near) return NONE;
    const { m, event, point } = near;
    return [{ key: 'touch', text: `${m.name} ${tr(WORDS[event.kind])}, `, strong: figure(event.time_s, 's', 'si'), at: [half.drawnAt(point)], gap: 12 }];
  }

  near(half) {
    if (!half.pointer) return null;
    let best = null;
    for (const mark of this.marks) {
      const px = half.project(half.drawnAt(mark.point));
      const off = px ? Math.hypot(px[0] - half.pointer[0], px[1] - half.pointer[1]) : Infinity;
      if (off < (best?.off ?? NEAR_PX)) best = { off, ...mark };
    }
    return best;
  }
}

function lookOf(event, m) {
  const tint = rgb(m.style.color);
  if (isContact(event)) return { size: 9.5, kind: KIND[m.style.marker], tint, alpha: m.style.open ? 0.4 : 1 };
  return { size: 11, kind: event.kind === 'edge' ? KIND.cross : KIND.ring, tint };
}
