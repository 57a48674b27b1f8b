// This habitat on the map: guides to both axes, a ring, and its name on a plate beside it, within the map and where that hides the
// fewest words; the words they would cut are hidden whole.

import { s, setAttribute, setText } from '../../shared/dom.js';
import { beyond } from './frame.js';

const PLATE_HIGH_PX = 17,
  OVER_PX = 9, // from the middle of the ring to a plate over or under it: clear of the ring
  ASIDE_PX = 9;
const SIDES = [
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]; // right or left, above or below

const MOST_LETTERS = 26,
  PAD_PX = 3, // of the plate beside its name
  HALF_PX = 8; // of the square about the ring

export function createHabitatMark() {
  const guide = s('path', { class: 'guide' }),
    ring = s('circle', { r: 7.5, class: 'ring' }),
    dot = s('circle', { r: 2.5 }),
    plate = s('rect', { height: PLATE_HIGH_PX, class: 'plate' }),
    name = s('text', { class: 'name' });
  const element = s('g', {}, guide, ring, dot, plate, name);
  let fitted = null,
    wide = 0;

  /** labels: of the words on the map, as labelsOf gives them. */
  function update(frame, { called, radius_m, spin_rpm, labels }) {
    const { left, right, bottom } = frame.box,
      [x, y] = [frame.x(radius_m), frame.y(spin_rpm)],
      off = beyond(frame, radius_m, spin_rpm);
    setAttribute(guide, 'd', `M${left} ${y.toFixed(1)}H${x.toFixed(1)}V${bottom}`);
    for (const circle of [ring, dot]) put(circle, { cx: x, cy: y });
    setAttribute(dot, 'visibility', off ? 'hidden' : null);
    fit(called, off ? `: ${off}` : '', right - left);
    const under = labels.filter(label => meet(label.corners, cornersOf(x - HALF_PX, y - HALF_PX, 2 * HALF_PX, 2 * HALF_PX))),
      place = placePlate(
        frame.box,
        [x, y],
        wide,
        labels.filter(label => !under.includes(label)),
      );
    put(plate, { x: place.left, y: place.top, width: wide });
    put(name, { x: place.left + PAD_PX, y: place.top + PLATE_HIGH_PX - 4 });
    for (const label of labels) setAttribute(label.element, 'visibility', [...under, ...place.hides].includes(label) ? 'hidden' : null);
  }

  // as many letters as there is room for, measured as they are drawn, which takes time: once for a name
  function fit(called, tail, room_px) {
    const key = [called, tail, room_px].join();
    if (key === fitted) return;
    fitted = key;
    for (let letters = MOST_LETTERS; letters > 0; letters -= 1) {
      setText(name, shortened(called, letters) + tail);
      wide = name.getComputedTextLength() + 2 * PAD_PX;
      if (wide <= room_px) return;
    }
  }
  return { element, update };
}

function put(element, places_px) {
  for (const [name, px] of Object.entries(places_px)) setAttribute(element, name, px.toFixed(1));
}

function shortened(text, letters) {
  return text.length <= letters ? text : `${text.slice(0, Math.max(0, letters - 1)).trimEnd()}…`;
}

/** box: of the map; [x, y]: the middle of the ring; wide: of the plate, px; labels: [{corners}], the words that stand on the map.
 *  Gives {left, top, hides}: of the four places the first that hides no label, else the first that hides the fewest. */
export function placePlate(box, [x, y], wide, labels) {
  const places = SIDES.map(([dx, dy]) => {
    const left = Math.min(Math.max(dx > 0 ? x + ASIDE_PX : x - ASIDE_PX - wide, box.left), box.right - wide),
      top = dy < 0 ? y - OVER_PX - PLATE_HIGH_PX : y + OVER_PX;
    const corners = cornersOf(left, top, wide, PLATE_HIGH_PX);
    return { left, top, hides: labels.filter(label => meet(label.corners, corners)) };
  });
  return places.filter(({ top }) => top >= box.top && top + PLATE_HIGH_PX <= box.bottom).reduce((a, b) => (b.hides.length < a.hides.length ? b : a));
}

export function cornersOf(left, top, wide, high) {
  return [
    [left, top],
    [left + wide, top],
    [left + wide, top + high],
    [left, top + high],
  ];
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
