// How the stages share their room: whichever split leaves each nearer 16:10, unless the viewer fixed it.

const GAP = 2;
const NEAR = 1.6;

export function splitOf(width, height, wanted) {
  if (wanted === 'beside' || wanted === 'stacked') return wanted;
  const off = (w, h) => Math.abs(Math.log(w / h / NEAR));
  return off(width / 2, height) < off(width, height / 2) ? 'beside' : 'stacked';
}

// Rectangles {x, y, width, height} of both halves; null for the one that is not shown.
export function halvesOf(width, height, { split, alone }) {
  const whole = { x: 0, y: 0, width, height };
  if (alone) return { aboard: alone === 'aboard' ? whole : null, outside: alone === 'outside' ? whole : null, seam: null };
  if (splitOf(width, height, split) === 'beside') {
    const w = Math.floor((width - GAP) / 2);
    return { aboard: { ...whole, width: w }, outside: { ...whole, x: w + GAP, width: width - w - GAP }, seam: { x: w, y: 0, width: GAP, height } };
  }
  const h = Math.floor((height - GAP) / 2);
  return { aboard: { ...whole, height: h }, outside: { ...whole, y: h + GAP, height: height - h - GAP }, seam: { x: 0, y: h, width, height: GAP } };
}
