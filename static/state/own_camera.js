// A camera of one's own, in the form that the server gives and that files take: where it is at a time, and how it lies in a stage. No elements.

export const FIRST_CAMERA = {
  name: 'My camera',
  view: 'aboard',
  film_back: { width_mm: 36, height_mm: 20.25 },
  place: { along_m: 0, height_m: 1.6, axial_m: 6 },
  look_at: { along_m: 2, height_m: 1.6, axial_m: 0 },
  roll_deg: 0,
  by: 'lens', // or 'field'
  focal_length_mm: 35,
  field_of_view_deg: 54,
};

/** As POST /api/camera takes it. */
export function cameraRequest(scene, { name, view, film_back, place, look_at, roll_deg, by, focal_length_mm, field_of_view_deg }) {
  const lens = by === 'lens' ? { focal_length_mm } : { field_of_view_deg };
  return { scene, camera: { name, view, film_back, rows: [{ time_s: 0, place, look_at, roll_deg, ...lens }] } };
}

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
