// Labels are HTML over the canvas. Each asks for a few anchors in order of liking; spots.js finds one that meets nothing. Far from its
// anchor a label has a line to it, and one that can find no room gives way. Nothing is read from the page while the clock runs.

import { Spots } from './spots.js';

const PADDING = [10, 3]; // of .stage-label, both sides together

export class Labels {
  constructor(layer) {
    this.layer = layer;
    this.pool = new Map();
    this.all = []; // of the pool
    this.round = 0; // another one each time labels are placed
    this.widths = new Map(); // figures are as wide as each other, so a text is measured once
    this.spots = new Spots();
    this.ruler = document.createElement('canvas').getContext('2d');
    this.remeasure();
  }

  // `wanted` [{key, text, strong, color, points: [[x, y]…], gap, centred, below, shy}], first come first placed. `taken` rectangles are
  // left free, and the paths counted in `crowds` where that can be.
  place(wanted, { width, height, taken, crowds }) {
    const { spots } = this;
    spots.begin(width, height, crowds);
    for (const { x, y, w, h } of taken) spots.take(x, y, w, h);
    this.round += 1;
    for (const ask of wanted) {
      const label = this.label(ask);
      const w = label.size[0],
        h = label.size[1];
      const spot = spots.find(ask, w, h, label.last, label.cost);
      label.show(spot);
      if (spot) spots.take(spot.x, spot.y, w, h);
    }
    for (const label of this.all) if (label.asked !== this.round) label.show(null);
    this.unsettled = false;
  }

  label(ask) {
    let label = this.pool.get(ask.key);
    if (!label) {
      this.pool.set(ask.key, (label = new Label(this.layer)));
      this.all.push(label);
    }
    label.asked = this.round;
    if (label.say(ask)) label.size[0] = Math.ceil(this.widthOf(label.text, Boolean(label.color)) + this.widthOf(label.strong, true) + PADDING[0]);
    label.size[1] = this.high;
    return label;
  }

  // Measured on a canvas: asking the page would lay all of it out anew.
  widthOf(text, bold) {
    if (!text) return 0;
    const key = (bold ? 'b' : 'p') + text.replace(/\d/g, '0');
    let width = this.widths.get(key);
    if (width === undefined) {
      this.ruler.font = `${bold ? 600 : 400} ${this.font}`;
      width = this.ruler.measureText(key.slice(1)).width;
      if (this.widths.size > 500) this.widths.clear();
      this.widths.set(key, width);
    }
    return width;
  }

  remeasure() {
    const { fontSize, fontFamily, lineHeight } = getComputedStyle(this.layer);
    this.font = `${fontSize} ${fontFamily}`;
    this.px = parseFloat(fontSize);
    this.high = parseFloat(lineHeight) + PADDING[1];
    this.widths.clear();
    this.forget();
    for (const label of this.pool.values()) label.text = null;
  }

  // Where labels stood: another picture.
  forget() {
    this.unsettled = true; // whatever asks for them next has them placed
    for (const label of this.pool.values()) label.last = -1;
  }
}

class Label {
  constructor(layer) {
    this.line = make(layer, 'div', 'stage-leader');
    this.element = make(layer, 'div', 'stage-label');
    this.plain = make(this.element, 'span');
    this.bold = make(this.element, 'b');
    Object.assign(this, { text: null, strong: null, color: null, last: -1, cost: 0, size: [0, 0], hidden: false, led: true, lead: null, asked: 0 });
    this.show(null);
  }

  // Whether it says something new.
  say({ text = '', strong = '', color = '' }) {
    if (text === this.text && strong === this.strong && color === this.color) return false;
    if (text !== this.text) this.plain.textContent = text;
    if (strong !== this.strong) this.bold.textContent = strong;
    if (color !== this.color) {
      this.element.style.color = color;
      this.element.style.fontWeight = color ? '600' : '';
    }
    Object.assign(this, { text, strong, color });
    return true;
  }

  show(spot) {
    const hidden = !spot;
    if (this.hidden !== hidden) this.element.hidden = this.hidden = hidden;
    this.last = spot ? spot.key : -1;
    if (spot) {
      this.cost = spot.cost;
      const x = Math.round(spot.x),
        y = Math.round(spot.y);
      if (x !== this.x || y !== this.y) this.element.style.transform = `translate(${x}px, ${y}px)`;
      this.x = x;
      this.y = y;
    }
    this.leadTo(spot?.led ? spot : null);
  }

  // The line from the label's nearest side to what it names.
  leadTo(spot) {
    const led = Boolean(spot);
    if (led !== this.led) this.line.hidden = !led;
    this.led = led;
    this.lead = null;
    if (!led) return;
    const [w, h] = this.size;
    const from = [Math.max(this.x, Math.min(this.x + w, spot.px)), Math.max(this.y, Math.min(this.y + h, spot.py))];
    this.lead = [...from, spot.px, spot.py];
    const [dx, dy] = [spot.px - from[0], spot.py - from[1]];
    this.line.style.transform = `translate(${from[0].toFixed(1)}px, ${from[1].toFixed(1)}px) rotate(${Math.atan2(dy, dx).toFixed(3)}rad) scaleX(${Math.hypot(dx, dy).toFixed(1)})`;
  }
}

function make(parent, tag, className = '') {
  const element = document.createElement(tag);
  if (className) element.className = className;
  parent.append(element);
  return element;
}
