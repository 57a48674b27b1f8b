// The whole wheel beside a stage that shows a part of it: a small drawing seen along the axis, with every path, what moves, and the
// frame of the stage marked on it. Ink on a plate, drawn with the stage; in a picture by the same lines.

import { tr } from '../state/language.js';
import { bodyAt, turnAt } from './model.js';
import { meetPlane, ray } from './framing.js';
import { make } from './overlay.js';
import { degrees } from './spoken.js';

const SHARE = { high: 0.36, wide: 0.24 }; // of the stage
const SIDE_PX = { least: 58, most: 190 };
const SMALLEST_STAGE = { width: 280, height: 140 };
const EDGE_PX = 12;
const CAPTION_PX = 18;
const WORDED_PX = 92; // what is narrower has no room for a word beside the figure
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
    this.caption = make('p', 'stage-inset-says', dom.box); // of the page: to write on a canvas has its styles worked out, every frame
    this.caption.setAttribute('aria-hidden', 'true');
    this.caption.hidden = true;
    this.at = placing(0, 0, 0);
    this.framed = { stamp: -1, points: new Float64Array(2 * CORNERS.length), path: null, seen: false };
    this.spots = []; // the one {x, y, w, h} on the stage where it lies, or none
    this.canvas.hidden = true;
  }

  // `told`: those whose path may be seen.
  read(model, shown, told = shown) {
    Object.assign(this, { model, shown });
    this.lines = told.map(m => ({ points: m.lines.outside.points, color: m.style.color, path: null }));
    this.reach_m = reachOf(model);
    this.centre = { x: 0, y: model.radius_m };
    this.drawn = null;
    this.framed.stamp = -1;
  }

  // `rect` of the stage; `titleLow` where its title ends; `grown`: how much larger than at a desk its words are.
  fitInto(rect, titleLow, grown) {
    Object.assign(this, { rect, grown });
    this.side = Math.round(Math.max(SIDE_PX.least, Math.min(SIDE_PX.most * grown, SHARE.high * rect.height, SHARE.wide * rect.width)));
    this.top = titleLow + EDGE_PX;
    this.fits = rect.width >= SMALLEST_STAGE.width && rect.height >= SMALLEST_STAGE.height;
    this.sized = false;
    this.written = null;
    for (const line of this.lines ?? []) line.path = null;
  }

  // Where it lies, and whether there is one. `hides(x, y, width, height)`: how much of what is to be seen lies there.
  put(wanted, hides) {
    const { rect, side } = this;
    const high = side + CAPTION_PX * this.grown;
    if (!wanted || !this.fits || this.top + high > rect.height - EDGE_PX) this.spots = [];
    else {
      const [right, low] = [rect.width - side - EDGE_PX, rect.height - high - EDGE_PX];
      const places = [
        [EDGE_PX, this.top],
        [EDGE_PX, low],
        [right, low],
        [right, this.top],
      ];
      const hid = places.map(([x, y]) => hides(x, y, side, high));
      const [x, y] = places[hid.indexOf(Math.min(...hid))];
      this.spots = [{ x, y, w: side, h: high }];
    }
    if (this.canvas.hidden === Boolean(this.spot)) this.canvas.hidden = this.caption.hidden = !this.spot;
    if (this.spot) this.canvas.style.transform = this.caption.style.transform = `translate(${this.spot.x}px, ${this.spot.y}px)`;
    this.drawn = null;
  }

  get spot() {
    return this.spots[0] ?? null;
  }

  hide() {
    this.spots = [];
    this.canvas.hidden = this.caption.hidden = true;
  }

  // On the page, where it is not what is drawn there.
  draw(half, time_s) {
    if (!this.spot || (this.drawn === time_s && this.stamp === half.eye.stamp && this.sized)) return;
    const { canvas, context } = this;
    const { w, h } = this.spot;
    this.drawn = time_s;
    this.stamp = half.eye.stamp;
    const ratio = Math.max(1, window.devicePixelRatio || 1);
    if (!this.sized) {
      this.sized = true;
      Object.assign(canvas, { width: Math.round(w * ratio), height: Math.round(h * ratio) });
      Object.assign(canvas.style, { width: `${w}px`, height: `${h}px` });
      Object.assign(this.caption.style, { width: `${w}px`, height: `${h}px`, fontSize: `${13 * this.grown}px` });
      this.framed.stamp = -1;
    }
    this.write(degrees(turnAt(this.model, 'outside', time_s)));
    context.setTransform(ratio, 0, 0, ratio, 0, 0);
    context.clearRect(0, 0, w, h);
    this.ink(context, half, time_s);
  }

  write(turned) {
    if (turned === this.written) return;
    this.written = turned;
    this.caption.textContent = this.side < WORDED_PX * this.grown ? turned : tr('turned {angle}', { angle: turned });
  }

  // Its lines into a context whose origin is its upper left corner; into another than the page's the words too.
  ink(x, half, time_s) {
    const { model, side, grown } = this;
    const { w, h } = this.spot;
    const R = model.radius_m;
    const px = (side / 2 - 8) / this.reach_m;
    if (this.at.px !== px || this.at.side !== side || this.at.R !== R) this.at = placing(side, px, R);
    const { at } = this;
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
    x.lineWidth = 1.5;
    for (const line of this.lines) {
      line.path ??= pathOf(line.points, at);
      x.strokeStyle = line.color;
      x.stroke(line.path);
    }
    for (let k = 0; k < this.shown.length; k += 1) {
      const m = this.shown[k];
      if (time_s >= m.starts_s - 1e-6 && m.path.count) dot(x, at(bodyAt(model, m, 'outside', time_s, p), q), m.style.color);
    }
    this.frame(x, half, at);
    x.restore();
    if (x === this.context) return;
    x.fillStyle = BONE;
    x.font = `${13 * grown}px "Source Sans 3", sans-serif`;
    x.textAlign = 'center';
    x.textBaseline = 'alphabetic';
    x.fillText(tr('turned {angle}', { angle: degrees(turn) }), w / 2, h - 5 * grown, w - 6);
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
        segment(x, at(ground.at(0, 0, 0, turn, p, floor), q), at(this.centre, r));
        x.lineWidth = 2.5;
      });
    else {
      at.rim ??= rimOf(at(this.centre, q), R * px);
      x.stroke(at.rim);
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
    const { framed } = this,
      { points } = framed;
    if (framed.stamp !== half.eye.stamp) {
      framed.stamp = half.eye.stamp;
      framed.seen = cornersOf(half, at, points);
      framed.path = new Path2D();
      for (let k = 0; k < points.length; k += 2) framed.path.lineTo(points[k], points[k + 1]);
      framed.path.closePath();
    }
    if (!framed.seen) return;
    x.strokeStyle = FRAME;
    x.lineWidth = 1.5;
    x.stroke(framed.path);
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

// A function that puts a drawn point into `out` as it lies on the drawing, and gives that.
function placing(side, px, R) {
  const at = (place, out) => {
    out[0] = side / 2 + place.x * px;
    out[1] = side / 2 + (R - place.y) * px;
    return out;
  };
  return Object.assign(at, { side, px, R });
}

// Where the corners of what a stage shows lie on the drawing; whether all of them do.
function cornersOf({ eye, rect }, at, out) {
  const [tx, ty, tz] = eye.target;
  const point = { x: tx, y: ty, z: tz };
  return CORNERS.every(([u, v], k) => {
    const look = ray(eye, rect, u * rect.width, v * rect.height);
    const off = meetPlane(look, point, AXIAL) ?? meetPlane(look, point, eye.axes.back);
    if (!off) return false;
    at({ x: tx + off[0], y: ty + off[1] }, q);
    [out[2 * k], out[2 * k + 1]] = q;
    return true;
  });
}

// The farthest that anything of the habitat is from the axis.
function reachOf({ radius_m, ground }) {
  const outline = ground.outline();
  let most = radius_m;
  for (let i = 0; i < outline.length; i += 3) most = Math.max(most, Math.hypot(outline[i], radius_m - outline[i + 1]));
  return most;
}

function pathOf(points, at) {
  const every = 3 * Math.max(1, Math.ceil(points.length / 3 / POINTS));
  const path = new Path2D();
  for (let i = 0; i < points.length; i += every) {
    p.x = points[i];
    p.y = points[i + 1];
    at(p, q);
    if (i) path.lineTo(q[0], q[1]);
    else path.moveTo(q[0], q[1]);
  }
  return path;
}

function dot(x, place, color) {
  x.fillStyle = color;
  circle(x, place, 3.2);
  x.fill();
  x.strokeStyle = '#0A1016';
  x.lineWidth = 1;
  x.stroke();
}

function circle(x, place, radius) {
  x.beginPath();
  x.arc(place[0], place[1], radius, 0, 2 * Math.PI);
}

function rimOf([x, y], radius) {
  const path = new Path2D();
  path.arc(x, y, radius, 0, 2 * Math.PI);
  return path;
}

function segment(x, a, b) {
  x.beginPath();
  x.moveTo(a[0], a[1]);
  x.lineTo(b[0], b[1]);
  x.stroke();
}
