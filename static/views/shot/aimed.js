// At place 5, on a stage: every way that arrives as a thin path, the chosen one strong, what blocks one where it does; the catcher with their reach,
// to be dragged; on Aboard's deck the net of landings, and the throw of it that is looked at. Made once a stage, its buffers rewritten.

import { tr } from '../../state/language.js';
import { Group, Mesh } from '../../vendor/three.module.js';
import { angleAt } from '../../time/track.js';
import { Dots, KIND } from '../dots.js';
import { PERSON_M } from '../lay_figure.js';
import { PATHS } from '../../state/palette.js';
import { BONE, rgb } from '../materials.js';
import { bodyAt, readModel, turnAt } from '../model.js';
import { drawnPoint } from '../place.js';
import { Ribbon } from '../ribbon.js';
import { Catcher } from './catcher.js';
import { netLines } from './net_lines.js';

const PLACE = 5;
const THIN = 0.42,
  CASING = 1.9; // of a path's width
const NAMED = [0.5, 0.62, 0.4, 0.74, 0.28]; // shares of a path, in order of liking
const MOST_NAMED = 4,
  LOW_PX = 200; // stages where there is room for the chosen one's name alone
const RESTS = 1.5; // so much longer than anything moves a scene may last, and all of it be in the picture
const p = { x: 0, y: 0, z: 0 };

export class Aimed {
  // `hold(true | false)` stops and restarts framing while the catcher is dragged; null: there is nothing to drag.
  constructor(shared, half, store, clock, hold) {
    Object.assign(this, { half, store, open: false, lines: [], flown: null, ends_s: () => clock.end_s });
    const ribbon = look => new Ribbon(shared, look);
    this.thin = ribbon({ color: BONE, width: 2, casing: 1.5, order: 4 });
    this.strong = ribbon({ color: BONE, width: 4.5, casing: CASING, order: 5 });
    this.near = ribbon({ color: BONE, width: 2, casing: 1.5, dash: [3, 2], order: 4 });
    this.net = ribbon({ color: BONE, width: 1.3, alpha: 0.75, order: 2, capacity: 600 });
    this.over = ribbon({ color: BONE, width: 3.2, casing: CASING, order: 5 });
    this.reach = ribbon({ color: BONE, width: 2, depth: false, order: 9, capacity: 40 });
    for (const one of [this.thin, this.strong, this.over, this.near, this.net, this.reach]) one.material.uniforms.uNow = { value: 1e9 };
    this.dots = new Dots(shared, { order: 8, depth: false });
    this.person = new Mesh(half.actors.geometry, half.actors.wood);
    this.person.visible = false;
    this.catcher = hold && new Catcher(half, store, hold);
    this.group = new Group();
    this.group.add(this.person, this.dots.points, ...this.ribbons().map(({ mesh }) => mesh));
    half.group.add(this.group);
  }

  ribbons() {
    return [this.thin, this.strong, this.near, this.net, this.over, this.reach];
  }

  // What is to be drawn changed: the answer, the choice, the place. What is shown is settled here and holds until it is read again, so that a picture or a
  // clip is, from its first frame to its last, of the stages as they were when it was asked for, whatever place is opened meanwhile: with every way
  // where place 5 was open, as the stages then have them, and else with none, for a way that was not taken is no part of the scene.
  read() {
    const { half, store } = this,
      { model, frame } = half;
    this.aim = store.shot.aim;
    this.group.visible = this.open = store.view.place === PLACE && this.aim !== null;
    this.lines = [];
    if (!this.open) return this.catcher?.hide();
    const { answer, chosen, landings, flown, aim } = store.shot,
      known = answer && !store.shotBehind;
    const aimed = half.model.motions.find(m => m.name === aim.motion),
      { color } = aimed?.style ?? PATHS[0];
    for (const one of [this.thin, this.strong, this.near, this.over]) one.material.uniforms.uColor.value.set(...rgb(color));
    this.color = color;
    const ways = known ? answer.ways : [];
    this.lines = ways.map(way => ({ way, ...lineOf(way.path, frame, model.radius_m) }));
    const nearest = known && !ways.length && answer.nearest;
    if (nearest) this.lines = [{ way: nearest, ...lineOf(nearest.path, frame, model.radius_m) }];
    this.thin.set(nearest ? [] : this.lines.filter((_, k) => k !== chosen));
    this.strong.set(nearest ? [] : this.lines.filter((_, k) => k === chosen));
    this.near.set(nearest ? this.lines : []);
    this.net.set(landings && frame === 'aboard' ? netLines(landings, model.ground) : []);
    this.readFlown(flown);
    this.chosen = nearest ? nearest : (ways[chosen] ?? null);
  }

