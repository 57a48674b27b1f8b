// The numbers that a habitat is drawn from: the document's, and for flat floors the answer's corners.

const DEG = Math.PI / 180;

export function readShape(part, answered) {
  const kind = part.shape ?? 'cylinder';
  const { radius_m } = part;
  return {
    kind, radius_m,
    width_m: part.width_m ?? null, ceiling_m: part.ceiling_m ?? null, hub_radius_m: part.hub_radius_m ?? null, tube_radius_m: part.tube_radius_m ?? null,
    floors: (answered?.floors ?? []).map(readFloor),
  };
}

// How far a floor reaches from its middle is read off its corners, along and across.
function readFloor({ name, corners_m, ceiling_corners_m, radius_m, azimuth_deg, gravity_g, levels }) {
  const azimuth_rad = azimuth_deg * DEG;
  const [s, c] = [Math.sin(azimuth_rad), Math.cos(azimuth_rad)];
  const most = (fn) => Math.max(...corners_m.map((corner) => Math.abs(fn(corner))));
  const [top] = ceiling_corners_m ?? [];
  return {
    name, radius_m, azimuth_rad, gravity_g,
    half_m: [most(([x, y]) => y * c - x * s), most(([, , z]) => z)],
    ceiling_m: top ? radius_m - (top[0] * c + top[1] * s) : null,
    levels: levels ?? [],
  };
}
