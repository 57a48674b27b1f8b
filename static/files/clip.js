// A clip of frames by the browser's own encoder: every frame asked for, each at its own time.

import { tr } from '../state/language.js';

// codecs in the order in which they are tried, by container; level: by the pixels of a frame
const CODECS = {
  mp4: [
    { name: 'avc', string: px => `avc1.6400${px <= 2_228_224 ? '28' : px <= 8_912_896 ? '33' : '3c'}` },
    { name: 'vp9', string: px => VP9(px) },
  ],
  webm: [
    { name: 'vp9', string: px => VP9(px) },
    { name: 'vp8', string: () => 'vp8' },
  ],
};
const VP9 = px => `vp09.00.${px <= 921_600 ? 31 : px <= 2_228_224 ? 41 : px <= 8_912_896 ? 51 : 61}.08`;
const files = { mp4: () => import('./mp4.js'), webm: () => import('./webm.js') }; // fetched when wanted
const BITS_A_PIXEL = 0.2; // drawn lines on a dark ground: no ringing round them
const KEY_EVERY = 48;
const WAITING = 2; // frames handed over and not yet coded

export const canCode = () => typeof VideoEncoder === 'function' && typeof VideoFrame === 'function';

/** container 'mp4' or 'webm'. fps [n, d]: as shown. count frames; draw(i) → promise of a canvas of that size; tell(i) after each; notes: as of
 *  webm.js. Gives the parts of the file. */
export async function codeClip({ container, draw, count, fps, width, height, title, notes, tell, signal }) {
  const [{ name, config }, { fileOf }] = await Promise.all([configFor(container, width, height, fps), files[container]()]);
  const frames = [];
  let decoder = null,
    failed = null;
  const encoder = new VideoEncoder({
    output(chunk, { decoderConfig } = {}) {
      decoder ??= decoderConfig ?? null;
      const bytes = new Uint8Array(chunk.byteLength);
      chunk.copyTo(bytes);
      frames.push({ bytes, key: chunk.type === 'key' });
    },
    error(problem) {
      failed = problem;
    },
  });
  try {
    encoder.configure(config);
    for (let i = 0; i < count; i += 1) {
      await room(encoder, signal);
      if (failed) throw failed;
      const timestamp = Math.round((1e6 * i * fps[1]) / fps[0]);
      const frame = new VideoFrame(await draw(i), { timestamp, alpha: 'discard' });
      encoder.encode(frame, { keyFrame: i % KEY_EVERY === 0 });
      frame.close();
      tell(i + 1);
    }
    await encoder.flush();
  } finally {
    if (encoder.state !== 'closed') encoder.close();
  }
  return fileOf({ frames, fps, width, height, codec: name, decoder, title, notes });
}

async function configFor(container, width, height, fps) {
  const framerate = fps[0] / fps[1];
  for (const { name, string } of CODECS[container]) {
    const config = { codec: string(width * height), width, height, framerate, bitrate: bitrate(width, height, framerate), latencyMode: 'quality' };
    if ((await VideoEncoder.isConfigSupported(config)).supported) return { name, config };
  }
  throw new Error(tr('This browser cannot encode a clip of {width} × {height}: choose a smaller picture.', { width, height }));
}

const bitrate = (width, height, framerate) => Math.round(width * height * framerate * BITS_A_PIXEL);

// the page gets its turn between frames, also to hear "Cancel"
async function room(encoder, signal) {
  do {
    await new Promise(go => setTimeout(go));
    signal.throwIfAborted();
  } while (encoder.encodeQueueSize > WAITING);
}
