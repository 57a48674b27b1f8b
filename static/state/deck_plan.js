// The deck as it is seen along the axis: where a place lies in that plan, and which place lies under a point of it. Right is spinward and down
// is outward at azimuth 0; metres from the axis. A turntable is seen from above.

const WHOLE = 1.12; // of the radius, from the middle to the edge of a plan of the whole
export const NEAR_TURN = 1 / 12; // a throw that goes less far round is shown near by
const NEAR_LEAST = 0.04; // of the radius, at least, across such a picture

/** `habitat` of the document, `floors` of its answer or []: what is drawn of it, circles by their radius and lines. */
export function createPlan(habitat, floors = []) {
  const R = habitat.radius_m,
    level = habitat.shape === 'turntable';
  const flat = floors.map(({ radius_m, azimuth_deg, corners_m }) => {
    const azimuth = (azimuth_deg * Math.PI) / 180;
    const along = corners_m.map(([x, y]) => y * Math.cos(azimuth) - x * Math.sin(azimuth));
    return { radius_m, azimuth, ends: [Math.min(...along), Math.max(...along)] };
  });
  const floorOf = place => flat[place.floor ?? 0] ?? flat[0];

  function at(place) {
    if (flat.length) {
      const { radius_m, azimuth } = floorOf(place),
        [s, c] = [Math.sin(azimuth), Math.cos(azimuth)],
        out = radius_m - place.height_m;
      return [out * s + place.along_m * c, out * c - place.along_m * s];
    }
    const out = level ? place.axial_m : R - place.height_m,
      angle = place.along_m / R;
    return [out * Math.sin(angle), out * Math.cos(angle)];
  }

  return {
    radius_m: R,
    turn_m: flat.length ? null : 2 * Math.PI * R,
    rings: flat.length ? [] : ringsOf(habitat),
    lines: flat.map(floor => floor.ends.map(along_m => at({ along_m, height_m: 0, floor: flat.indexOf(floor) }))),
    at,
    /** The angle about the axis of what is straight down at a place, 0 at the foot. */
    azimuth(place) {
      if (flat.length) return floorOf(place).azimuth;
      const [x, y] = at(place);
      return Math.atan2(x, y);
    },
    /** The place of somebody dragged to a point; the rest stays as in `held`, and round the axis it is the nearest to `from`. */
    under([x, y], held, from) {
      if (flat.length) {
        const { azimuth, ends } = floorOf(held);
        return { ...held, along_m: Math.min(ends[1], Math.max(ends[0], x * Math.cos(azimuth) - y * Math.sin(azimuth))) };
      }
      const angle = Math.atan2(x, y),
        turns = Math.round((from.along_m / R - angle) / (2 * Math.PI));
      const along_m = R * (angle + 2 * Math.PI * turns);
      return level ? { ...held, along_m, axial_m: Math.min(R, Math.hypot(x, y)) } : { ...held, along_m };
    },
  };
}

// the deck first
function ringsOf({ shape, radius_m: R, ceiling_m, hub_radius_m, tube_radius_m }) {
  const inner = shape === 'torus' ? R - 2 * (tube_radius_m ?? 0) : ceiling_m ? R - ceiling_m : null;
  return [R, inner, hub_radius_m ?? null].filter(radius_m => radius_m > 0);
}

/** What a plan shows, {middle, half_m, turn_rad}: all of it, or the neighbourhood of `points` where a throw goes `share` of a turn; turned so that
 *  `azimuth` points down. */
export function viewOf(plan, points, share, azimuth) {
  const turned = points.map(point => turn(point, azimuth));
  const all = { middle: [0, 0], half_m: WHOLE * Math.max(plan.radius_m, ...turned.map(([x, y]) => Math.hypot(x, y))), turn_rad: azimuth };
  if (share === null || Math.abs(share) >= NEAR_TURN || turned.length < 2) return all;
  const bounds = [0, 1].map(c => [Math.min(...turned.map(p => p[c])), Math.max(...turned.map(p => p[c]))]);
  const half_m = Math.max((NEAR_LEAST * plan.radius_m) / 2, ...bounds.map(([low, high]) => 0.62 * (high - low)));
  return half_m > 0.5 * plan.radius_m ? all : { middle: bounds.map(([low, high]) => (low + high) / 2), half_m, turn_rad: azimuth };
}

/** A point of the plan turned so that what lies at an azimuth lies straight down. */
export function turn([x, y], azimuth) {
  const [s, c] = [Math.sin(azimuth), Math.cos(azimuth)];
  return [x * c - y * s, x * s + y * c];
}
