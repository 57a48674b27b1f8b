// The whole wheel beside a stage that shows a part of it: a small drawing seen along the axis, with every path, what moves, and the
// frame of the stage marked on it. Ink on a plate, drawn with the stage; in a picture by the same lines.

import { bodyAt, turnAt } from './model.js';
import { meetPlane, ray } from './framing.js';
import { make } from './overlay.js';
import { degrees } from './spoken.js';

const SHARE = { high: 0.36, wide: 0.24 }; // of the stage
const SIDE_PX = { least: 58, most: 190 };
const SMALLEST_STAGE = { width: 280, height: 140 };
const EDGE_PX = 12;
const CAPTION_PX = 18;
const POINTS = 60; // of a path
const PLATE = 'rgba(10, 16, 22, .78)';
const HAIR = 'rgba(170, 180, 183, .5)';
const RIM = '#8E9693';
const BONE = '#EFEADC';
const FRAME = '#FFFFFF';

export class Inset {
  constructor(dom) {
    this.canvas = make('canvas', 'stage-inset', dom.box);
    this.canvas.setAttribute('aria-hidden', 'true');
    this.context = this.canvas.getContext('2d');
    this.spot = null; // {x, y, w, h} on the stage, or null
    this.canvas.hidden = true;
  }

  read(model, shown) {
    Object.assign(this, { model, shown });
    this.lines = shown.map(m => ({ points: m.lines.outside.points, color: m.style.color }));
    this.reach_m = reachOf(model);
  }

  // `rect` of the stage; `titleLow` where its title ends; `grown`: how much larger than at a desk its words are.
  fitInto(rect, titleLow, grown) {
    Object.assign(this, { rect, grown });
    this.side = Math.round(Math.max(SIDE_PX.least, Math.min(SIDE_PX.most * grown, SHARE.high * rect.height, SHARE.wide * rect.width)));
    this.top = titleLow + EDGE_PX;
    this.fits = rect.width >= SMALLEST_STAGE.width && rect.height >= SMALLEST_STAGE.height;
    this.sized = false;
  }

  // Where it lies, and whether there is one. `crowd`: where the paths run, if they stay where they are.
  put(wanted, crowd) {
    const { rect, side } = this;
    const high = side + CAPTION_PX * this.grown;
    if (!wanted || !this.fits || this.top + high > rect.height - EDGE_PX) this.spot = null;
    else {
      const [right, low] = [rect.width - side - EDGE_PX, rect.height - high - EDGE_PX];
      const places = [
        [EDGE_PX, this.top],
        [EDGE_PX, low],
        [right, low],
        [right, this.top],
      ];
      const hid = crowd ? places.map(([x, y]) => crowd.under(x, y, side, high)) : [0];
      const [x, y] = places[hid.indexOf(Math.min(...hid))];
      this.spot = { x, y, w: side, h: high };
    }
    if (this.canvas.hidden === Boolean(this.spot)) this.canvas.hidden = !this.spot;
    if (this.spot) this.canvas.style.transform = `translate(${this.spot.x}px, ${this.spot.y}px)`;
  }

  hide() {
    this.spot = null;
    this.canvas.hidden = true;
  }

  // On the page.
  draw(half, time_s) {
    if (!this.spot) return;
    const { canvas, context } = this;
    const { w, h } = this.spot;
    const ratio = Math.max(1, window.devicePixelRatio || 1);
    if (!this.sized) {
      this.sized = true;
      Object.assign(canvas, { width: Math.round(w * ratio), height: Math.round(h * ratio) });
      Object.assign(canvas.style, { width: `${w}px`, height: `${h}px` });
    }
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    context.clearRect(0, 0, w, h);
    this.ink(context, half, time_s);
  }

