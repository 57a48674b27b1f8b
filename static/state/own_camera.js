// A camera of one's own, in the form that the server gives and that files take: where it is at a time, and how it lies in a stage. No elements.

/** Where a camera is at a time: {position_m, target_m, up, vertical_fov_deg}, straight between its rows. */
export function cameraAt({ rows }, time_s) {
  const after = rows.findIndex(row => row.time_s > time_s);
  if (after === 0 || rows.length === 1) return rows[0];
  if (after < 0) return rows[rows.length - 1];
  const [a, b] = [rows[after - 1], rows[after]],
    u = (time_s - a.time_s) / (b.time_s - a.time_s);
  const mix = (p, q) => p + (q - p) * u,
    mixed = name => a[name].map((part, k) => mix(part, b[name][k]));
  return { position_m: mixed('position_m'), target_m: mixed('target_m'), up: mixed('up'), vertical_fov_deg: mix(a.vertical_fov_deg, b.vertical_fov_deg) };
}

/** The camera's picture in a stage of so many px, whole: {x, y, width, height}, and the field of view of the stage that shows it, degrees. */
export function frameIn(aspect, vertical_fov_deg, { width, height }) {
  const wide = Math.min(width, height * aspect),
    high = wide / aspect;
  const half = (vertical_fov_deg * Math.PI) / 360,
    fov = (360 / Math.PI) * Math.atan(Math.tan(half) * (height / high));
  return { x: (width - wide) / 2, y: (height - high) / 2, width: wide, height: high, fov };
}
