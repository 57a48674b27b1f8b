// A WebM file of one video track from coded frames (Matroska, RFC 9559; EBML, RFC 8794; the WebM guidelines). Every frame
// lasts as long as the next, so the file's clock ticks once a frame: TimestampScale is 1e9·d/n nanoseconds, rounded to a whole
// one, and frame k has timestamp k. Frame k is then within k/2 ns of k/fps: 1 µs after two thousand frames. (The muxer at hand from
// npm, mediabunny 1.61, writes whole milliseconds into WebM: up to 500 µs off.)

// biome-ignore format: a row holds what an element holds
const ID = {
  EBML: 0x1a45dfa3, EBMLVersion: 0x4286, EBMLReadVersion: 0x42f7, EBMLMaxIDLength: 0x42f2, EBMLMaxSizeLength: 0x42f3,
  DocType: 0x4282, DocTypeVersion: 0x4287, DocTypeReadVersion: 0x4285,
  Segment: 0x18538067, Info: 0x1549a966, TimestampScale: 0x2ad7b1, Duration: 0x4489, Title: 0x7ba9, MuxingApp: 0x4d80, WritingApp: 0x5741,
  Tracks: 0x1654ae6b, TrackEntry: 0xae, TrackNumber: 0xd7, TrackUID: 0x73c5, TrackType: 0x83, FlagLacing: 0x9c, CodecID: 0x86,
  DefaultDuration: 0x23e383, Video: 0xe0, PixelWidth: 0xb0, PixelHeight: 0xba,
  Colour: 0x55b0, MatrixCoefficients: 0x55b1, Range: 0x55b9, TransferCharacteristics: 0x55ba, Primaries: 0x55bb,
  Cluster: 0x1f43b675, Timestamp: 0xe7, SimpleBlock: 0xa3,
  Cues: 0x1c53bb6b, CuePoint: 0xbb, CueTime: 0xb3, CueTrackPositions: 0xb7, CueTrack: 0xf7, CueClusterPosition: 0xf1,
  Tags: 0x1254c367, Tag: 0x7373, Targets: 0x63c0, SimpleTag: 0x67c8, TagName: 0x45a3, TagString: 0x4487,
};
const NOTES_TAG = 'RIMFALL'; // names of tags are in capitals
const CODECS = { vp8: 'V_VP8', vp9: 'V_VP9' };
// the numbers of ITU-T H.273 by the names the browser gives
const MATRIX = { rgb: 0, bt709: 1, bt470bg: 5, smpte170m: 6 },
  TRANSFER = { bt709: 1, smpte170m: 6, 'iec61966-2-1': 13 },
  PRIMARIES = { bt709: 1, bt470bg: 5, smpte170m: 6 };
const VIDEO = 1,
  KEY_FRAME = 0x80;
const LONGEST_CLUSTER = 30_000; // timestamps in a cluster are 16 bits and signed

/** frames: [{bytes, key}] in order, the first a key frame. fps [n, d]. codec 'vp8' or 'vp9'. decoder: what a decoder is told
 *  (WebCodecs), or null; its colours are written. notes: what JSON can hold, its scene under `scene`, so that the clip can be opened again. Gives the
 *  parts of the file, in order. */
export function fileOf({ frames, fps, width, height, codec, decoder = null, title, notes = null }) {
  const colour = decoder?.colorSpace ?? null;
  const tick_ns = Math.round((1e9 * fps[1]) / fps[0]);
  const info = element('Info', [
    element('TimestampScale', whole(tick_ns)),
    element('Duration', float(frames.length)),
    element('Title', text(title)),
    element('MuxingApp', text('Rimfall')),
    element('WritingApp', text('Rimfall')),
  ]);
  const tracks = element('Tracks', [track({ tick_ns, width, height, codec, colour })]);
  const tags = notes ? tagsOf(notes) : [];
  const clusters = clustersOf(frames);
  const cues = cuesOf(clusters, bytesOf([info, tracks, tags].flat()));
  return [...head(), ...element('Segment', [info, tracks, tags, ...clusters.map(one => one.parts), cues])];
}

