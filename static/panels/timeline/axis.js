// Where a time stands on the timeline. One long motion must not crush the others: where most of what happens lies in the first
// part of the span, that part takes most of the width, and the rest follows, narrower, after a break. No elements.

const LONG = 4; // times as long as what most of it is over in
const EARLY_SHARE = 0.7; // of the width
const CLEAR = 1.15; // the break lies so far behind the last early moment
const NICE = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** `moments`: the times at which something happens. → {at(time) → 0 to 1, timeAt(fraction), break_s: null where all is one scale}. */
export function createAxis(moments, end_s) {
  const break_s = breakOf(moments, end_s);
  const parts = break_s === null ? [[0, 0], [end_s, 1]] : [[0, 0], [break_s, EARLY_SHARE], [end_s, 1]]; // biome-ignore format: its corners
  return { break_s, at: time => between(parts, time, 0), timeAt: fraction => between(parts, fraction, 1) };
}

/** The time up to which the scale is wide; null where nothing is crushed. */
export function breakOf(moments, end_s) {
  const later = moments.filter(time => time > 1e-6);
  const early = later.filter(time => time * LONG <= end_s);
  if (early.length * 2 < later.length || !early.length) return null;
  const wanted = Math.max(...early) * CLEAR,
    size = 10 ** Math.floor(Math.log10(wanted)),
    nice = NICE.find(step => step * size >= wanted) * size;
  return nice * 2 < end_s ? Number(nice.toPrecision(6)) : null;
}

// along straight pieces through the corners, from coordinate `from` to the other
function between(corners, value, from) {
  const to = 1 - from;
  let next = 1;
  while (next < corners.length - 1 && value > corners[next][from]) next += 1;
  const a = corners[next - 1],
    b = corners[next],
    long = b[from] - a[from];
  return long > 0 ? a[to] + ((value - a[from]) / long) * (b[to] - a[to]) : a[to];
}
