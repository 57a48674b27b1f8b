// A camera of one's own set by hand, as it is asked of the server. No elements.

import { tr } from './language.js';

export const FIRST_CAMERA = {
  name: tr('My camera'), // that files carry
  view: 'aboard',
  film_back: { width_mm: 36, height_mm: 20.25 },
  place: { along_m: 0, height_m: 1.6, axial_m: 6 },
  look_at: { along_m: 2, height_m: 1.6, axial_m: 0 },
  roll_deg: 0,
  by: 'lens', // or 'field'
  focal_length_mm: 35,
  field_of_view_deg: 54,
};

/** The film with one side changed: another width keeps the picture's shape, as a lens with another sensor is told; the height changes alone. */
export function filmBack({ width_mm, height_mm }, name, value) {
  if (name === 'height_mm') return { width_mm, height_mm: value };
  return { width_mm: value, height_mm: Number(((height_mm * value) / width_mm).toFixed(3)) };
}

/** As POST /api/camera takes it. */
export function cameraRequest(scene, { name, view, film_back, place, look_at, roll_deg, by, focal_length_mm, field_of_view_deg }) {
  const lens = by === 'lens' ? { focal_length_mm } : { field_of_view_deg };
  return { scene, camera: { name, view, film_back, rows: [{ time_s: 0, place, look_at, roll_deg, ...lens }] } };
}
