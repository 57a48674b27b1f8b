// Where beside somebody a post hides nobody: places are tried in order of liking, each as the points it takes on the picture, px.

const HIT = 10;
const STAY = 3;                 // how much better another place must be before a post moves

/** `seenAt(index)`: the points of the place of that index of `count`; `taken` the same of what must stay in sight; `least_px` the
    distance to keep; `last` the index it had. Gives {index, seen}: the first place that hides least. */
export function freest(count, seenAt, taken, least_px, last) {
  const dislike = (index) => index - (index === last ? STAY : 0);
  let best = null;
  for (const index of Array.from({ length: count }, (_, k) => k).sort((a, b) => dislike(a) - dislike(b))) {
    if (best && dislike(index) >= best.cost) break;
    const seen = seenAt(index);
    const cost = HIT * taken.filter((other) => meets(seen, other, least_px)).length + dislike(index);
    if (!best || cost < best.cost) best = { index, seen, cost };
  }
  return best;
}

function meets(a, b, least_px) {
  return a.some(([x, y]) => b.some(([u, v]) => Math.hypot(x - u, y - v) < least_px));
}
