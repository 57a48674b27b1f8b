// Everything that can be taken away: rows of one thing each, and the kinds of file it comes as. `format`: the server's name of
// it; what has none is made here. A kind of which the server knows nothing is not offered.

import { tr, trLater } from '../../state/language.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { inlinePick } from './choices.js';

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
const inBrowser = (key, say, words, uses = []) => ({ key, say, kinds: [{ value: key, say: words, format: null, uses }] });

const FRAMES_USE = ['fps', 'first_frame', 'from_s', 'to_s', 'retime'],
  CLIP_USES = ['fps', 'shown_fps', 'from_s', 'to_s', 'retime'];

const GROUPS = [
  {
    say: trLater('Paths and numbers'),
    rows: [
      {
        key: 'paths',
        say: trLater('Paths'),
        kinds: [
          { value: 'csv', say: trLater('CSV, one table'), format: 'csv' },
          { value: 'csv-frames', say: trLater('CSV, one table per frame'), format: 'csv-frames' },
        ],
      },
      one('notes', trLater('Notes to the paths'), 'notes', 'JSON'),
      one('numbers', trLater('Numbers'), 'json', trLater('JSON, every array')),
      one('forces', trLater('Forces'), 'forces-csv', trLater('CSV, one row per frame')),
      one('forces-notes', trLater('Notes to the forces'), 'forces-notes', 'JSON'),
    ],
  },
  {
    say: trLater('Animated scenes'),
    rows: [
      one('gltf', 'glTF 2.0', 'glb', trLater('binary (.glb)')),
      {
        key: 'usd',
        say: 'OpenUSD',
        kinds: [
          { value: 'usdz', say: trLater('packed (.usdz)'), format: 'usdz' },
          { value: 'usda', say: trLater('text (.usda)'), format: 'usda' },
          { value: 'usdc', say: trLater('binary (.usdc)'), format: 'usdc' },
        ],
      },
    ],
  },
  {
    say: trLater('Plots to print'),
    rows: [
      plot('plot-path', trLater('Path')),
      plot('plot-true', trLater('Path at true scale')),
      plot('plot-height', trLater('Height against time')),
      plot('plot-felt', trLater('Felt on the way')),
      one('plots', trLater('All on one page'), 'plots-pdf', 'PDF'),
      plot('map', trLater('Map of published limits')),
    ],
  },
  {
    say: trLater('Pictures'),
    rows: [
      inBrowser('picture', trLater('This moment'), 'PNG'),
      inBrowser('sequence', trLater('Every frame'), trLater('PNGs in a zip'), FRAMES_USE),
      {
        key: 'clip',
        say: trLater('Clip'),
        kinds: [
          { value: 'mp4', say: 'MP4', format: null, container: 'mp4', uses: CLIP_USES },
          { value: 'webm', say: 'WebM', format: null, container: 'webm', uses: CLIP_USES },
        ],
      },
    ],
  },
  { say: trLater('To show anywhere'), rows: [one('one-file', trLater('The scene, playing'), 'html', trLater('HTML, one file'))] },
  { say: trLater('To open here again'), rows: [inBrowser('scene', trLater('The scene itself'), 'JSON')] },
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
    rows: rows.map(row => ({ ...row, kinds: kept(row) })).filter(row => row.kinds.length && (drawable || !PICTURES.includes(row.key))),
  })).filter(group => group.rows.length);
}

function complete(kind, known) {
  const format = known.get(kind.format);
  return { uses: format?.uses ?? [], ...kind, ending: format?.ending ?? null };
}

// The table of what can be taken away: tick, name, kind of file, size.

/** `groups` as offered() gives them; `kinds` {row: value} as remembered; changed() after a tick, chose(row, value) after a kind. */
export function createRows({ groups, kinds, changed, chose }) {
  const rows = groups.flatMap(group => group.rows).map(row => createRow(row, kinds[row.key], { changed, chose }));
  const by = new Map(rows.map(row => [row.key, row]));
  const element = h(
    'table',
    { class: 'takings' },
    h(
      'colgroup',
      {},
      ['tick', 'w', '', 'size'].map(name => h('col', { class: name || null })),
    ),
    groups.map(group =>
      h(
        'tbody',
        {},
        h('tr', {}, h('th', { colspan: 4, scope: 'rowgroup' }, tr(group.say))),
        group.rows.map(row => by.get(row.key).element),
      ),
    ),
  );
  return {
    element,
    /** Only these are ticked. */
    tick(keys) {
      for (const row of rows) row.box.checked = keys.includes(row.key) && !row.box.disabled;
    },
    ticked: () => rows.filter(row => row.box.checked),
    all: rows,
    of: key => by.get(key),
  };
}

function createRow(row, remembered, { changed, chose }) {
  const id = `take-${row.key}`;
  const box = h('input', { type: 'checkbox', id, onchange: changed, 'aria-describedby': `${id}-why` });
  const size = h('td', { class: 'r size' });
  const why = h('span', { class: 'small why', id: `${id}-why`, hidden: true });
  let kind = row.kinds.find(one => one.value === remembered) ?? row.kinds[0];
  const pick =
    row.kinds.length > 1 &&
    inlinePick({
      label: tr('{row}: kind of file', { row: tr(row.say) }),
      options: () => row.kinds.map(one => [one.value, tr(one.say)]),
      chosen: () => kind.value,
      choose(value) {
        kind = row.kinds.find(one => one.value === value);
        box.checked = true;
        chose(row.key, value);
      },
    });
  const element = h(
    'tr',
    {},
    h('td', { class: 'tick' }, box),
    h('td', { class: 'w' }, h('label', { for: id }, tr(row.say))),
    h('td', { class: 'format' }, pick ? pick.element : tr(row.kinds[0].say), why),
    size,
  );
  if (pick) pick.update();
  return {
    key: row.key,
    say: row.say,
    element,
    box,
    get kind() {
      return kind;
    },
    tell: words => setText(size, words),
    /** Why it would be refused as things stand, in a sentence; '' where it would not. */
    warn(words) {
      setText(why, words);
      why.hidden = !words;
    },
    get barred() {
      return box.disabled;
    },
    /** Why it cannot be had here, in a sentence; '' where it can. */
    bar(words) {
      setText(why, words);
      why.hidden = !words;
      setAttribute(box, 'disabled', Boolean(words));
      if (words) box.checked = false;
    },
  };
}
