// What is asked of the server with a path that was seen, and where in it a refusal lies. No elements.

import { GIVEN, hasPicture, wanting } from './match.js';
import { filled } from './match_rows.js';

/** As POST /api/match takes it; null while something is wanting. `scene`: read(path) → a value of the scene that is open. */
export function matchRequest(match, read) {
  if (wanting(match)) return null;
  const picture = hasPicture(match),
    { frame_rate, accuracy_px, accuracy_m } = match;
  const body = {
    known: knownOf(match, read),
    ...(picture ? { accuracy_px } : { accuracy_m }),
    ...(match.slowed ? { playback_fps: frame_rate } : {}),
  };
  if (picture) return { ...body, picture: { points: match.marks, fps: frame_rate, ...scaleOf(match) } };
  const { columns } = match.rows,
    items = filled(match.rows).map(row => rowOf(row, columns));
  return columns.includes('x_m') ? { ...body, keys: { rows: items, ...match.note } } : { ...body, track: items };
}

// a column in which nothing stands is left out: the path is then in the plane of rotation
function rowOf(row, columns) {
  return Object.fromEntries(columns.filter(name => row[name] !== null && row[name] !== undefined).map(name => [name, row[name]]));
}

function scaleOf(match) {
  if (match.by === 'camera') return { camera: camerasOf(match) };
  const { from_px, to_px, distance_m, upright, right_is } = match.plane;
  const up = upright ? [0, -1] : [to_px[0] - from_px[0], to_px[1] - from_px[1]];
  return { plane: { from_px, to_px, distance_m, deck_px: null, up, right_is } };
}

/** As POST /api/match/grid takes it: the deck through the camera of the frame in hand; null of a picture without a camera. Where the radius is
 *  not known it is that of the scene. */
export function gridRequest(match, read) {
  if (!hasPicture(match) || match.by !== 'camera') return null;
  const { known, given, own_camera, frame, frame_rate } = match,
    radius_m = known.radius_m === GIVEN.given ? given.radius_m : read('habitat.radius_m');
  if (!(radius_m > 0)) return null;
  return { radius_m, camera: camerasOf(match), ...(own_camera ? { time_s: frame / frame_rate } : {}) };
}

// the rows of a file have their times, between which the camera goes evenly
function camerasOf({ camera, own_camera, source }) {
  const size = { width_px: source.width, height_px: source.height };
  return own_camera ? own_camera.map(row => ({ ...row, ...size })) : { ...camera, ...size };
}

function knownOf({ known, given }, read) {
  const out = {};
  for (const name of ['radius_m', 'spin_rpm']) {
    if (known[name] === GIVEN.scene) out[name] = read(`habitat.${name}`);
    if (known[name] === GIVEN.given) out[name] = given[name];
  }
  if (known.air === GIVEN.scene) out.air = read('air') ?? null;
  if (known.air === 'vacuum') out.air = null;
  if (known.air === GIVEN.given) out.air = given.air;
  if (known.air === 'room') out.air = { pressure_kpa: 101.325, temperature_c: 20 };
  if (known.body) out.body = known.body;
  if (known.start === 'dropped') out.speed = 0;
  return out;
}

/** What is known, with what a file says of its habitat: {known, given}. */
export function knownOfFile({ known, given }, file) {
  const said = ['radius_m', 'spin_rpm', 'air'].filter(name => file[name] !== undefined);
  const modes = said.map(name => [name, name === 'air' && file.air === null ? 'vacuum' : GIVEN.given]);
  return { known: { ...known, ...Object.fromEntries(modes) }, given: { ...given, ...Object.fromEntries(said.map(name => [name, file[name]])) } };
}

/** The row, from 0, that a refusal's field names, as 'picture.points.3.time_s' does; null where it names none. */
export function rowOfField(field) {
  const [, row] = /^(?:track|keys\.rows|picture\.points|picture\.camera)\.(\d+)/.exec(field ?? '') ?? [];
  return row === undefined ? null : Number(row);
}
