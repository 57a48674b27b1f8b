// The habitat seen down the axis as a flat plate, ink on paper: the deck as a line with metre ticks, the paths and who moves.

import { tr } from '../state/language.js';
import { angleAt, isLanding } from '../time/track.js';
import { PERSON_M } from './lay_figure.js';
import { isWithheld } from '../state/shown.js';
import { drawProps } from './flat_props.js';
import { svg } from './overlay.js';
import { bodyAt, deckAt, standing } from './model.js';
import { drawnPoint } from './place.js';
import { fromTheSide, strokesOf, sweptPoints } from './craft_reach.js';
import { seenPoints } from './camera_presets.js';
import { asFarAsHeld } from './held_back.js';
import { PLAIN } from '../state/palette.js';
import { howFar } from '../state/ways.js';
import { figure } from './spoken.js';

const INK = '#182024';
const SOFT = '#465157';
const SIDE = { true: { stroke: INK, 'stroke-width': 2.2, class: 'prop-home' }, false: { stroke: SOFT, 'stroke-width': 1.2, class: 'prop-craft' } };
const ARROW_PX = 90; // its length
const NEAR_RAD = 0.4; // as far round from the release spinward is still to the right
const ROUND_PX = 30, // the radius of an arrow about the axis, and where it ends, from the level
  ROUND_RAD = 0.35;

/** Draws into `sheet`, an svg. `room`: px kept free over (top), beside (side) and under (foot) what is shown; where the arrow and
    the highest name are, how tall texts are, the paper's colour; named: whether the paths are. */
export class LinePlate {
  constructor(sheet, frame, room) {
    Object.assign(this, { sheet, frame, room });
  }

  fitInto({ width, height }) {
    this.rect = { width, height };
    this.sheet.setAttribute('viewBox', `0 0 ${width} ${height}`);
  }

  read(model, shown, view) {
    Object.assign(this, { model, shown, view, told: shown.filter(m => !isWithheld(view, m.name)) });
    this.side = model.tumbling && this.frame === 'outside'; // a craft that goes over is seen from its side
    if (this.side) return this.readSide();
    this.scaleTo(seenPoints({ frame: this.frame, companion: view.companion, lead: shown[view.chosen] }, model, asFarAsHeld(model, shown, view)));
    this.sheet.replaceChildren();
    this.taken = [];
    this.drawDeck();
    for (const m of this.told) this.drawPath(m);
    if (this.room.named) nameAll(this);
    this.moving = svg('g', {}, this.sheet);
  }

  readSide() {
    this.strokes = strokesOf(this.model);
    this.scaleTo(sweptPoints(this.model).map((_, i, points) => (i % 3 === 0 ? points[i + 2] : points[i])));
    this.sheet.replaceChildren();
    this.taken = [];
    this.moving = svg('g', {}, this.sheet);
  }

