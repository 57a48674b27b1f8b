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
    this.lastAsked = Array.from({ length: 6 }, () => ({ text: '', bold: false, width: 0 }));
    this.asks = 0;
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
    for (let k = 0; k < taken.length; k += 1) spots.take(taken[k].x, taken[k].y, taken[k].w, taken[k].h);
    this.round += 1;
    for (let k = 0; k < wanted.length; k += 1) {
      const ask = wanted[k],
        label = this.label(ask);
      const w = label.size[0],
        h = label.size[1];
      const spot = spots.find(ask, w, h, label.last, label.cost);
      label.show(spot);
      if (spot) spots.take(spot.x, spot.y, w, h);
    }
    for (let k = 0; k < this.all.length; k += 1) if (this.all[k].asked !== this.round) this.all[k].show(null);
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
    for (let k = 0; k < this.lastAsked.length; k += 1) {
      const last = this.lastAsked[k];
      if (last.bold === bold && alike(last.text, text)) return last.width;
    }
    const key = (bold ? 'b' : 'p') + text.replace(/\d/g, '0');
    let width = this.widths.get(key);
    if (width === undefined) {
      this.ruler.font = `${bold ? 600 : 400} ${this.font}`;
      width = this.ruler.measureText(key.slice(1)).width;
      if (this.widths.size > 500) this.widths.clear();
      this.widths.set(key, width);
    }
    const last = this.lastAsked[(this.asks += 1) % this.lastAsked.length];
    Object.assign(last, { text, bold, width });
    return width;
  }

  remeasure() {
    const { fontSize, fontFamily, lineHeight } = getComputedStyle(this.layer);
    this.font = `${fontSize} ${fontFamily}`;
    this.px = parseFloat(fontSize);
    this.high = parseFloat(lineHeight) + PADDING[1];
    this.widths.clear();
    for (const last of this.lastAsked) last.text = '';
    this.forget();
    for (const label of this.pool.values()) label.text = null;
  }

  // Where labels stood: another picture.
  forget() {
    this.unsettled = true; // whatever asks for them next has them placed
    for (const label of this.pool.values()) label.last = -1;
  }
}

// Whether two texts are the same but for their figures, which are as wide as each other.
function alike(a, b) {
  if (a.length !== b.length) return false;
  for (let k = 0; k < a.length; k += 1) {
    const one = a.charCodeAt(k),
      other = b.charCodeAt(k);
    if (one !== other && !(isFigure(one) && isFigure(other))) return false;
  }
  return true;
}

const isFigure = code => code >= 48 && code <= 57;

class Label {
  constructor(layer) {
    this.line = make(layer, 'div', 'stage-leader');
    this.element = make(layer, 'div', 'stage-label');
    this.plain = make(this.element, 'span');
    this.bold = make(this.element, 'b');
    Object.assign(this, { text: null, strong: null, color: null, last: -1, cost: 0, size: [0, 0], hidden: false, led: true, lead: null, asked: 0 });
    this.leads = [0.5, 0.5, 0.5, 0.5]; // that of its line, while it has one
    this.tenths = [0, 0, 0, 0]; // of a px, as it was drawn last
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
    this.lead = led ? this.leads : null;
    if (!led) return;
    const { leads, tenths, size } = this;
    leads[0] = Math.max(this.x, Math.min(this.x + size[0], spot.px));
    leads[1] = Math.max(this.y, Math.min(this.y + size[1], spot.py));
    leads[2] = spot.px;
    leads[3] = spot.py;
    let same = true;
    for (let k = 0; k < 4; k += 1) {
      const tenth = Math.round(10 * leads[k]);
      same &&= tenth === tenths[k];
      tenths[k] = tenth;
    }
    if (same) return;
    const dx = leads[2] - leads[0],
      dy = leads[3] - leads[1];
    this.line.style.transform = `translate(${leads[0].toFixed(1)}px, ${leads[1].toFixed(1)}px) rotate(${Math.atan2(dy, dx).toFixed(3)}rad) scaleX(${Math.hypot(dx, dy).toFixed(1)})`;
  }
}

function make(parent, tag, className = '') {
  const element = document.createElement(tag);
  if (className) element.className = className;
  parent.append(element);
  return element;
}
