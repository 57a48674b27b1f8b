// This habitat on the map: guides to both axes, a ring, and its name on a plate beside it; the words they would cut are hidden whole.

import { s, setAttribute, setText } from '../../shared/dom.js';
import { beyond } from './frame.js';
import { PLATE_HIGH_PX, cornersOf, meet, placePlate } from './plate.js';

const MOST_LETTERS = 26,
  PAD_PX = 3, // of the plate beside its name
  HALF_PX = 8; // of the square about the ring

export function createHere() {
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
      place = placePlate(frame.box, [x, y], wide, labels.filter(label => !under.includes(label)));
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
