// The handle of the catcher on a stage: dragged along the deck, with Alt also across it, or moved by the arrows. It writes the aim; the server answers.

import { tr } from '../../state/language.js';
import { button } from '../overlay.js';
import { meetPlane, ray } from '../framing.js';
import { turnAt } from '../model.js';
import { metres } from '../spoken.js';

const FACING = 0.3; // how much an eye must look along the axis for a drag in the plane of rotation
const STEP_M = 0.1,
  LARGE = 10;
const AXIS = [0, 0, 1];

export class Catcher {
  constructor(half, store, hold) {
    Object.assign(this, { half, store, hold, dragging: false });
    this.grip = button(half.dom.box, 'catcher-grip');
    this.grip.hidden = true;
    this.grip.addEventListener('pointerdown', event => this.grab(event));
    this.grip.addEventListener('pointermove', event => this.drag(event));
    for (const type of ['pointerup', 'pointercancel']) this.grip.addEventListener(type, () => this.drop());
    this.grip.addEventListener('keydown', event => this.key(event));
  }

  hide() {
    this.grip.hidden = true;
  }

  // Over the hands; `stands`: of what moves by itself there is nothing to drag.
  place(hands, stands) {
    const { half } = this,
      px = stands && hands ? half.project(hands) : null,
      { width, height } = half.rect;
    const seen = px && px[0] > 0 && px[0] < width && px[1] > 0 && px[1] < height;
    this.grip.hidden = !seen && !this.dragging;
    if (!seen) return;
    this.grip.style.transform = `translate(${px[0] - 22}px, ${px[1] - 22}px)`;
    const { to } = this.store.shot.aim;
    this.grip.setAttribute(
      'aria-label',
      tr('Catcher, {place} along the deck. Left and right move along it, up and down the hands, with Alt across; Shift for a metre.', {
        place: metres(to.along_m, this.store.view.units),
      }),
    );
  }

  grab(event) {
    this.grip.setPointerCapture(event.pointerId);
    this.dragging = true;
    this.moved = false;
    this.hold(true);
    event.preventDefault();
    this.grip.focus();
  }

  drag(event) {
    if (!this.dragging) return;
    const box = this.half.dom.box.getBoundingClientRect();
    const to = this.placeAt(event.clientX - box.left, event.clientY - box.top, event.altKey);
    if (!to) return;
    this.moved = true;
    this.write(to, true);
  }

  drop() {
    if (!this.dragging) return;
    this.dragging = false;
    if (this.moved) this.write(this.store.shot.aim.to, false);
    this.hold(false);
  }

  // In the plane of rotation through the hands, where the eye sees it open; else where the deck is met.
  placeAt(x, y, across) {
    const { half, store } = this,
      { to } = store.shot.aim,
      { model, eye } = half,
      time_s = half.time_s ?? 0,
      floor = to.floor ?? 0,
      turn = turnAt(model, half.frame, time_s);
    let point = null;
    if (!across && !model.ground.level && Math.abs(eye.axes.back[2]) > FACING) {
      const hands = model.ground.at(to.along_m, to.height_m, to.axial_m, turn, {}, floor),
        off = meetPlane(ray(eye, half.rect, x, y), hands, AXIS);
      point = off && { x: hands.x + off[0], y: hands.y + off[1], z: hands.z + off[2] };
    } else point = half.onDeck(x, y, time_s);
    const under = point && model.ground.under(point, turn, floor);
    if (!under) return null;
    return {
      ...to,
      along_m: this.nearest(under.along_m),
      axial_m: across || model.ground.level || Math.abs(eye.axes.back[2]) <= FACING ? under.axial_m : to.axial_m,
    };
  }

  // Round the axis, the same place counted so that it is nearest to the thrower.
  nearest(along_m) {
    const { half, store } = this,
      { ground } = half.model;
    if (ground.floors) return along_m;
    const turn_m = 2 * ground.reach().along_m,
      from = half.model.motions.find(m => m.name === store.shot.aim.motion)?.release.along_m ?? 0;
    return along_m - turn_m * Math.round((along_m - from) / turn_m);
  }

  write(to, live) {
    const places = this.half.model.radius_m > 20 ? 1 : 3,
      round = value => Number(value.toFixed(places));
    const rounded = live ? { ...to, along_m: round(to.along_m), axial_m: round(to.axial_m) } : to;
    this.store.setShot({ aim: { ...this.store.shot.aim, to: rounded } }, { live });
  }

  key(event) {
    if (event.ctrlKey || event.metaKey) return;
    const along = { ArrowLeft: -1, ArrowRight: 1 }[event.key],
      up = { ArrowDown: -1, ArrowUp: 1 }[event.key];
    if (!along && !up) return;
    const step = STEP_M * (event.shiftKey ? LARGE : 1),
      { to } = this.store.shot.aim;
    const moved = along
      ? { along_m: to.along_m + along * step }
      : event.altKey
        ? { axial_m: to.axial_m + up * step }
        : { height_m: Math.max(0, to.height_m + (up * step) / 2) };
    const tidy = Object.fromEntries(Object.entries(moved).map(([key, value]) => [key, Number(value.toFixed(3))]));
    this.store.setShot({ aim: { ...this.store.shot.aim, to: { ...to, ...tidy } } });
    event.preventDefault();
    event.stopPropagation();
  }
}
