// Where labels have room: a spot meets no other label and no button, hides as little of the paths as can be, and lies within its
// stage. Numbers only: no elements, and nothing is made anew while the clock runs.

const BAND = 32; // px high: what is taken is looked up by the bands it lies in, so that a spot is held against its neighbours alone
const MARGIN = 8;
const STAY = 30; // how much better another spot must be before a label moves
const DRIFT = 20; // how much worse its spot may become before another is looked for
const MEETS = [4, 2]; // px kept free between two labels, across and upright
const CELL = 8;
const MOST_HID = 12;
const SHY = 2; // cells of a path that a shy label may hide before it gives way
const OFF_STAGE = 4; // px over the edge that a point may be and still be labelled
// biome-ignore format: round the anchor
const RING = [[0, -1], [0, 1], [1, 0], [-1, 0], [0.8, -1], [-0.8, -1], [0.8, 1], [-0.8, 1]];
const CENTRE_FIRST = [[0, 0], ...RING];
const BELOW_FIRST = [[0, 1], ...RING];
const FARTHER = [0, 22, 48, 84, 132]; // px from the anchor, and what each costs
const FAR_COST = [0, 30, 70, 110, 150];
const LED_FROM = 2; // of these on, a line leads from the label to its anchor

// How many points of paths lie where: counted in cells.
export class Crowd {
  constructor() {
    this.cells = new Uint8Array(0);
    this.columns = this.rows = 0;
  }

  clear(width, height) {
    this.columns = Math.ceil(width / CELL) + 1;
    this.rows = Math.ceil(height / CELL) + 1;
    if (this.cells.length < this.columns * this.rows) this.cells = new Uint8Array(this.columns * this.rows);
    else this.cells.fill(0);
  }

  add(x, y) {
    const column = Math.floor(x / CELL),
      row = Math.floor(y / CELL);
    if (column >= 0 && row >= 0 && column < this.columns && row < this.rows) this.cells[row * this.columns + column] = 1;
  }

  // Every cell from one point to the next.
  line(x0, y0, x1, y1) {
    const steps = Math.min(400, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / CELL));
    for (let k = 1; k <= steps; k += 1) this.add(x0 + ((x1 - x0) * k) / steps, y0 + ((y1 - y0) * k) / steps);
  }

  under(x, y, w, h) {
    const left = Math.max(0, Math.floor((x - 2) / CELL)),
      right = Math.min(this.columns - 1, Math.floor((x + w + 2) / CELL)),
      top = Math.max(0, Math.floor((y - 2) / CELL)),
      bottom = Math.min(this.rows - 1, Math.floor((y + h + 2) / CELL));
    let count = 0;
    for (let row = top; row <= bottom; row += 1) for (let column = left; column <= right; column += 1) count += this.cells[row * this.columns + column];
    return count;
  }
}

export class Spots {
  constructor() {
    this.taken = new Float64Array(4 * 64);
    this.bands = []; // where in `taken` those stand that lie in each
    this.filled = new Int32Array(0); // how many they are
    this.best = { x: 0.5, y: 0.5, key: -1, cost: 0.5, led: false, px: 0.5, py: 0.5 };
    this.one = { ...this.best };
  }

  // `crowds`: of the paths, and of what moves.
  begin(width, height, crowds) {
    this.width = width;
    this.height = height;
    this.crowds = crowds;
    this.count = 0;
    for (let b = this.bands.length; b <= height / BAND; b += 1) this.bands.push(new Int32Array(16));
    if (this.filled.length < this.bands.length) this.filled = new Int32Array(this.bands.length);
    else this.filled.fill(0);
  }

  take(x, y, w, h) {
    if (4 * this.count === this.taken.length) this.taken = Float64Array.from({ length: 2 * this.taken.length }, (_, i) => this.taken[i] ?? 0);
    const at = 4 * this.count;
    this.taken[at] = x;
    this.taken[at + 1] = y;
    this.taken[at + 2] = w;
    this.taken[at + 3] = h;
    for (let b = this.band(y - MEETS[1]); b <= this.band(y + h + MEETS[1]); b += 1) this.put(b, at);
    this.count += 1;
  }

