// Where beside somebody a post hides nobody: places are tried in order of liking, each as the points it takes on the picture, px.

const HIT = 10;
const STAY = 3;                 // how much better another place must be before a post moves

/** `places` [[[x, y]…]…], `taken` the same of what must stay in sight; `least_px` the distance to keep; `last` the place it had.
    Gives {index, seen}: the first place that hides least. */
export function freest(places, taken, least_px, last) {
  const costs = places.map((seen, index) => HIT * taken.filter((other) => meets(seen, other, least_px)).length + index - (index === last ? STAY : 0));
  const index = costs.indexOf(Math.min(...costs));
  return { index, seen: places[index] };
}

function meets(a, b, least_px) {
  return a.some(([x, y]) => b.some(([u, v]) => Math.hypot(x - u, y - v) < least_px));
}
