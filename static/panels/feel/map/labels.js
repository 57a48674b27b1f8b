// Where the words on the lines of the map stand: beside their line, away from other words, and as clear of other lines as can be.

const LETTER_PX = 6.2; // of a letter, about
const HALF_PX = 7; // of the height of the words
const OFF_PX = 8; // from the line to the middle of the words
const CLEAR_PX = 14; // from the middle of the words to another line: more is no better
const STEPS = 24;

/** A place for words `text` along the line from [x, y] to [x, y]: {x, y, turn_deg, spots}, the middle of the words and how they
 * are turned; null where there is none. `side` 1: above the line, −1: below it, 0: on it; `taken`: spots of words that stand
 * already; `lines`: all lines; `box`: what the words keep inside. */
export function placeLabel(text, line, { side, taken, lines, box }) {
  const half = halfOf(text),
    others = lines.filter(other => other !== line);
  let best = null;
  for (const place of candidates(line, half, side)) {
    const { spots } = place;
    if (!spots.every(spot => within(spot, box)) || touches(spots, taken)) continue;
    const clear = Math.min(CLEAR_PX, ...others.flatMap(other => spots.map(spot => distance(spot, other))));
    if (!best || clear > best.clear + 0.5) best = { ...place, clear };
  }
  return best;
}

/** Spots of words that stand level with their middle at x, y. */
export function levelSpots(text, x, y) {
  return spotsOf(x, y, [1, 0], halfOf(text));
}

function halfOf(text) {
  return (text.length * LETTER_PX) / 2 + 2;
}

function candidates([[x0, y0], [x1, y1]], half, side) {
  const long = Math.hypot(x1 - x0, y1 - y0);
  if (long < 2 * half) return [];
  const [along, off] = directions(x0, y0, x1, y1, long),
    turn_deg = (Math.atan2(along[1], along[0]) * 180) / Math.PI;
  return Array.from({ length: STEPS + 1 }, (_, i) => {
    const at = (half + ((long - 2 * half) * i) / STEPS) / long;
    const x = x0 + (x1 - x0) * at + off[0] * side * OFF_PX,
      y = y0 + (y1 - y0) * at + off[1] * side * OFF_PX;
    return { x, y, turn_deg, spots: spotsOf(x, y, along, half) };
  });
}

// unit vectors along the line as it is read, and off it upward
function directions(x0, y0, x1, y1, long) {
  const reads = x1 > x0 || (x1 === x0 && y1 < y0) ? 1 : -1;
  const along = [(reads * (x1 - x0)) / long, (reads * (y1 - y0)) / long];
  return [along, [along[1], -along[0]]];
}

// words are held as a row of discs, which turn with them
function spotsOf(x, y, along, half) {
  const count = Math.max(2, Math.ceil(half / HALF_PX) + 1);
  return Array.from({ length: count }, (_, i) => {
    const at = (half - HALF_PX) * ((2 * i) / (count - 1) - 1);
    return [x + along[0] * at, y + along[1] * at];
  });
}

// whether words hide others
function touches(spots, taken) {
  return spots.some(([x, y]) => taken.some(([a, b]) => Math.hypot(x - a, y - b) < 2 * HALF_PX - 1));
}

function within([x, y], { left, right, top, bottom }) {
  return x > left + HALF_PX - 1 && x < right - HALF_PX + 3 && y > top + HALF_PX - 1 && y < bottom - HALF_PX + 1;
}

function distance([x, y], [[x0, y0], [x1, y1]]) {
  const [dx, dy] = [x1 - x0, y1 - y0],
    at = Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - x0 - at * dx, y - y0 - at * dy);
}
