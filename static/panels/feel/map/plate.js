// The plate that bears the name of this habitat on the map: beside the ring, within the map, and where it hides the fewest words.

export const PLATE_HIGH_PX = 17;
const OVER_PX = 9, // from the middle of the ring to a plate over or under it: clear of the ring
  ASIDE_PX = 9;
const SIDES = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]; // right or left, above or below

/** box: of the map; [x, y]: the middle of the ring; wide: of the plate, px; labels: [{corners}], the words that stand on the map.
 *  Gives {left, top, hides}: of the four places the first that hides no label, else the first that hides the fewest. */
export function placePlate(box, [x, y], wide, labels) {
  const places = SIDES.map(([dx, dy]) => {
    const left = Math.min(Math.max(dx > 0 ? x + ASIDE_PX : x - ASIDE_PX - wide, box.left), box.right - wide),
      top = dy < 0 ? y - OVER_PX - PLATE_HIGH_PX : y + OVER_PX;
    const corners = cornersOf(left, top, wide, PLATE_HIGH_PX);
    return { left, top, hides: labels.filter(label => meet(label.corners, corners)) };
  });
  return places
    .filter(({ top }) => top >= box.top && top + PLATE_HIGH_PX <= box.bottom)
    .reduce((a, b) => (b.hides.length < a.hides.length ? b : a));
}

export function cornersOf(left, top, wide, high) {
  return [[left, top], [left + wide, top], [left + wide, top + high], [left, top + high]];
}

/** Whether two rectangles, however turned, have a part in common: no side of either parts them. */
export function meet(a, b) {
  return ![a, b].some(shape =>
    shape.some(([x, y], i) => {
      const [p, q] = shape[(i + 1) % shape.length],
        off = ([u, v]) => (u - x) * (q - y) - (v - y) * (p - x);
      const [mine, other] = [a.map(off), b.map(off)];
      return Math.max(...mine) <= Math.min(...other) || Math.max(...other) <= Math.min(...mine);
    }),
  );
}

/** The words that stand on the map as they are drawn: [{element, corners}], corners in the units of the drawing. */
export function labelsOf(texts) {
  return texts.map(element => {
    const { x, y, width, height } = element.getBBox(),
      turned = [...element.transform.baseVal].reduce((all, { matrix }) => all.multiply(matrix), new DOMMatrix());
    const corners = cornersOf(x, y, width, height).map(([u, v]) => turned.transformPoint(new DOMPoint(u, v)));
    return { element, corners: corners.map(point => [point.x, point.y]) };
  });
}