  // Its lines into a context whose origin is its upper left corner.
  ink(x, half, time_s) {
    const { model, side, grown } = this;
    const { w, h } = this.spot;
    const R = model.radius_m;
    const px = (side / 2 - 8) / this.reach_m;
    const at = (p, out) => {
      out[0] = side / 2 + p.x * px;
      out[1] = side / 2 + (R - p.y) * px;
      return out;
    };
    x.fillStyle = PLATE;
    x.fillRect(0, 0, w, h);
    x.strokeStyle = HAIR;
    x.lineWidth = 1;
    x.strokeRect(0.5, 0.5, w - 1, h - 1);
    const turn = turnAt(model, 'outside', time_s);
    x.save();
    x.beginPath();
    x.rect(1, 1, side - 2, side - 2);
    x.clip();
    this.habitat(x, at, px, turn);
    for (const { points, color } of this.lines) path(x, points, at, color);
    for (const m of this.shown) if (time_s >= m.starts_s - 1e-6 && m.path.count) dot(x, at(bodyAt(model, m, 'outside', time_s, p), q), m.style.color);
    this.frame(x, half, at);
    x.restore();
    x.fillStyle = BONE;
    x.font = `${13 * grown}px "Source Sans 3", sans-serif`;
    x.textAlign = 'center';
    x.textBaseline = 'alphabetic';
    x.fillText(`turned ${degrees(turn)}`, w / 2, h - 5 * grown, w - 6);
  }

  // Rim and hub, or the floors; a tick where people stand.
  habitat(x, at, px, turn) {
    const { ground, radius_m: R } = this.model;
    x.strokeStyle = RIM;
    x.lineWidth = 2.5;
    if (ground.floors)
      ground.floors.forEach(({ half_m: [reach] }, floor) => {
        segment(x, at(ground.at(-reach, 0, 0, turn, p, floor), q), at(ground.at(reach, 0, 0, turn, p, floor), r));
        x.lineWidth = 1;
        segment(x, at(ground.at(0, 0, 0, turn, p, floor), q), at({ x: 0, y: R }, r));
        x.lineWidth = 2.5;
      });
    else {
      circle(x, at({ x: 0, y: R }, q), R * px);
      x.stroke();
    }
    const [stood] = this.shown;
    if (!stood || ground.floors) return;
    x.strokeStyle = BONE;
    x.lineWidth = 2;
    const { along_m, axial_m } = stood.release;
    segment(x, at(ground.on(along_m, 0, axial_m, turn, p, stood.floor), q), at(ground.on(along_m, 10 / px, axial_m, turn, p, stood.floor), r));
  }

  // What the stage shows, on the plane through what it looks at.
  frame(x, half, at) {
    const { eye, rect } = half;
    const [tx, ty, tz] = eye.target;
    const point = { x: tx, y: ty, z: tz };
    x.beginPath();
    for (const [u, v] of CORNERS) {
      const look = ray(eye, rect, u * rect.width, v * rect.height);
      const off = meetPlane(look, point, AXIAL) ?? meetPlane(look, point, eye.axes.back);
      if (!off) return;
      const [px, py] = at({ x: tx + off[0], y: ty + off[1] }, q);
      x.lineTo(px, py);
    }
    x.closePath();
    x.strokeStyle = FRAME;
    x.lineWidth = 1.5;
    x.stroke();
  }
}

const CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const AXIAL = [0, 0, 1];
const p = { x: 0, y: 0, z: 0 };
const q = [0, 0];
const r = [0, 0];

// The farthest that anything of the habitat is from the axis.
function reachOf({ radius_m, ground }) {
  const outline = ground.outline();
  let most = radius_m;
  for (let i = 0; i < outline.length; i += 3) most = Math.max(most, Math.hypot(outline[i], radius_m - outline[i + 1]));
  return most;
}

function path(x, points, at, color) {
  const every = 3 * Math.max(1, Math.ceil(points.length / 3 / POINTS));
  x.beginPath();
  for (let i = 0; i < points.length; i += every) {
    const [px, py] = at({ x: points[i], y: points[i + 1] }, q);
    if (i) x.lineTo(px, py);
    else x.moveTo(px, py);
  }
  x.strokeStyle = color;
  x.lineWidth = 1.5;
  x.stroke();
}

function dot(x, [px, py], color) {
  x.fillStyle = color;
  circle(x, [px, py], 3.2);
  x.fill();
  x.strokeStyle = '#0A1016';
  x.lineWidth = 1;
  x.stroke();
}

function circle(x, [px, py], radius) {
  x.beginPath();
  x.arc(px, py, radius, 0, 2 * Math.PI);
}

function segment(x, a, b) {
  x.beginPath();
  x.moveTo(...a);
  x.lineTo(...b);
  x.stroke();
}