  readFlown(flown) {
    if (!flown) this.flown = null;
    else if (this.flown?.of !== flown) {
      const { motions } = readModel({ ...flown.answer, drawn: this.half.model.answer.drawn }, this.store.fields);
      this.flown = { of: flown, motion: motions[0], says: flown.says };
    }
    this.over.set(this.flown ? [this.flown.motion.lines[this.half.frame]] : []);
  }

  // Points that a picture must hold besides.
  points() {
    if (!this.open) return [];
    const { half } = this,
      points = this.lines.flatMap(line => [...line.points]);
    const standing = this.standing();
    if (!standing) return points;
    for (const turn of this.turnsSeen())
      for (const up of [0, this.tall(standing)]) {
        const q = half.model.ground.on(standing.along_m, up, standing.axial_m, turn, p, standing.floor);
        points.push(q.x, q.y, q.z);
      }
    return points;
  }

  // Outside the catcher is carried round as long as anything moves.
  turnsSeen() {
    const { half } = this;
    if (half.frame === 'aboard') return [0];
    const { answer } = half.model,
      from_s = half.lead?.starts_s ?? 0,
      moves_s = Math.max(from_s + (this.chosen?.flight_s ?? 0), ...half.shown.map(m => m.over_s)),
      rests_s = this.ends_s(), // where the clock stops
      until_s = rests_s < RESTS * moves_s ? Math.max(moves_s, rests_s) : moves_s;
    const [first, last] = [angleAt(answer, from_s), angleAt(answer, until_s)];
    const steps = Math.min(24, Math.max(1, Math.ceil((last - first) / 0.3)));
    return Array.from({ length: steps + 1 }, (_, k) => first + ((last - first) * k) / steps);
  }

  // Where somebody stands who is to catch; null of what moves by itself.
  standing() {
    const { to } = this.aim;
    return to.motion ? null : { floor: 0, ...to };
  }

  // How high a person stands; where none fits, as high as the hands.
  tall({ floor, height_m }) {
    return PERSON_M < this.half.model.ground.headroom(floor) ? PERSON_M : height_m;
  }

  // The centre of the reach at time t.
  hands(time_s) {
    const { half } = this,
      { model, frame } = half,
      { to } = this.aim;
    if (!to.motion) return model.ground.at(to.along_m, to.height_m, to.axial_m, turnAt(model, frame, time_s), {}, to.floor ?? 0);
    const met = model.motions.find(m => m.name === to.motion);
    return met ? bodyAt(model, met, frame, time_s, {}) : null;
  }

  // Everything that depends on the time or the eye; gives the labels it wants.
  update(time_s) {
    if (!this.open) return [];
    const { half } = this,
      { metresPerPx } = half.eye,
      px = half.linePx;
    const widths = [
      [this.thin, THIN],
      [this.strong, 1],
      [this.near, 0.5],
      [this.net, 0.3],
      [this.over, 0.8],
      [this.reach, 0.5],
    ];
    for (const [ribbon, share] of widths) {
      ribbon.uniforms.uWidth.value = px * share;
      ribbon.uniforms.uUnit.value = px * metresPerPx;
    }
    this.stand(time_s);
    const hands = this.hands(time_s);
    this.ring(hands);
    this.mark(time_s);
    this.catcher?.place(hands, this.standing() !== null);
    return this.labels(hands, time_s);
  }

  stand(time_s) {
    const { half, person } = this,
      standing = this.standing(),
      { ground } = half.model;
    person.visible = standing !== null && this.tall(standing) === PERSON_M;
    if (!person.visible) return;
    half.actors.putPerson(person, standing, turnAt(half.model, half.frame, time_s), false);
    const from = half.lead?.release;
    if (from && ground.spinward(from, standing) > 0) person.rotateY(Math.PI); // facing the thrower
  }