  put(b, at) {
    let band = this.bands[b];
    const k = this.filled[b];
    if (k === band.length) {
      band = new Int32Array(2 * k);
      band.set(this.bands[b]);
      this.bands[b] = band;
    }
    band[k] = at;
    this.filled[b] = k + 1;
  }

  // A spot for a label w × h at one of its `points` [[x, y]…], in order of liking, or null; `last` and `cost` are those of the spot it
  // had. What is given is overwritten by the next call.
  find({ points, gap = 10, centred = false, below = false, shy = false }, w, h, last, cost) {
    const ring = centred ? CENTRE_FIRST : below ? BELOW_FIRST : RING;
    const { best } = this;
    best.key = -1;
    best.cost = Infinity;
    if (last >= 0 && last < 256 * points.length) {
      const a = last >> 8,
        far = (last >> 4) & 15,
        o = last & 15;
      if (this.weigh(points[a], a, far, o, ring, gap, w, h, shy) && this.one.cost <= cost + DRIFT) return this.keep();
    }
    for (let a = 0; a < points.length; a += 1)
      for (let far = 0; far < FARTHER.length; far += 1) {
        if (12 * a + FAR_COST[far] >= best.cost) break; // no spot that far is better
        for (let o = 0; o < ring.length; o += 1)
          if (this.weigh(points[a], a, far, o, ring, gap, w, h, shy)) {
            if (this.one.key === last) this.one.cost -= STAY;
            if (this.one.cost < best.cost) this.keep();
          }
      }
    return best.key < 0 ? null : best;
  }

  keep() {
    const { best, one } = this;
    best.x = one.x;
    best.y = one.y;
    best.key = one.key;
    best.cost = one.cost;
    best.led = one.led;
    best.px = one.px;
    best.py = one.py;
    return best;
  }

  // Whether the spot is free; what it costs, and where it is.
  weigh(point, a, far, o, ring, gap, w, h, shy) {
    const px = point[0],
      py = point[1];
    const { one, width, height } = this;
    if (px < -OFF_STAGE || py < -OFF_STAGE || px > width + OFF_STAGE || py > height + OFF_STAGE) return false;
    const off = gap + FARTHER[far];
    const wantX = px - w / 2 + ring[o][0] * (off + w / 2);
    const wantY = py - h / 2 + ring[o][1] * (off + h / 2);
    const x = clamp(wantX, MARGIN, width - w - MARGIN);
    const y = clamp(wantY, MARGIN, height - h - MARGIN);
    if (x < 0 || y < 0 || this.meets(x, y, w, h)) return false;
    let hid = 0;
    for (let k = 0; k < this.crowds.length; k += 1) hid += this.crowds[k].under(x, y, w, h);
    hid = Math.min(MOST_HID, hid);
    if (shy && hid > SHY) return false;
    one.key = (a << 8) | (far << 4) | o;
    one.cost = 12 * a + 3 * o + FAR_COST[far] + 1.5 * Math.hypot(wantX - x, wantY - y) + 14 * hid;
    one.x = x;
    one.y = y;
    one.led = far >= LED_FROM;
    one.px = px;
    one.py = py;
    return true;
  }

  meets(x, y, w, h) {
    const { taken, bands, filled } = this;
    for (let b = this.band(y); b <= this.band(y + h); b += 1)
      for (let k = 0; k < filled[b]; k += 1) {
        const i = bands[b][k];
        if (
          x < taken[i] + taken[i + 2] + MEETS[0] &&
          taken[i] < x + w + MEETS[0] &&
          y < taken[i + 1] + taken[i + 3] + MEETS[1] &&
          taken[i + 1] < y + h + MEETS[1]
        )
          return true;
      }
    return false;
  }

  // The one in which a height lies; what is over the edge lies in the last.
  band(y) {
    return clamp(Math.floor(y / BAND), 0, this.bands.length - 1);
  }
}

function clamp(value, least, most) {
  return Math.max(least, Math.min(most, value));
}
