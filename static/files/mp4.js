// An MP4 file of one video track from coded frames, its index before its pictures so that it plays as it arrives.

import { BufferTarget, EncodedPacket, EncodedVideoPacketSource, Mp4OutputFormat, Output } from '../vendor/mediabunny.js';

/** frames: [{bytes, key}] in order, the first a key frame. fps [n, d]. codec 'avc' or 'vp9'. decoder: what a decoder is told (WebCodecs). notes:
 *  what JSON can hold, its scene under `scene`, written as the comment, so that the clip can be opened again. Gives the parts of the file. */
export async function fileOf({ frames, fps: [n, d], codec, decoder, title, notes = null }) {
  const output = new Output({ format: new Mp4OutputFormat({ fastStart: 'in-memory' }), target: new BufferTarget() });
  const source = new EncodedVideoPacketSource(codec);
  output.addVideoTrack(source, { frameRate: n / d });
  output.setMetadataTags({ title, ...(notes && { comment: JSON.stringify(notes) }) });
  await output.start();
  for (const [k, { bytes, key }] of frames.entries()) {
    const packet = new EncodedPacket(bytes, key ? 'key' : 'delta', (k * d) / n, d / n);
    await source.add(packet, k === 0 ? { decoderConfig: decoder } : undefined);
  }
  await output.finalize();
  return [output.target.buffer];
}
