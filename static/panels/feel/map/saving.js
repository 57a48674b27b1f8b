// The map as a file, drawn by the server: as lines for a picture, or as a page.

import { h } from '../../shared/dom.js';
import { download, fileName } from '../../shared/copy.js';

const FILES = [
  ['map-svg', 'svg', 'SVG'],
  ['map-pdf', 'pdf', 'PDF'],
];

export function createMapSaving({ store, exported }) {
  async function save(format, ending) {
    try {
      const blob = await exported(format, { scene: store.document, export: {} });
      download(`${fileName(store.read('title'))}-map.${ending}`, blob);
    } catch (problem) {
      store.tell({ kind: 'failed', field: null, say: `The map could not be saved: ${problem.message}` });
    }
  }
  return h(
    'span',
    { class: 'saving' },
    'Save the map: ',
    FILES.flatMap(([format, ending, say], i) => [
      i > 0 && ', ',
      h('button', { type: 'button', class: 'link', 'aria-label': `Save the map as ${say}`, onclick: () => save(format, ending) }, say),
    ]),
  );
}
