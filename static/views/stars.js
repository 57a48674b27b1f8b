// The bright stars as they are in the sky, the habitat's axis toward the celestial north pole: where each stands, how large and in
// what colour it is drawn. Six bytes a star, as `stars_module` of static/vendor_build.py packs them.

const BYTES = 6;
const FAINT_PX = 1.9,
  BRIGHT_PX = 3.6; // more, for magnitude 0
const LEAST = 0.34;
const SPREAD = 0.34; // of the flux: on a screen a hundredth of it could not be told from none

// Colour index B−V, and about the colour of a star that has it, from the hottest to the coolest.
// biome-ignore format: a row is an index
const COLORS = [
  [-0.33, [0.61, 0.69, 1]],
  [-0.17, [0.67, 0.75, 1]],
  [0.15, [0.79, 0.84, 1]],
  [0.44, [0.97, 0.97, 1]],
  [0.68, [1, 0.96, 0.92]],
  [1.15, [1, 0.85, 0.68]],
  [1.64, [1, 0.76, 0.5]],
];

/** [{toward: [x, y, z] of length 1 (z to the celestial north pole, x to the vernal equinox), magnitude, color_index, size_px, tint}], brightest first. */
export function starsOf(base64) {
  const bytes = Uint8Array.from(atob(base64), letter => letter.charCodeAt(0));
  const view = new DataView(bytes.buffer);
  return Array.from({ length: bytes.length / BYTES }, (_, i) => {
    const at = i * BYTES;
    const ascension_rad = (view.getUint16(at, true) / 65536) * 2 * Math.PI;
    const declination_rad = (view.getInt16(at + 2, true) / 32767) * (Math.PI / 2);
    const magnitude = view.getUint8(at + 4) / 32 - 2;
    const color_index = view.getUint8(at + 5) / 80 - 0.5;
    const flat = Math.cos(declination_rad);
    return {
      toward: [flat * Math.cos(ascension_rad), flat * Math.sin(ascension_rad), Math.sin(declination_rad)],
      magnitude,
      color_index,
      ...drawn(magnitude, color_index),
    };
  });
}

function drawn(magnitude, color_index) {
  const strength = 10 ** (-0.4 * SPREAD * magnitude);
  const bright = Math.min(1, Math.max(LEAST, strength));
  return { size_px: FAINT_PX + BRIGHT_PX * Math.min(strength, 1.5), tint: colorOf(color_index).map(part => bright * part) };
}

function colorOf(color_index) {
  const k = Math.max(
    1,
    COLORS.findIndex(([index]) => index >= color_index),
  );
  const [[low, from], [high, to]] = color_index > COLORS.at(-1)[0] ? COLORS.slice(-2) : [COLORS[k - 1], COLORS[k]];
  const part = Math.min(1, Math.max(0, (color_index - low) / (high - low)));
  return from.map((one, c) => one + part * (to[c] - one));
}
