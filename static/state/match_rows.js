// A track without pictures, as rows of figures: typed, pasted, or out of a file. No elements.

export const COLUMNS = {
  track: ['time_s', 'along_m', 'height_m', 'axial_m'],
  keys: ['time_s', 'x_m', 'y_m', 'z_m'],
};

/** The rows of a table in which something stands. */
export const filled = rows => (rows?.items ?? []).filter(row => rows.columns.some(name => row[name] !== null && row[name] !== undefined));

/** {columns, items} of a track as POST /api/match/tracks tells it. */
export function rowsOfTrack({ track, keys }) {
  if (keys) return { columns: COLUMNS.keys, items: keys.rows };
  return { columns: COLUMNS.track, items: track.map(item => ({ axial_m: null, ...item })) };
}

/** The axes that its keys are in, or null. */
export const noteOfTrack = ({ keys }) => keys && { origin: keys.origin, view: keys.view };

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
