// How large the words of stages, lanes and map are: as chosen, for a desk, a room or a hall, and with the window. No elements.

const SIZES = { desk: 1, room: 1.35, hall: 1.8 };

/** The factor by which they are larger than at a desk, in a window of so many px: a large screen makes them larger still, and a
 *  small window takes no larger ones than fit.
 *  @param {string} chosen @param {number} width @param {number} height */
export function typeFactor(chosen, width, height) {
  const grown = Math.max(1, Math.min(width / 1920, height / 1080));
  const most = Math.max(1, Math.min(width / 700, height / 400));
  return Number(Math.min((SIZES[chosen] ?? 1) * grown, most).toFixed(3));
}
