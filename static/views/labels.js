// Labels are HTML over the canvas. Each asks for a few anchors in order of liking; a small rule finds the offset that meets
// no other label, no button and no path, inside its stage. A label that can find no room gives way.

const MARGIN = 8;
const PADDING = [10, 3]; // of .stage-label, both sides together
const STAY = 30; // how much better another spot must be before a label moves
// biome-ignore format: round the anchor
const RING = [[0, -1], [0, 1], [1, 0], [-1, 0], [0.8, -1], [-0.8, -1], [0.8, 1], [-0.8, 1]];
const FARTHER_PX = 22; // a second ring, where the first has no room
const SHY = 2; // points of a path that a shy label may hide before it gives way
const MEETS = 200; // cost of meeting another label or a button

export class Labels {
  constructor(layer) {
    this.layer = layer;
    this.pool = new Map();
    this.ruler = document.createElement('canvas').getContext('2d');
    this.remeasure();
  }

  // `wanted` [{key, text, strong, color, points: [[x, y]…], gap, centred}], first come first placed. `taken` rectangles and
  // `paths` points in px of the stage are to be left free.
  place(wanted, { width, height, taken, paths }) {
    const rects = [...taken];
    const used = new Set();
    for (const ask of wanted) {
      const label = this.label(ask);
      used.add(ask.key);
      const spot = label.best(ask, rects, paths, width, height);
      label.show(spot);
      if (spot) rects.push(spot.rect);
    }
    for (const [key, label] of this.pool) if (!used.has(key)) label.show(null);
  }

  label(ask) {
    if (!this.pool.has(ask.key)) this.pool.set(ask.key, new Label(this.layer));
    const label = this.pool.get(ask.key);
    label.say(ask, (text, bold) => this.widthOf(text, bold));
    label.size[1] = this.high;
    return label;
  }

  // Widths are measured on a canvas: asking the page would lay all of it out anew.
  widthOf(text, bold) {
    this.ruler.font = `${bold ? 600 : 400} ${this.font}`;
    return this.ruler.measureText(text).width;
  }

  remeasure() {
    const { fontSize, fontFamily, lineHeight } = getComputedStyle(this.layer);
    this.font = `${fontSize} ${fontFamily}`;
    this.high = parseFloat(lineHeight) + PADDING[1];
    for (const label of this.pool.values()) label.said = null;
  }
}

class Label {
  constructor(layer) {
    this.element = document.createElement('div');
    this.element.className = 'stage-label';
    this.plain = this.element.appendChild(document.createElement('span'));
    this.bold = this.element.appendChild(document.createElement('b'));
    layer.append(this.element);
    this.last = null;
    this.size = [0, 0];
  }

  say({ text = '', strong = '', color = '' }, widthOf) {
    const said = `${text}|${strong}|${color}`;
    if (said === this.said) return;
    this.said = said;
    this.plain.textContent = text;
    this.bold.textContent = strong;
    this.element.style.color = color;
    this.element.style.fontWeight = color ? '600' : '';
    this.size[0] = Math.ceil(widthOf(text, Boolean(color)) + widthOf(strong, true) + PADDING[0]);
  }

  best(ask, rects, paths, width, height) {
    let best = null;
    const offsets = ask.centred ? [[0, 0], ...RING] : ask.below ? [RING[1], ...RING] : RING;
    const gap = ask.gap ?? 10;
    ask.points.forEach((point, a) =>
      [gap, gap + FARTHER_PX].forEach((off, far) =>
        offsets.forEach((offset, o) => {
          const key = `${a} ${far} ${o}`;
          const rect = this.rect(point, offset, off, width, height);
          const moved = Math.hypot(rect.wantX - rect.x, rect.wantY - rect.y);
          const met = rects.filter(r => meets(rect, r)).length;
          const hides = covered(rect, paths);
          const cost = 12 * a + 3 * o + 30 * far + 1.5 * moved + MEETS * met + 14 * hides - (key === this.last ? STAY : 0);
          if (!best || cost < best.cost) best = { cost, rect, key, free: met === 0 && !(ask.shy && hides > SHY) };
        }),
      ),
    );
    this.last = best?.key;
    return best?.free ? best : null;
  }

  rect([x, y], [ox, oy], gap, width, height) {
    const [w, h] = this.size;
    const wantX = x - w / 2 + ox * (gap + w / 2);
    const wantY = y - h / 2 + oy * (gap + h / 2);
    return { wantX, wantY, x: clamp(wantX, MARGIN, width - w - MARGIN), y: clamp(wantY, MARGIN, height - h - MARGIN), w, h };
  }

  show(spot) {
    const hidden = !spot;
    if (this.element.hidden !== hidden) this.element.hidden = hidden;
    if (!spot) return;
    const at = `translate(${Math.round(spot.rect.x)}px, ${Math.round(spot.rect.y)}px)`;
    if (at !== this.at) this.element.style.transform = at;
    this.at = at;
  }
}

function meets(a, b) {
  return a.x < b.x + b.w + 4 && b.x < a.x + a.w + 4 && a.y < b.y + b.h + 2 && b.y < a.y + a.h + 2;
}

function covered(r, paths) {
  let count = 0;
  for (let i = 0; i < paths.length; i += 2) {
    if (paths[i] > r.x - 4 && paths[i] < r.x + r.w + 4 && paths[i + 1] > r.y - 4 && paths[i + 1] < r.y + r.h + 4) count += 1;
  }
  return Math.min(count, 12);
}

function clamp(value, least, most) {
  return Math.max(least, Math.min(most, value));
}
