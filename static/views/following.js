// Outside, where a whole flight would be a thread round the rim: the eye goes round with the piece of deck on which it happens, as wide
// as Aboard sees it, or with the leading motion where even that is most of the wheel. Its directions stay those of the release.

import { angleAt, at } from '../time/track.js';
import { PERSON_M } from './lay_figure.js';
import { axes } from './framing.js';
import { bodyAt } from './model.js';
import { azimuthOf, turned } from './place.js';

const RAD = Math.PI / 180;
const TALL_ENOUGH = 0.045; // of the picture's height: a person so tall is seen, and nothing needs to be followed
const BROAD = 1.6; // a picture less broad than this is measured by its width: held upright it is no reason to go after what a broad one shows whole
const MUCH_WIDER = 1.6; // than what happens: only then is it followed
const MOST_OF_IT = 0.55; // of the distance that shows the whole: what needs more is shown with the whole
const MOST_FOLLOWED = 0.4; // of the distance that shows the whole: a wider piece of deck is too much of it
const ROOM = 1.2; // round what is followed, for where it comes from and goes to
const MOST_POINTS = 400;
const AROUND = { persons: 7, share: 0.3 }; // room about one motion, the less of the two: persons high, of the radius
const INWARD = 0.4; // of that room: so far toward the axis the eye looks, for outside the hull there is only night

/** How Outside is framed: {rig} that stays, or {rigAt(time_s)}. `view` {yaw, tilt, fov}; `framed(view, points)` → rig; `still`: points of
    all that happens; `carried`: the same in the turning frame; `whole`: of the habitat; `crosses`: whether it is understood as a whole alone. */
export function followed({ model, lead, view, aspect, inset, azimuth, framed, still, carried, whole, crosses }) {
  const rig = framed(view, still);
  const all = framed(view, whole);
  if (crosses || rig.distance > MOST_OF_IT * all.distance) rig.shows = 'whole';
  const whole_rig = rig.shows === 'whole' ? framed(view, joined(still, whole)) : rig;
  const high_m = 2 * rig.distance * Math.tan((view.fov * RAD) / 2) * Math.min(1, aspect / BROAD);
  if (!lead || crosses || PERSON_M / high_m >= TALL_ENOUGH) return { rig: whole_rig };
  const frame = new Frame({ azimuth, ...view, level: model.ground.level }, aspect, inset);
  const patch = new Patch(model, carried, frame);
  const one = ROOM * patch.most > MOST_FOLLOWED * all.distance ? new One(model, lead, frame) : patch;
  if (rig.distance <= MUCH_WIDER * one.most) return { rig: whole_rig };
  return { rigAt: time_s => one.seenAt(time_s) };
}

function joined(a, b) {
  return [...a, ...b];
}

// What a picture of given directions and angles holds. Where it goes round the eye keeps to the side of the axis, so that it looks onto
// the deck and not at the hull; its up stays that of the release.
class Frame {
  constructor(view, aspect, inset) {
    this.view = view;
    const tall = Math.tan((view.fov * RAD) / 2);
    this.wide = tall * aspect * (1 - 2 * inset.side);
    this.over = tall * (1 - 2 * inset.top);
    this.under = tall * (1 - 2 * inset.bottom);
    this.turnTo(0);
  }

  // `round`: how far from the release what is seen has gone round. Gives the view.
  turnTo(round) {
    const { yaw, tilt } = this.view;
    this.seen = { ...this.view, yaw: yaw - tilt * Math.sin(round), tilt: tilt * Math.cos(round) };
    Object.assign(this, axes(this.seen));
    return this.seen;
  }

  // How far the eye must stand from what it looks at to see a point that lies (x, y, z) from it.
  distance(dx, dy, dz) {
    const { right, up, back } = this;
    const x = right[0] * dx + right[1] * dy + right[2] * dz;
    const y = up[0] * dx + up[1] * dy + up[2] * dz;
    const z = back[0] * dx + back[1] * dy + back[2] * dz;
    return z + Math.max(Math.abs(x) / this.wide, y > 0 ? y / this.over : -y / this.under);
  }
}

// A piece of deck with all that happens on it, carried round.
class Patch {
  constructor(model, points, frame) {
    Object.assign(this, { model, frame });
    const every = 3 * Math.max(1, Math.ceil(points.length / 3 / MOST_POINTS));
    this.points = [];
    for (let i = 0; i < points.length; i += every) this.points.push([points[i], points[i + 1], points[i + 2]]);
    const middle = c => (Math.min(...this.points.map(p => p[c])) + Math.max(...this.points.map(p => p[c]))) / 2;
    this.middle = { x: middle(0), y: middle(1), z: middle(2) };
    this.offsets = this.points.map(([x, y, z]) => [x - this.middle.x, y - this.middle.y, z - this.middle.z]);
    const { azimuth, level } = frame.view;
    this.from = level ? 0 : azimuthOf(this.middle, model.radius_m) - azimuth; // at time 0
    this.most = Math.max(...[0, 0.25, 0.5, 0.75].map(turn => this.distanceAt(turn * Math.PI)));
  }

  distanceAt(turn) {
    this.frame.turnTo(this.from + turn);
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    let most = 0;
    for (const [x, y, z] of this.offsets) most = Math.max(most, this.frame.distance(c * x - s * y, s * x + c * y, z));
    return most;
  }

  seenAt(time_s) {
    const turn = angleAt(this.model.answer, time_s);
    const { x, y, z } = turned(this.middle, this.model.radius_m, turn, {});
    const distance = ROOM * this.distanceAt(turn);
    return { ...this.frame.seen, target: [x, y, z], distance };
  }
}

// One motion, with some room about it, at one height: the eye does not hop with a ball.
class One {
  constructor(model, m, frame) {
    Object.assign(this, { model, m, frame });
    const around = Math.min(AROUND.share * model.radius_m, AROUND.persons * PERSON_M);
    this.most = Math.max(frame.distance(around, 0, 0), frame.distance(0, around, 0), frame.distance(0, -around, 0));
    const heights = Array.from(m.path.height_m);
    const [least, most] = [Math.min(...heights), Math.max(...heights)];
    this.height_m = most - least < around ? (least + most) / 2 : null;
    this.inward_m = model.ground.floors ? 0 : INWARD * around;
  }

  seenAt(time_s) {
    const { model, m } = this;
    const body = bodyAt(model, m, 'outside', time_s, {});
    const view = this.frame.turnTo(azimuthOf(body, model.radius_m) - this.frame.view.azimuth);
    if (!model.ground.floors) {
      const R = model.radius_m;
      const out = Math.hypot(body.x, R - body.y) || 1;
      const over = this.height_m === null ? 0 : at(m.path, time_s, 'height_m') - this.height_m;
      const off = (over - this.inward_m) / out;
      body.x += off * body.x;
      body.y -= off * (R - body.y);
    }
    return { ...view, target: [body.x, body.y, body.z], distance: this.most };
  }
}
