// Pictures of one's own as frames that can be drawn: a still, a sequence of stills, a clip. They are read where they lie and sent nowhere.

import { tr } from '../state/language.js';

const KEPT = 6; // decoded stills
const ROUNDED_S = 6e-4; // of first and last time together, and a little more
const CLIP_RATE = 24; // of a clip that does not tell its own

/** A source: {name, kind, width, height, count, rate, draw(context, frame) → promise, close()}; `count` null: one picture for all frames; `rate`:
 *  frames a second, null where nothing tells it. `files` are in order. Throws an Error whose words say which could not be read. */
export async function footageOf(files) {
  const source = await (files[0].type.startsWith('video/') ? clipOf(files[0]) : stillsOf(files));
  return { ...source, draw: oneByOne(source.draw) };
}

// The same pictures may lie under a path and behind a stage: a clip goes to one frame at a time.
function oneByOne(draw) {
  let last = Promise.resolve();
  return (context, frame) => {
    const drawn = last.then(() => draw(context, frame));
    last = drawn.catch(() => {});
    return drawn;
  };
}

/** Whether a file is a picture or a clip, by the type that the browser gives it. */
export const isFootage = ({ type }) => /^(image|video)\//.test(type);

async function stillsOf(files) {
  const decoded = new Map(); // frame → bitmap, the one used last at the end
  async function bitmapOf(frame) {
    const known = decoded.get(frame),
      bitmap = known ?? (await createImageBitmap(files[frame]).catch(() => unreadable(files[frame])));
    decoded.delete(frame);
    decoded.set(frame, bitmap);
    for (const oldest of [...decoded.keys()].slice(0, -KEPT)) {
      decoded.get(oldest).close();
      decoded.delete(oldest);
    }
    return bitmap;
  }
  const { width, height } = await bitmapOf(0),
    one = files.length === 1;
  return {
    name: one ? files[0].name : tr('{count} stills from {file}', { count: files.length, file: files[0].name }),
    kind: one ? 'still' : 'stills',
    width,
    height,
    count: one ? null : files.length,
    rate: null,
    async draw(context, frame) {
      context.drawImage(await bitmapOf(Math.min(frame, files.length - 1)), 0, 0, width, height);
    },
    close() {
      for (const bitmap of decoded.values()) bitmap.close();
      decoded.clear();
    },
  };
}

async function clipOf(file) {
  const url = URL.createObjectURL(file),
    video = Object.assign(document.createElement('video'), { muted: true, playsInline: true, preload: 'auto' });
  const close = () => {
    video.removeAttribute('src');
    URL.revokeObjectURL(url);
  };
  try {
    video.src = url;
    await heardOnce(video, 'loadeddata');
  } catch {
    close();
    unreadable(file);
  }
  const rate = await rateOf(file),
    step = rate ?? CLIP_RATE;
  async function draw(context, frame) {
    const at = Math.min((frame + 0.5) / step, Math.max(0, video.duration - 1e-3));
    if (Math.abs(video.currentTime - at) > 1e-6) {
      video.currentTime = at;
      await heardOnce(video, 'seeked');
    }
    context.drawImage(video, 0, 0, video.videoWidth, video.videoHeight);
  }
  return {
    name: file.name,
    kind: 'clip',
    width: video.videoWidth,
    height: video.videoHeight,
    count: Math.max(1, Math.round(video.duration * step)),
    rate,
    draw,
    close,
  };
}

// Frames a second as its packets tell, to a thousandth; null where they cannot be read.
async function rateOf(file) {
  try {
    const { ALL_FORMATS, BlobSource, Input } = await import('../vendor/mediabunny.js');
    const track = await new Input({ formats: ALL_FORMATS, source: new BlobSource(file) }).getPrimaryVideoTrack();
    const { averagePacketRate, packetCount } = await track.computePacketStats();
    return meantRate(averagePacketRate, packetCount);
  } catch {
    return null;
  }
}

/** The frame rate that was meant, where a file's times are rounded to milliseconds: whole, or 1000/1001 of that; else as it is. */
export function meantRate(rate, count) {
  const span_s = count / rate,
    whole = Math.round(rate),
    video = (Math.round((rate * 1001) / 1000) * 1000) / 1001;
  const meant = [whole, video].find(one => one > 0 && Math.abs(count / one - span_s) <= ROUNDED_S) ?? rate;
  return Number(meant.toFixed(3));
}

function heardOnce(target, type) {
  return new Promise((resolve, reject) => {
    target.addEventListener(type, resolve, { once: true });
    target.addEventListener('error', () => reject(new Error(type)), { once: true });
  });
}

function unreadable(file) {
  throw new Error(tr('{file} could not be shown: this browser does not read it as a picture or a clip.', { file: file.name }));
}
