// A path that was seen: its marks in pictures or its rows, how pixels become metres, and what is known; and what is asked of the server with it.
// No elements.

export const LEAST = 3; // rows that can be asked about
export const GIVEN = { none: 'none', scene: 'scene', given: 'given' }; // what is known of a quantity: nothing, that of this scene, or a figure

export const FIRST_MATCH = {
  source: null, // what the pictures come from: {name, kind, width, height, count}; count null: one picture for all of them
  frame: 0,
  marks: [], // {frame, x_px, y_px}, by frame
  rows: null, // a track without pictures: {name, columns, items}
  frame_rate: 24,
  accuracy_px: 1.5,
  accuracy_m: 0.02,
  by: 'plane',
  plane: { from_px: null, to_px: null, distance_m: 1.75, upright: true, right_is: 'spinward' },
  camera: {
    field_of_view_deg: 60,
    position: { along_m: 0, height_m: 1.6, axial_m: 8 },
    look_at: { along_m: 0, height_m: 1.6, axial_m: 0 },
    roll_deg: 0,
  },
  own_camera: null, // rows of a camera's file, one for all marks or one a frame: they go before `camera`
  known: { radius_m: GIVEN.scene, spin_rpm: GIVEN.scene, air: GIVEN.scene, body: null, start: 'thrown' },
  given: { radius_m: 56, spin_rpm: 3 },
  slowed: false,
  note: null, // of the axes that a file's keys are in: {origin, view}
};

export const COLUMNS = {
  track: ['time_s', 'along_m', 'height_m', 'axial_m'],
  keys: ['time_s', 'x_m', 'y_m', 'z_m'],
};

/** The mark of a frame, or null. */
export const markAt = ({ marks, frame }) => marks.find(mark => mark.frame === frame) ?? null;

/** Which row of the question the mark of a frame is, from 0; -1 without one. */
export const rowOfFrame = ({ marks }, frame) => marks.findIndex(mark => mark.frame === frame);

/** With a mark in a frame; those of other frames stay. */
export function withMark(match, frame, [x_px, y_px]) {
  const rest = match.marks.filter(mark => mark.frame !== frame);
  return { ...match, marks: [...rest, { frame, x_px, y_px }].sort((a, b) => a.frame - b.frame) };
}

export const withoutMark = (match, frame) => ({ ...match, marks: match.marks.filter(mark => mark.frame !== frame) });

/** How many frames can be stepped through: of one picture of many exposures one more than are marked. */
export function frameCount({ source, marks }) {
  if (!source) return 0;
  return source.count ?? (marks[marks.length - 1]?.frame ?? -1) + 2;
}

/** Whether its rows are the marks in a picture, and not a table. */
export const hasPicture = match => match.source !== null;

/** What is still wanted before the server can be asked: one of mark, scale, rows; or null. */
export function wanting(match) {
  if (hasPicture(match)) {
    if (match.by === 'plane' && !(match.plane.from_px && match.plane.to_px)) return 'scale';
    return match.marks.length < LEAST ? 'marks' : null;
  }
  return filled(match.rows).length < LEAST ? 'rows' : null;
}

/** The rows of a table in which something stands. */
export const filled = rows => (rows?.items ?? []).filter(row => rows.columns.some(name => row[name] !== null && row[name] !== undefined));

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

function camerasOf({ camera, own_camera, source, marks }) {
  const size = { width_px: source.width, height_px: source.height };
  if (!own_camera) return { ...camera, ...size };
  const seen = ({ field_of_view_deg, position, look_at, roll_deg }) => ({ field_of_view_deg, position, look_at, roll_deg, ...size });
  if (own_camera.length === 1) return seen(own_camera[0]);
  return marks.map(({ frame }) => seen(own_camera[Math.min(frame, own_camera.length - 1)]));
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

/** {columns, items} of a track as POST /api/match/tracks tells it. */
export function rowsOfTrack({ track, keys }) {
  if (keys) return { columns: COLUMNS.keys, items: keys.rows };
  return { columns: COLUMNS.track, items: track.map(item => ({ axial_m: null, ...item })) };
}

/** The axes that its keys are in, or null. */
export const noteOfTrack = ({ keys }) => keys && { origin: keys.origin, view: keys.view };

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

/** What was pasted as rows of figures: by tabs, semicolons, commas or spaces, with decimal commas where commas part nothing else; a first line
 *  without figures is its head. {items} of the columns, in their order; null where it holds no two figures in a line. */
export function pastedRows(text, columns) {
  const lines = text.split(/\r?\n/).filter(line => line.trim());
  const parts = lines.map(partsOf),
    first = parts.findIndex(cells => cells.filter(cell => cell !== null).length >= 2);
  if (first < 0 || first > 1) return null;
  return parts.slice(first).map(cells => Object.fromEntries(columns.map((name, k) => [name, cells[k] ?? null])));
}

function partsOf(line) {
  const by = ['\t', ';'].find(mark => line.includes(mark)),
    cells = by ? line.split(by) : line.trim().split(/\s*,\s*|\s+/);
  return cells.map(cell => figureOf(by ? cell.trim().replace(',', '.') : cell.trim()));
}

/** A figure that was typed, or null. */
export function figureOf(text) {
  const plain = text.trim().replace('−', '-');
  return plain === '' || !Number.isFinite(Number(plain)) ? null : Number(plain);
}

const IN_ORDER = new Intl.Collator('en', { numeric: true });
/** Files in the order of their frames: frame 9 before frame 10. */
export const inOrder = files => [...files].sort((a, b) => IN_ORDER.compare(a.name, b.name));

/** The last states but one, to go back to: push(state) before a change, back(now) → the one before, or now. */
export function createPast(most = 200) {
  let past = [];
  return {
    push(state) {
      past = [...past.slice(1 - most), state];
    },
    back: now => past.pop() ?? now,
    clear() {
      past = [];
    },
    get any() {
      return past.length > 0;
    },
  };
}

/** Whether a matched motion's scene has this one's habitat and air: then its throw flies here as it does there. */
export function fliesHere(motion, read) {
  const near = (a, b) => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b));
  const { habitat, air } = motion;
  const here = read('air') ?? null;
  const same =
    here === null || air === null ? here === (air ?? null) : near(here.pressure_kpa, air.pressure_kpa) && near(here.temperature_c, air.temperature_c);
  return (
    (read('habitat.shape') ?? 'cylinder') === 'cylinder' &&
    near(habitat.radius_m, read('habitat.radius_m')) &&
    near(habitat.spin_rpm, read('habitat.spin_rpm')) &&
    same
  );
}

/** Polylines of a path in a picture: [[x, y]…], cut where it is behind the camera. */
export function runsOf({ x_px, y_px }) {
  const runs = /** @type {number[][][]} */ ([[]]);
  x_px.forEach((x, i) => {
    if (x === null || y_px[i] === null) runs.push([]);
    else runs[runs.length - 1].push([x, y_px[i]]);
  });
  return runs.filter(run => run.length > 1);
}

/** Lengths of a residual by row: its components' names and the most that any reaches, in accuracies. */
export function residualsOf({ residual, accuracy }) {
  const names = Object.keys(residual),
    worst = Math.max(...names.map(name => residual[name].reduce((most, off) => Math.max(most, Math.abs(off ?? 0)), 0)));
  return { names, most: Math.max(3.2 * accuracy.value, 1.08 * worst) };
}
