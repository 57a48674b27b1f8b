// The tape: two clicks on deck or path, or two places chosen by name, then distance, height and time between them. A place on the deck turns with it; a place
// on a path is a moment of that path.

import { tr } from '../state/language.js';
import { at } from '../time/track.js';
import { deckAt, turnAt } from './model.js';
import { drawnPoint } from './place.js';
import { Dots, KIND } from './dots.js';
import { Ribbon } from './ribbon.js';
import { figure, metres } from './spoken.js';

const NONE = Object.freeze([]);
const NEAR_PX = 16;
const held = [0, 0, 0];

export class Tape {
  constructor(shared) {
    this.ends = [];
    this.ribbon = new Ribbon(shared, { color: '#FFFFFF', width: 2, dash: [4, 2], depth: false, order: 9, capacity: 4 });
    this.ribbon.material.uniforms.uNow = { value: 1e9 };
    this.dots = new Dots(shared, { depth: false, order: 10, capacity: 2 });
    this.meshes = [this.ribbon.mesh, this.dots.points];
  }

  clear() {
    this.ends = [];
  }

  click(half, x, y, time_s) {
    const end = nearPath(half, x, y) ?? onDeck(half, x, y, time_s);
    if (!end) return;
    if (this.ends.length === 2) this.ends = [];
    this.ends.push(end);
  }

  // One of its ends at a place that has a name (tape_ends.js); `which` 0 or 1.
  put(which, end) {
    this.ends = which ? [this.ends[0], end] : [end, ...this.ends.slice(1)];
  }

  // What it tells, for those who do not see it; '' while an end is missing.
  says(half, time_s) {
    const [a, b] = this.ends.map(end => end && where(half, end, time_s));
    return a && b ? `${apart(half, a, b)}: ${this.aside(half, a, b, time_s).replace(/, $/, '')}` : '';
  }

  update(half, time_s) {
    if (!this.ends.length) return this.hide();
    const places = this.ends.map(end => end && where(half, end, time_s)).filter(Boolean);
    this.dots.begin();
    for (const place of places) this.dots.add(place, { size: 12, kind: KIND.ring, tint: [1, 1, 1] });
    this.dots.end();
    const [a, b] = places;
    this.ribbon.set(b ? [{ points: [a.x, a.y, a.z, b.x, b.y, b.z] }] : []);
    this.ribbon.uniforms.uUnit.value = 2 * half.eye.metresPerPx;
    if (!b) return places.length ? [{ key: 'tape', text: tr('tape: now the other end'), at: [a], gap: 12 }] : [];
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 };
    return [
      {
        key: 'tape',
        strong: apart(half, a, b),
        text: this.aside(half, a, b, time_s),
        at: [middle],
        gap: 12,
      },
    ];
  }

  hide() {
    this.ribbon.mesh.visible = this.dots.points.visible = false;
    return NONE;
  }

  // '1.20 m up, 0.45 s; ' before the distance.
  aside(half, a, b, time_s) {
    const turn = turnAt(half.model, half.frame, time_s);
    const [low, high] = [a, b].map(end => half.model.ground.height(end, turn, half.lead?.floor));
    const up = high - low;
    const times = this.ends.map(end => end.time_s).filter(t => t !== undefined);
    const length = metres(Math.abs(up), half.view.units);
    const parts = [up < 0 ? tr('{length} down', { length }) : tr('{length} up', { length })];
    if (times.length === 2) parts.push(figure(Math.abs(times[1] - times[0]), 's', 'si'));
    return `${parts.join(', ')}, `;
  }
}

function apart(half, a, b) {
  return metres(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z), half.view.units);
}

function nearPath(half, x, y) {
  let best = null;
  for (const m of half.shown) {
    const { points, time } = m.lines[half.frame];
    for (let i = 0; i < time.length; i += 1) {
      const px = half.project(half.drawnAt({ x: points[3 * i], y: points[3 * i + 1], z: points[3 * i + 2] }));
      const off = px ? Math.hypot(px[0] - x, px[1] - y) : Infinity;
      if (off < (best?.off ?? NEAR_PX)) best = { off, motion: m.i, time_s: time[i] };
    }
  }
  return best && { motion: best.motion, time_s: best.time_s };
}

function onDeck(half, x, y, time_s) {
  const hit = half.onDeck(x, y, time_s);
  const floor = half.lead?.floor ?? 0;
  return hit && { ...half.model.ground.under(hit, turnAt(half.model, half.frame, time_s), floor), floor };
}

function where(half, end, time_s) {
  if (end.motion === undefined) return deckAt(half.model, half.frame, end.along_m, 0, end.axial_m, time_s, {}, end.floor);
  const m = half.shown.find(one => one.i === end.motion);
  return m ? half.drawnAt(drawnPoint(at(m.path, end.time_s, half.frame === 'aboard' ? 'rotating_m' : 'inertial_m', held), 0, half.model.radius_m, {})) : null;
}
