// Canvases as files: PNG, and a zip of numbered PNGs. A zip stores them, not deflated: they are packed already.

import { tr } from '../state/language.js';
import { zipSync } from '../vendor/fflate.js';
import { withNotes } from './png_notes.js';

/** A canvas as PNG, a Blob; with `notes` it can be opened again. */
export async function pngOf(canvas, notes = null) {
  const png = await new Promise((done, fail) => {
    canvas.toBlob(blob => (blob ? done(blob) : fail(new Error(tr('The picture is too large for this browser.')))), 'image/png');
  });
  return notes ? new Blob(withNotes(new Uint8Array(await png.arrayBuffer()), notes), { type: png.type }) : png;
}

/** A canvas as the bytes of a PNG. */
export async function pngBytes(canvas) {
  return new Uint8Array(await (await pngOf(canvas)).arrayBuffer());
}

/** A zip of numbered pictures. notes: {name, text}, the first file; tell(count done, of all that was added). add({frames: [{frame, time_s}], drawn(time_s) →
 *  promise of a file's bytes, named(frame) → the file's name}); finish() → the parts of the zip. */
export function createZipOfFrames(notes, { tell, signal }) {
  const zip = createZip();
  let done = 0;
  zip.add(notes.name, new TextEncoder().encode(notes.text));

  async function add({ frames, drawn, named }) {
    for (const { frame, time_s } of frames) {
      zip.add(named(frame), await drawn(time_s));
      done += 1;
      tell(done);
      signal.throwIfAborted();
    }
  }
  return { add, finish: zip.finish };
}

/** An SVG drawn as PNG, so many px wide, on white; with `notes` it can be opened again. */
export async function pngOfSvg(svg, width, notes = null) {
  const url = URL.createObjectURL(svg);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const canvas = Object.assign(document.createElement('canvas'), { width, height: Math.round((width * image.naturalHeight) / image.naturalWidth) });
    const context = canvas.getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await pngOf(canvas, notes);
  } finally {
    URL.revokeObjectURL(url);
  }
}

// A zip of files that are stored, not deflated: pictures are packed already. The same files give the same bytes.

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
    if (count > MOST_FILES || bytes > MOST_BYTES) throw new RangeError(tr('A zip holds at most 65,535 files and 4 GB: take fewer frames, or smaller ones.'));
    files[name] = content;
  }
  return { add, finish: () => [zipSync(files, STORED)] };
}