  drawSide(time_s) {
    const seen = fromTheSide(this.model, time_s);
    for (const { points, home } of this.strokes)
      this.line(
        points.map(seen).flatMap(({ x, y }) => [x, y, 0]),
        SIDE[home],
        this.moving,
      );
    for (const m of this.shown)
      if (!m.tumbles && time_s >= m.starts_s - 1e-6 && m.path.count) {
        const [x, y] = this.at(seen(bodyAt(this.model, m, 'outside', time_s, {})));
        svg('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 6, fill: m.style.paper, stroke: this.room.paper, 'stroke-width': 1.5 }, this.moving);
      }
  }

  scaleTo(points) {
    const { width, height } = this.rect;
    const box = { l: Infinity, r: -Infinity, b: Infinity, t: -Infinity };
    for (let i = 0; i < points.length; i += 3) {
      box.l = Math.min(box.l, points[i]);
      box.r = Math.max(box.r, points[i]);
      box.b = Math.min(box.b, points[i + 1]);
      box.t = Math.max(box.t, points[i + 1]);
    }
    this.px = Math.min((width - 2 * this.room.side) / Math.max(box.r - box.l, 1e-6), (height - this.room.top - this.room.foot) / Math.max(box.t - box.b, 1e-6));
    this.x0 = width / 2 - (this.px * (box.l + box.r)) / 2;
    this.y0 = (this.room.top + height - this.room.foot) / 2 + (this.px * (box.b + box.t)) / 2;
  }

  at(p) {
    return [this.x0 + p.x * this.px, this.y0 - p.y * this.px];
  }

  line(points, look, into = this.sheet) {
    let d = '';
    for (let i = 0; i < points.length; i += 3)
      d += `${i ? 'L' : 'M'}${this.at({ x: points[i], y: points[i + 1] })
        .map(c => c.toFixed(1))
        .join(' ')}`;
    return svg('path', { d, fill: 'none', 'stroke-linejoin': 'round', ...look }, into);
  }

  text(parent, [x, y], words, fill) {
    const box = boxOf(this, x, y, words);
    svg('text', { x: ((box[0] + box[2]) / 2).toFixed(1), y: y.toFixed(1), fill, 'text-anchor': 'middle' }, parent).textContent = words;
    return box;
  }

  drawDeck() {
    const { ground, shape, radius_m: R } = this.model;
    if (ground.floors) ground.floors.forEach(({ half_m: [a] }, floor) => this.across(floor, a));
    else this.ring(R, 2.5);
    if (shape.section_m && shape.section_m < R) this.ring(R - 2 * shape.section_m, 1);
    if (this.frame !== 'aboard') return;
    this.spinward();
    const floor = this.shown[0]?.floor ?? 0;
    const reach_m = ground.reach(floor).along_m;
    const step = 5 * 10 ** Math.max(R < 5 ? -1 : 0, Math.ceil(Math.log10(60 / this.px / 5)));
    for (let along = -20 * step; along <= 20 * step; along += step) if (Math.abs(along) < reach_m) this.tick(along, floor);
  }

  ring(radius_m, width) {
    const [x, y] = this.at({ x: 0, y: this.model.radius_m });
    svg('circle', { cx: x, cy: y, r: radius_m * this.px, fill: 'none', stroke: INK, 'stroke-width': width }, this.sheet);
  }

  // A flat floor seen along the axis; Outside where it was at time 0.
  across(floor, reach_m) {
    this.line(
      [-reach_m, reach_m].flatMap(along => {
        const { x, y, z } = this.model.ground.at(along, 0, 0, 0, {}, floor);
        return [x, y, z];
      }),
      { stroke: INK, 'stroke-width': 2.5 },
    );
  }

  // Spinward is as it is at the release. Where the arrow's place lies round the wheel from there, spinward is another way: the arrow then
  // goes about the axis, or where that is out of the picture stands over the release.
  spinward() {
    const { width, height } = this.rect;
    const axis = this.at({ x: 0, y: this.model.radius_m });
    const corner = [width - 120 + ARROW_PX / 2, this.room.arrow];
    const round = Math.abs(Math.atan2(corner[0] - axis[0], corner[1] - axis[1]));
    if (round < NEAR_RAD) return this.straightArrow(corner);
    if (axis[0] > ROUND_PX && axis[0] < width - ROUND_PX && axis[1] > ROUND_PX && axis[1] < height - ROUND_PX) return this.roundArrow(axis);
    this.straightArrow([Math.min(Math.max(this.at({ x: 0, y: 0 })[0], 70), width - 70), this.room.arrow]);
  }

  straightArrow([middle, y]) {
    this.taken.push(this.text(this.sheet, [middle, y - 8], tr('spinward'), INK), [middle - ARROW_PX / 2, y - 5, middle + ARROW_PX / 2, y + 5]);
    svg('path', { d: `M${middle - ARROW_PX / 2} ${y}h${ARROW_PX}m-9 -5l9 5l-9 5`, fill: 'none', stroke: INK, 'stroke-width': 1.5 }, this.sheet);
  }

  // Under the axis it goes to the right, as the deck does at the release.
  roundArrow([x, y]) {
    const [c, s] = [ROUND_PX * Math.cos(ROUND_RAD), ROUND_PX * Math.sin(ROUND_RAD)];
    const d = `M${(x - c).toFixed(1)} ${(y + s).toFixed(1)}A${ROUND_PX} ${ROUND_PX} 0 0 0 ${(x + c).toFixed(1)} ${(y + s).toFixed(1)}`;
    svg('path', { d, fill: 'none', stroke: INK, 'stroke-width': 1.5 }, this.sheet);
    const head = `translate(${(x + c).toFixed(1)} ${(y + s).toFixed(1)}) rotate(${((ROUND_RAD * 180) / Math.PI - 90).toFixed(1)})`;
    svg('path', { d: 'M-9 -5L0 0L-9 5', transform: head, fill: 'none', stroke: INK, 'stroke-width': 1.5 }, this.sheet);
    this.taken.push(this.text(this.sheet, [x, y + 0.3 * this.room.text], tr('spinward'), INK));
    this.taken.push([x - ROUND_PX, y, x + ROUND_PX, y + ROUND_PX]);
  }

  // Below the deck on the plate: outward, which on a turntable is past its edge.
  tick(along, floor) {
    const { ground, radius_m: R } = this.model;
    const out = 8 / this.px;
    const [a, b, c] = [0, out, 2.6 * out].map(off => this.at(ground.level ? ground.at(along, 0, R + off, 0, {}) : ground.at(along, -off, 0, 0, {}, floor)));
    svg('path', { d: `M${a.join(' ')}L${b.join(' ')}`, stroke: INK, 'stroke-width': 1.5 }, this.sheet);
    const words = along === 0 ? '0\u00a0m' : String(Number(along.toPrecision(6))).replace('-', '−');
    if (c[0] > 10 && c[0] < this.rect.width - 10 && isFree(this, boxOf(this, c[0], c[1] + 4, words)))
      this.taken.push(this.text(this.sheet, [c[0], c[1] + 4], words, SOFT));
  }

  drawPath(m) {
    const { points } = m.lines[this.frame];
    if (this.frame === 'aboard' && this.view.companion && m.lines.companion) this.drawPlain(m.lines.companion.points);
    this.line(points, { stroke: m.style.paper, 'stroke-width': 2.2, 'stroke-dasharray': m.style.dash.map(d => d * 2.6).join(' ') });
    const landed = m.landing && m.motion.events.find(isLanding);
    const end = landed && this.at(drawnPoint(landed[this.frame === 'aboard' ? 'rotating_m' : 'inertial_m'], 0, this.model.radius_m, {}));
    if (end)
      svg(
        'circle',
        { cx: end[0], cy: end[1], r: 5, fill: m.style.open ? this.room.paper : m.style.paper, stroke: m.style.paper, 'stroke-width': 2 },
        this.sheet,
      );
  }

  drawPlain(points) {
    this.line(points, { stroke: PLAIN.paper, 'stroke-width': 1.8, 'stroke-dasharray': '0 4.5', 'stroke-linecap': 'round' });
  }

  draw(time_s) {
    const { model, shown, frame } = this;
    this.moving.replaceChildren();
    if (this.side) return this.drawSide(time_s);
    const turn = frame === 'outside' ? angleAt(model.answer, time_s) : 0;
    for (const person of model.ground.level ? [] : standing(shown, model.ground)) {
      if (frame === 'outside') this.person(person, angleAt(model.answer, person.since_s), '#AAB0AC');
      this.person(person, turn, INK);
    }
    for (const m of shown) drawProps(this, m, time_s);
    for (const m of shown)
      if (!m.tumbles && time_s >= m.starts_s - 1e-6 && m.path.count) {
        const [x, y] = this.at(bodyAt(model, m, frame, time_s, {}));
        svg('circle', { cx: x.toFixed(1), cy: y.toFixed(1), r: 6, fill: m.style.paper, stroke: this.room.paper, 'stroke-width': 1.5 }, this.moving);
      }
  }

  // Where the room thinks that something comes down: a stroke on the deck each, this page's higher.
  drawGuesses({ motion, own, marks }, time_s) {
    const asked = motion !== null && this.model.motions.find(m => m.name === motion);
    if (!asked || this.side) return;
    marks.forEach((along_m, k) => {
      const up_m = (k < own.length ? 46 : 18) / this.px;
      const ends = [0, up_m].map(height_m => deckAt(this.model, this.frame, along_m, height_m, asked.release.axial_m, time_s, {}, asked.floor));
      this.line(
        ends.flatMap(({ x, y }) => [x, y, 0]),
        { stroke: INK, 'stroke-width': 3 },
        this.moving,
      );
    });
  }

  // Outside, a line under it all.
  say(words) {
    this.text(this.moving, [this.rect.width / 2, this.rect.height - 14], words, INK);
  }

  person({ along_m, axial_m, floor }, turn, color) {
    const [foot, head] = [0, PERSON_M].map(height => this.at(this.model.ground.on(along_m, height, axial_m, turn, {}, floor)));
    svg(
      'path',
      { d: `M${foot.map(c => c.toFixed(1)).join(' ')}L${head.map(c => c.toFixed(1)).join(' ')}`, stroke: color, 'stroke-width': 4, 'stroke-linecap': 'round' },
      this.moving,
    );
  }
}

// The names on a line plate: each at its path, moved along it and up or down where another text stands; one that has no room is left out.

const LEADING = 1.2; // from line to line, over the height of the text
const LETTER = 0.54; // a letter's width over its height, about
const ALONG = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95]; // of a path's length: where its name is tried
const PLAIN_ALONG = [0.7, 0.85, 0.55, 0.4]; // of plain gravity's
const LINES = [0, -1, 1, -2, 2, -3, 3, -4, 4];
const EDGE_PX = 8,
  OVER_PX = 12;
