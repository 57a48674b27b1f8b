// How far a craft reaches, for pictures that must hold it: its parts and the habitat it is built round. Points are in drawing axes.

import { drawnPoint } from './place.js';

const INNER = 1 / Math.sqrt(3); // of a ball's radius: the corners of the box in it

/** Points that hold a craft that tumbles however it lies, [x, y, z, …]. */
export function sweptPoints(model) {
  const { answer, craft, ground, radius_m } = model;
  const centre = drawnPoint(answer.tumbling.centre_m, 0, radius_m, {});
  const outline = ground.outline();
  let reach = 0;
  for (let i = 0; i < outline.length; i += 3) reach = Math.max(reach, Math.hypot(outline[i] - centre.x, outline[i + 1] - centre.y, outline[i + 2] - centre.z));
  for (const part of craft?.parts ?? [])
    for (const { x, y, z } of endsOf(part, radius_m)) reach = Math.max(reach, halfOf(part) + Math.hypot(x - centre.x, y - centre.y, z - centre.z));
  return ball(centre, reach);
}

/** The same of a craft that lies as it is drawn aboard, with its habitat. */
export function craftPoints({ craft, ground, radius_m }) {
  return [...ground.outline(), ...(craft?.parts ?? []).flatMap(part => endsOf(part, radius_m).flatMap(end => ball(end, halfOf(part))))];
}

// The two ends of a part's axis, and how far it reaches about them at most.
function endsOf({ place_m, axis, length_m = 0 }, radius_m) {
  const long = Math.hypot(...axis) || 1;
  return [-1, 1].map(way =>
    drawnPoint(
      place_m.map((c, k) => c + (way * length_m * axis[k]) / (2 * long)),
      0,
      radius_m,
      {},
    ),
  );
}

const halfOf = ({ size_m, radius_m = 0, tube_radius_m = 0 }) => (size_m ? Math.hypot(...size_m) / 2 : radius_m + tube_radius_m);

// Its poles, and the corners of the box in it.
function ball({ x, y, z }, reach) {
  const signs = [-reach, reach];
  return [
    ...[0, 1, 2].flatMap(axis => signs.flatMap(by => [x, y, z].map((c, k) => (k === axis ? c + by : c)))),
    ...signs.flatMap(a => signs.flatMap(b => signs.flatMap(c => [x + INNER * a, y + INNER * b, z + INNER * c]))),
  ];
}
