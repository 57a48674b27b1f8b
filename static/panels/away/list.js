// Everything that can be taken away: rows of one thing each, and the kinds of file it comes as. `format`: the server's name of
// it; what has none is made here. A kind of which the server knows nothing is not offered.

const plot = (key, say) => ({
  key,
  say,
  kinds: [
    { value: 'svg', say: 'SVG', format: `${key}-svg` },
    { value: 'pdf', say: 'PDF', format: `${key}-pdf` },
    { value: 'png', say: 'PNG', format: `${key}-svg`, drawn: true },
  ],
});
const one = (key, say, format, words) => ({ key, say, kinds: [{ value: format, say: words, format }] });
const here = (key, say, words, uses = []) => ({ key, say, kinds: [{ value: key, say: words, format: null, uses }] });

const GROUPS = [
  {
    say: 'Paths and numbers',
    rows: [
      {
        key: 'paths',
        say: 'Paths',
        kinds: [
          { value: 'csv', say: 'CSV, one table', format: 'csv' },
          { value: 'csv-frames', say: 'CSV, a table a frame', format: 'csv-frames' },
        ],
      },
      one('notes', 'Notes to the paths', 'notes', 'JSON'),
      one('numbers', 'Numbers', 'json', 'JSON, every array'),
      one('forces', 'Forces', 'forces-csv', 'CSV, a row a frame'),
      one('forces-notes', 'Notes to the forces', 'forces-notes', 'JSON'),
    ],
  },
  {
    say: 'Animated scenes',
    rows: [
      one('gltf', 'glTF 2.0', 'glb', 'binary (.glb)'),
      {
        key: 'usd',
        say: 'OpenUSD',
        kinds: [
          { value: 'usdz', say: 'packed (.usdz)', format: 'usdz' },
          { value: 'usda', say: 'text (.usda)', format: 'usda' },
          { value: 'usdc', say: 'binary (.usdc)', format: 'usdc' },
        ],
      },
    ],
  },
  {
    say: 'Plots to print',
    rows: [
      plot('plot-path', 'Path'),
      plot('plot-height', 'Height against time'),
      plot('plot-felt', 'Felt on the way'),
      one('plots', 'All on one page', 'plots-pdf', 'PDF'),
      plot('map', 'Map of published limits'),
    ],
  },
  {
    say: 'Pictures',
    rows: [
      here('picture', 'This moment', 'PNG'),
      here('sequence', 'Every frame', 'PNGs in a zip', ['fps', 'first_frame', 'from_s', 'to_s']),
      here('clip', 'Clip', 'WebM', ['fps', 'shown_fps', 'from_s', 'to_s']),
    ],
  },
  { say: 'To open here again', rows: [here('scene', 'The scene itself', 'JSON')] },
];
/** Rows drawn from the stages, and those of them that take every frame. */
export const PICTURES = ['picture', 'sequence', 'clip'],
  FRAMED = ['sequence', 'clip'];

/** The groups as this server and this browser have them. `formats`: of GET /api/fields. */
export function offered(formats, drawable) {
  const known = new Map(formats.map(format => [format.name, format]));
  const kept = row => row.kinds.filter(kind => kind.format === null || known.has(kind.format)).map(kind => complete(kind, known));
  return GROUPS.map(({ say, rows }) => ({
    say,
    rows: rows
      .map(row => ({ ...row, kinds: kept(row) }))
      .filter(row => row.kinds.length && (drawable || !PICTURES.includes(row.key))),
  })).filter(group => group.rows.length);
}

function complete(kind, known) {
  const format = known.get(kind.format);
  return { uses: format?.uses ?? [], ...kind, ending: format?.ending ?? null };
}
