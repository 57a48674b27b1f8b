// How lanes share the height of the timeline, and where the words of a lane stand. No elements.

const FIRST = 38, // px at type size 1: down to the first lane
  FOOT = 7, // under the last
  WIDEST = 15, // from one to the next
  LETTERS = 12.5; // what a lane needs for its words
const CLEAR = 12; // px between a lane's end and its words

/** → {first, gap, lettered}: px down to the first lane and from lane to lane; whether each has room for its words. */
export function laneRows(count, height, type = 1) {
  const first = FIRST * type;
  const room = Math.max(0, height - first - FOOT * type);
  const gap = Math.min(WIDEST * type, count > 1 ? room / (count - 1) : WIDEST * type);
  return { first, gap, lettered: count === 1 || gap >= LETTERS * type };
}

/** Words beside a lane that lies from `from` to `to` px: behind its end, before it, or over it, the longest of `wordings` that has room
 *  there; null where none has. `widthOf(words)` in px. */
export function placeWords(wordings, { from, to, width, widthOf }) {
  for (const words of wordings) {
    const wide = widthOf(words);
    if (to + CLEAR + wide <= width) return { words, x: to + CLEAR, anchor: 'start' };
    if (to - CLEAR - wide >= from) return { words, x: to - CLEAR, anchor: 'end' };
    if (wide <= to - CLEAR) return { words, x: to - CLEAR, anchor: 'end' };
  }
  return null;
}