const DOT_PX = 8, // half as wide as a body with its edge
  LINE_PX = 2;

function nameAll(plate) {
  const { frame, told: shown, view } = plate;
  const [dots, lines] = [dotsOf(plate), linesOf(plate)];
  // off everything, else over a line but off who and what stands there; in the longest words that have room
  const name = (points, shares, wordings, fill) => {
    const spots = points.length ? shares.map(share => spotOn(plate, points, share)) : [];
    for (const words of wordings)
      for (const off of [[...dots, ...lines], dots]) {
        const spot = placed({ ...plate, taken: [...plate.taken, ...off] }, spots, words);
        if (spot) return plate.taken.push(plate.text(plate.sheet, spot, words, fill));
      }
  };
  for (const m of shown) {
    const far = m.landing && frame === 'aboard' ? [howFar(m.landing.way, view.units, figure), figure(Math.abs(m.landing.way.spinward_m), 'm', view.units)] : [];
    name(m.lines[frame].points, ALONG, [...new Set(far)].map(words => `${m.name}, ${words}`).concat(m.name), m.style.paper);
  }
  if (frame === 'aboard' && view.companion) name(longestPlain(shown), PLAIN_ALONG, [tr('plain gravity')], PLAIN.paper);
}

function spotOn(plate, points, share) {
  const i = 3 * Math.floor(((points.length - 3) / 3) * share);
  const [x, y] = plate.at({ x: points[i], y: points[i + 1] });
  return [x, y - OVER_PX];
}

