// Guesses of where something comes down: a chalk line across the deck each, those of this page with a pennant and a handle that is dragged or moved
// by the arrows; and, once the landing has been seen, the middle half of them as a rule along the deck.

import { tr } from '../state/language.js';
import { deckAt } from './model.js';
import { button } from './overlay.js';
import { Ribbon } from './ribbon.js';
import { figure, sided } from './spoken.js';

const NONE = Object.freeze([]);
const CHALK = '#F4F1E4';
const WIDE = 0.09, // of the span: half a line of this page; others' are half as wide
  POLE = 0.11, // its pennant's
  FLAG = 0.035,
  LIFT_M = 0.015;
const STEP_M = 0.1;
const place = { x: 0, y: 0, z: 0 };

export class GuessMarks {
  // `first()`: the stage whose handles are shown: one for each mark is enough.
  constructor(shared, half, store, first) {
    Object.assign(this, { half, store, first, handles: [], labels: [], dragged: -1 });
    const ribbon = look => new Ribbon(shared, { color: CHALK, depth: false, order: 9, ...look });
    this.lines = ribbon({ width: 4.5, casing: 1.7 });
    this.strokes = ribbon({ width: 3, alpha: 0.8, casing: 1.5 });
    this.rule = ribbon({ width: 9, alpha: 0.55 });
    for (const { material } of this.ribbons()) material.uniforms.uNow = { value: 1e9 };
    half.group.add(...this.ribbons().map(({ mesh }) => mesh));
  }

  ribbons() {
    return [this.lines, this.strokes, this.rule];
  }

  get guesses() {
    return this.store.guesses;
  }

  // The labels it asks for.
  update(time_s) {
    const { guesses, half } = this;
    for (const { mesh } of this.ribbons()) mesh.visible = false;
    if (guesses.motion === null || half.model.tumbling) return this.hide();
    this.time_s = time_s;
    const asked = half.model.motions.find(m => m.name === guesses.motion);
    if (!asked) return this.hide();
    const { span_m } = half.eye;
    this.floor = asked.floor;
    this.axial_m = asked.release.axial_m;
    const across = (along_m, half_m) => this.points([along_m, 0, -half_m], [along_m, 0, half_m]);
    const own = guesses.own.flatMap(along_m => [across(along_m, WIDE * span_m), ...this.pennant(along_m, span_m)]);
    if (own.length) this.lines.set(own);
    const others = guesses.marks.slice(guesses.own.length);
    if (others.length) this.strokes.set(others.map(along_m => across(along_m, 0.5 * WIDE * span_m)));
    if (guesses.revealed && guesses.spread && guesses.marks.length > 2) this.rule.set([this.middleHalf(guesses.spread, WIDE * span_m)]);
    for (const one of this.ribbons()) one.uniforms.uWidth.value = one.width * Math.sqrt(half.grown);
    this.putHandles();
    return this.labelled(span_m);
  }

  // Places [along, height, axial from the flight] as drawn points in a row.
  points(...places) {
    const { half, axial_m, time_s, floor } = this;
    return {
      points: places.flatMap(([along_m, height_m, off_m]) => {
        const { x, y, z } = half.drawnAt(deckAt(half.model, half.frame, along_m, LIFT_M + height_m, axial_m + off_m, time_s, place, floor));
        return [x, y, z];
      }),
    };
  }

  pennant(along_m, span_m) {
    const [high, low] = [POLE * span_m, (POLE - 0.6 * FLAG) * span_m];
    const tip = along_m + FLAG * span_m;
    return [
      this.points([along_m, 0, 0], [along_m, high, 0]),
      this.points([along_m, high, 0], [tip, (high + low) / 2, 0], [along_m, low, 0], [along_m, high, 0]),
    ];
  }

  middleHalf({ from_m, to_m }, off_m) {
    const long = this.guesses.spinward(to_m) - this.guesses.spinward(from_m);
    const parts = 24;
    return this.points(...Array.from({ length: parts + 1 }, (_, k) => [from_m + (long * k) / parts, 0, off_m]));
  }

  labelled(span_m) {
    const { guesses, half, labels } = this;
    guesses.own.forEach((along_m, k) => {
      const [x, y, z] = this.points([along_m, POLE * span_m, 0]).points;
      labels[k] ??= { key: `guess ${k}`, strong: '', at: [{}], gap: 8 };
      labels[k].strong = figure(Math.abs(guesses.spinward(along_m)), 'm', half.view.units, 1);
      labels[k].at[0] = { x, y, z };
    });
    labels.length = guesses.own.length;
    return labels;
  }

  putHandles() {
    const { guesses, half, handles } = this;
    const count = guesses.open && this.first() === half ? guesses.own.length : 0;
    while (handles.length < count) handles.push(this.handle(handles.length));
    for (let k = 0; k < handles.length; k += 1) {
      const handle = handles[k],
        px = k < count ? half.project({ ...pointAt(this.points([guesses.own[k], 0, 0]).points) }) : null;
      handle.hidden = k >= count;
      if (!px) continue;
      handle.style.transform = `translate(${Math.round(px[0]) - 22}px, ${Math.round(px[1]) - 22}px)`;
      const along_m = guesses.spinward(guesses.own[k]);
      handle.setAttribute('aria-valuenow', along_m.toFixed(2));
      handle.setAttribute('aria-valuetext', sided(figure(Math.abs(along_m), 'm', half.view.units, 1), along_m));
    }
  }

  handle(which) {
    const handle = button(this.half.dom.box, 'guess-handle');
    handle.setAttribute('role', 'slider');
    handle.setAttribute('aria-label', tr('Guess {number}', { number: which + 1 }));
    const by = step_m => this.guesses.move(which, this.guesses.own[which] + step_m);
    handle.addEventListener('keydown', event => {
      const way = { ArrowRight: 1, ArrowUp: 1, '+': 1, '=': 1, ArrowLeft: -1, ArrowDown: -1, '-': -1 }[event.key];
      if (way) by(way * STEP_M * (event.shiftKey ? 10 : 1));
      else if (event.key === 'Delete' || event.key === 'Backspace') this.guesses.drop(which);
      else return;
      event.preventDefault();
      event.stopPropagation();
    });
    handle.addEventListener('pointerdown', event => {
      handle.setPointerCapture(event.pointerId);
      this.dragged = which;
      event.stopPropagation();
    });
    handle.addEventListener('pointermove', event => {
      if (this.dragged !== which) return;
      const box = this.half.dom.view.getBoundingClientRect();
      const along_m = alongAt(this.half, event.clientX - box.left, event.clientY - box.top, this.time_s);
      if (along_m !== null) this.guesses.move(which, along_m);
    });
    for (const type of ['pointerup', 'pointercancel'])
      handle.addEventListener(type, () => {
        this.dragged = -1;
      });
    return handle;
  }

  hide() {
    for (const handle of this.handles) handle.hidden = true;
    return NONE;
  }
}

const pointAt = ([x, y, z]) => ({ x, y, z });

/** Where along the deck a px of a stage lies, or null. */
export function alongAt(half, x, y, time_s) {
  const hit = half.onDeck(x, y, time_s);
  return hit ? half.alongOf(hit, time_s) : null;
}
