// A zip of files that are stored, not deflated: pictures are packed already. The same files give the same bytes.

import { zipSync } from '../vendor/fflate.js';

const MOST_FILES = 0xffff,
  MOST_BYTES = 0xffffffff; // of a zip without the extensions for larger ones (APPNOTE 6.3, 4.4.1.4)
const AROUND_A_FILE = 1024; // its two headers, and a name as long as those of frames
const STORED = { level: 0, mtime: new Date(1980, 0, 1) }; // the first day the format knows

/** add(name, Uint8Array) for each file, then finish() → the parts of the zip, in order. Throws past the format's limits. */
export function createZip() {
  const files = {};
  let count = 0,
    bytes = 0;

  function add(name, content) {
    count += 1;
    bytes += content.length + AROUND_A_FILE;
    if (count > MOST_FILES || bytes > MOST_BYTES) throw new RangeError('A zip holds at most 65,535 files and 4 GB: take fewer frames, or smaller ones.');
    files[name] = content;
  }
  return { add, finish: () => [zipSync(files, STORED)] };
}
