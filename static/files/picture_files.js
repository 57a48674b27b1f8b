// Canvases as files: PNG, and a zip of numbered PNGs.

import { createZip } from './zip.js';

export function pngOf(canvas) {
  return new Promise((done, fail) => {
    canvas.toBlob(blob => (blob ? done(blob) : fail(new Error('The picture is too large for this browser.'))), 'image/png');
  });
}

/** frames [{frame, time_s}]; draw(time_s) → canvas; named(frame) → the file's name; tell(count done). Gives the parts of a zip. */
export async function zipOfFrames({ frames, draw, named, tell, signal }) {
  const zip = createZip();
  for (const [i, { frame, time_s }] of frames.entries()) {
    const png = await pngOf(draw(time_s));
    zip.add(named(frame), new Uint8Array(await png.arrayBuffer()));
    tell(i + 1);
    signal.throwIfAborted();
  }
  return zip.finish();
}

/** An SVG drawn as PNG, so many px wide, on white. */
export async function pngOfSvg(svg, width) {
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
    return await pngOf(canvas);
  } finally {
    URL.revokeObjectURL(url);
  }
}