// The boxes of bodies where they start and end, and of people.
function dotsOf(plate) {
  const { shown, frame, model } = plate;
  const ends = plate.told.flatMap(({ lines }) => {
    const { points } = lines[frame];
    return points.length ? [0, points.length - 3].map(i => plate.at({ x: points[i], y: points[i + 1] })) : [];
  });
  const people = model.ground.level ? [] : standing(shown, model.ground);
  const bars = people.flatMap(({ along_m, axial_m, floor }) =>
    [0, PERSON_M / 2, PERSON_M].map(height => plate.at(model.ground.on(along_m, height, axial_m, 0, {}, floor))),
  );
  return [...ends, ...bars].map(([x, y]) => [x - DOT_PX, y - DOT_PX, x + DOT_PX, y + DOT_PX]);
}

// Small boxes along the paths.
function linesOf(plate) {
  const { told: shown, frame, view } = plate;
  const all = shown.flatMap(({ lines }) => [lines[frame].points, (frame === 'aboard' && view.companion && lines.companion?.points) || []]);
  return all.flatMap(points => {
    const boxes = [];
    for (let i = 0; i < points.length; i += 3) {
      const [x, y] = plate.at({ x: points[i], y: points[i + 1] });
      const last = boxes.at(-1);
      if (!last || Math.hypot(x - last[0] - LINE_PX, y - last[1] - LINE_PX) > 2 * LINE_PX) boxes.push([x - LINE_PX, y - LINE_PX, x + LINE_PX, y + LINE_PX]);
    }
    return boxes;
  });
}

// One name for all of them.
function longestPlain(shown) {
  const reach = points => Math.abs(points.at(-3) - points[0]);
  const lines = shown.map(m => m.lines.companion?.points ?? []).filter(points => points.length);
  return lines.reduce((a, b) => (a.length && reach(a) >= reach(b) ? a : b), []);
}

// Where a text stands, [left, top, right, bottom], kept inside the sheet.
function boxOf({ room: { text }, rect: { width } }, x, y, words) {
  const wide = words.length * LETTER * text;
  const left = Math.max(EDGE_PX, Math.min(width - EDGE_PX - wide, x - wide / 2));
  return [left, y - 0.9 * text, left + wide, y + 0.3 * text];
}

const isFree = ({ taken }, [left, top, right, bottom]) => taken.every(([l, t, r, b]) => left >= r || right <= l || top >= b || bottom <= t);

/** The first of these spots, or the nearest a line or more above or under it, at which no other text stands; null where none is. */
export function placed(plate, spots, words) {
  const { room, rect } = plate;
  for (const [x, y] of spots)
    for (const k of LINES) {
      const at = y + k * LEADING * room.text;
      const box = boxOf(plate, x, at, words);
      if (at > room.highest && at < rect.height - 4 && box[2] <= rect.width - EDGE_PX && isFree(plate, box)) return [x, at];
    }
  return null;
}

/** The height nearest to y at which no other text stands. */
export function apart(plate, x, y, words) {
  return placed(plate, [[x, y]], words)?.[1] ?? y;
}
