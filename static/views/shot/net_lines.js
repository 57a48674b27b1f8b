// The net of landings as lines on the deck: each run of landings of equal speed, or equal elevation. Where all come down on one line along the deck
// they lie side by side, for there the net has no width.

const LIFT_M = 0.02;
const APART = 0.7; // of the width that can be walked on, for lines side by side
const MOST_APART_M = 0.3;

export function netLines(landings, ground) {
  const { net, over, along_m, axial_m } = landings,
    columns = over[1].count,
    flat = net.up !== 'axial_m';
  const lines = flat ? net.lines.filter(({ of }) => of === over[1].field) : net.lines;
  const reach = ground.reach(0).axial_m ?? Infinity,
    apart_m = Math.min(MOST_APART_M, (2 * APART * reach) / Math.max(1, lines.length - 1));
  return lines.flatMap((line, k) => {
    const aside = flat ? (k - (lines.length - 1) / 2) * apart_m : 0,
      index = line.of === over[0].field ? j => line.at * columns + j : j => j * columns + line.at;
    return line.runs.map(({ first, last }) => {
      const points = [];
      for (let j = first; j <= last; j += 1) {
        const i = index(j),
          q = ground.on(along_m[i], LIFT_M, axial_m[i] + aside, 0, {}, 0);
        points.push(q.x, q.y, q.z);
      }
      return { points };
    });
  });
}
