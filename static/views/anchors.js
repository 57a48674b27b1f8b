// What labels are placed by, in px of a stage: their anchors, the rectangles that are taken, and what moves. Kept from frame to frame, so
// that labels are placed anew only when something has moved by a pixel.

const FIRST = 17, // of a sum over whole numbers in order
  NEXT = 31,
  SMALL = 0x3fffffff; // of whole numbers that take no room of their own
const px = [0, 0];

export class Anchors {
  constructor() {
    this.known = new Map();
    this.sum = 0;
    this.order = [];
  }

  // Gives each of `wanted` its `points` [[x, y]…], those before the eye. Whether anything is otherwise than it was.
  read(wanted, taken, things, half) {
    let moved = wanted.length !== this.order.length,
      sum = FIRST;
    for (let i = 0; i < wanted.length; i += 1) {
      const anchor = this.of(wanted[i]);
      moved = anchor.read(wanted[i], half) || moved || this.order[i] !== anchor;
      this.order[i] = anchor;
    }
    this.order.length = wanted.length;
    for (let i = 0; i < taken.length; i += 1) {
      const { x, y, w, h } = taken[i];
      sum = added(added(added(added(sum, x), y), w), h);
    }
    for (let i = 0; i < things.length; i += 1) if (half.projectInto(things[i], px)) sum = added(added(sum, px[0]), px[1]);
    moved ||= sum !== this.sum;
    this.sum = sum;
    return moved;
  }

  of({ key }) {
    let anchor = this.known.get(key);
    if (!anchor) this.known.set(key, (anchor = new Anchor()));
    return anchor;
  }
}

class Anchor {
  constructor() {
    Object.assign(this, { text: null, strong: null, color: null, points: [], sum: 0 });
  }

  read(label, half) {
    const { points } = this;
    let count = 0,
      sum = FIRST;
    for (let i = 0; i < label.at.length; i += 1) {
      points[count] ??= [0, 0];
      if (!half.projectInto(label.at[i], points[count])) continue;
      sum = added(added(sum, points[count][0]), points[count][1]);
      count += 1;
    }
    points.length = count;
    label.points = points;
    const same = sum === this.sum && label.text === this.text && label.strong === this.strong && label.color === this.color;
    if (!same) Object.assign(this, { text: label.text, strong: label.strong, color: label.color, sum });
    return !same;
  }
}

const added = (sum, value) => (NEXT * sum + Math.round(value)) & SMALL;