  // How far somebody reaches, as a ring that faces the eye.
  ring(hands) {
    if (!hands) return this.reach.set([]);
    const { eye } = this.half,
      { right, up } = eye.axes,
      radius_m = Math.max(this.aim.within_m, 7 * eye.metresPerPx);
    const points = [];
    for (let k = 0; k <= 28; k += 1) {
      const [s, c] = [Math.sin((k * Math.PI) / 14) * radius_m, Math.cos((k * Math.PI) / 14) * radius_m];
      points.push(hands.x + c * right[0] + s * up[0], hands.y + c * right[1] + s * up[1], hands.z + c * right[2] + s * up[2]);
    }
    this.reach.set([{ points }]);
  }

  // What blocks a way, and the ball on the chosen one.
  mark(time_s) {
    const { dots, half, lines } = this,
      { model, frame } = half;
    dots.begin();
    const key = frame === 'aboard' ? 'rotating_m' : 'inertial_m';
    for (const { way } of lines)
      if (way.blocked_by) dots.add(drawnPoint(way.blocked_by[key], 0, model.radius_m, p), { size: 15, kind: KIND.cross, tint: rgb(BONE) });
    for (const line of [lines.find(({ way }) => way === this.chosen), this.flown?.motion.lines[frame]].filter(Boolean)) {
      const at = pointAt(line, time_s);
      if (at) dots.add(at, { size: 12, kind: KIND.ball, tint: rgb(this.color) });
    }
    dots.end();
  }

  labels(hands, time_s) {
    const { lines, half, chosen } = this,
      standing = this.standing();
    const ordered = [...lines].sort((a, b) => Number(b.way === chosen) - Number(a.way === chosen)).slice(0, half.rect.height < LOW_PX ? 1 : MOST_NAMED);
    const named = ordered.map(({ way, points }) => ({
      key: `way ${lines.findIndex(line => line.way === way)}`,
      color: this.color,
      text: way.name,
      gap: 9,
      shy: way !== chosen,
      at: NAMED.map(share => pointOf(points, share)),
    }));
    const blocked = ordered
      .filter(({ way }) => way.blocked_by)
      .map(({ way }) => ({
        key: `blocked ${way.name}`,
        text: way.blocked_by.says,
        shy: way !== chosen,
        gap: 10,
        at: [{ ...drawnPoint(way.blocked_by[half.frame === 'aboard' ? 'rotating_m' : 'inertial_m'], 0, half.model.radius_m, {}) }],
      }));
    const head =
      standing && half.model.ground.on(standing.along_m, this.tall(standing), standing.axial_m, turnAt(half.model, half.frame, time_s), {}, standing.floor);
    const catcher = hands && { key: 'catcher', text: standing ? tr('catcher') : tr('to be met'), gap: 10, at: [head, hands].filter(Boolean) };
    const flown = this.flown && {
      key: 'flown',
      color: this.color,
      text: this.flown.says,
      gap: 9,
      at: NAMED.map(share => pointOf(this.flown.motion.lines[half.frame].points, share)),
    };
    return [flown, catcher, ...named, ...blocked].filter(Boolean);
  }

  // Points for labels to keep off.
  crowd() {
    return this.open ? this.lines : [];
  }
}

// {points, time} in drawing axes.
function lineOf({ rotating_m, inertial_m, time_s }, frame, radius_m) {
  const source = frame === 'aboard' ? rotating_m : inertial_m,
    points = new Float64Array(3 * time_s.length);
  for (let i = 0; i < time_s.length; i += 1) {
    drawnPoint(source, i, radius_m, p);
    points.set([p.x, p.y, p.z], 3 * i);
  }
  return { points, time: time_s };
}

function pointOf(points, share) {
  const i = 3 * Math.round(share * (points.length / 3 - 1));
  return { x: points[i], y: points[i + 1], z: points[i + 2] };
}

// Where it is at a time, between two of its points; null before and after.
function pointAt({ points, time }, time_s) {
  const count = time.length;
  if (!count || time_s < time[0] || time_s > time[count - 1]) return null;
  let i = 1;
  while (i < count - 1 && time[i] < time_s) i += 1;
  const share = (time_s - time[i - 1]) / Math.max(1e-9, time[i] - time[i - 1]);
  const between = c => points[3 * i - 3 + c] + share * (points[3 * i + c] - points[3 * i - 3 + c]);
  return { x: between(0), y: between(1), z: between(2) };
}