function head() {
  const numbers = { EBMLVersion: 1, EBMLReadVersion: 1, EBMLMaxIDLength: 4, EBMLMaxSizeLength: 8 };
  return element('EBML', [
    ...Object.entries(numbers).map(([name, value]) => element(name, whole(value))),
    element('DocType', text('webm')),
    element('DocTypeVersion', whole(4)),
    element('DocTypeReadVersion', whole(2)),
  ]);
}

// of the whole file, as it names no target
function tagsOf(notes) {
  const simple = element('SimpleTag', [element('TagName', text(NOTES_TAG)), element('TagString', text(JSON.stringify(notes)))]);
  return element('Tags', [element('Tag', [element('Targets', []), simple])]);
}

function track({ tick_ns, width, height, codec, colour }) {
  return element('TrackEntry', [
    element('TrackNumber', whole(1)),
    element('TrackUID', whole(1)),
    element('TrackType', whole(VIDEO)),
    element('FlagLacing', whole(0)),
    element('CodecID', text(CODECS[codec])),
    element('DefaultDuration', whole(tick_ns)),
    element('Video', [element('PixelWidth', whole(width)), element('PixelHeight', whole(height)), ...colourOf(colour)]),
  ]);
}

function colourOf(colour) {
  if (!colour) return [];
  const numbers = {
    MatrixCoefficients: MATRIX[colour.matrix],
    Range: colour.fullRange ? 2 : 1,
    TransferCharacteristics: TRANSFER[colour.transfer],
    Primaries: PRIMARIES[colour.primaries],
  };
  const known = Object.entries(numbers).filter(([, value]) => value !== undefined);
  return [
    element(
      'Colour',
      known.map(([name, value]) => element(name, whole(value))),
    ),
  ];
}

// each begins with a key frame, so that it can be read from there
function clustersOf(frames) {
  const clusters = [];
  frames.forEach(({ bytes, key }, k) => {
    if (key || k - clusters.at(-1).from >= LONGEST_CLUSTER) clusters.push({ from: k, key, blocks: [element('Timestamp', whole(k))] });
    const { from, blocks } = clusters.at(-1);
    const before = [0x81, (k - from) >> 8, (k - from) & 0xff, key ? KEY_FRAME : 0]; // track 1, timestamp after the cluster's, flags
    blocks.push(element('SimpleBlock', [[Uint8Array.from(before), bytes]]));
  });
  return clusters.map(({ from, key, blocks }) => ({ from, key, parts: element('Cluster', blocks) }));
}

// where each key frame's cluster begins, counted from the segment's first byte
function cuesOf(clusters, before) {
  let at = before;
  const points = [];
  for (const { from, key, parts } of clusters) {
    const place = element('CueTrackPositions', [element('CueTrack', whole(1)), element('CueClusterPosition', whole(at))]);
    if (key) points.push(element('CuePoint', [element('CueTime', whole(from)), place]));
    at += bytesOf(parts);
  }
  return element('Cues', points);
}

// an element as a list of parts: its name and size, then what it holds
function element(name, children) {
  const inside = children.flat();
  return [Uint8Array.from([...bigEndian(ID[name]), ...sized(bytesOf(inside))]), ...inside];
}

const bytesOf = parts => parts.reduce((sum, part) => sum + part.length, 0);

// a size: as many zero bits before its first 1 as it has bytes after the first
function sized(size) {
  let length = 1;
  while (size >= 2 ** (7 * length) - 1) length += 1;
  const bytes = bigEndian(size + 2 ** (7 * length));
  return [...Array(length - bytes.length).fill(0), ...bytes];
}

function bigEndian(value) {
  const bytes = [];
  for (let rest = value; rest > 0 || bytes.length === 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  return bytes;
}

const whole = value => [Uint8Array.from(bigEndian(value))];
const text = value => [new TextEncoder().encode(value)];

function float(value) {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setFloat64(0, value);
  return [bytes];
}
