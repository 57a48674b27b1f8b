// What lies under a point of a picture, enlarged, in a corner away from it.

import { h } from '../shared/dom.js';

const SIZE_PX = 124,
  TIMES = 6,
  GAP_PX = 8; // round the middle, which the cross leaves open
const LINES = [
  ['rgba(10, 16, 22, .7)', 3],
  ['#FFFFFF', 1],
];

/** {element, show(plate, [x, y], k), hide()}: `k` picture px in one of the window. */
export function createLoupe() {
  const element = h('canvas', { class: 'match-loupe', width: SIZE_PX, height: SIZE_PX, hidden: true, 'aria-hidden': true });

  function show(plate, [x, y], k) {
    const context = element.getContext('2d'),
      size = (SIZE_PX * k) / TIMES;
    element.hidden = false;
    element.classList.toggle('right', x < plate.width / 2 && y < plate.height / 2);
    context.imageSmoothingEnabled = size > SIZE_PX / 2;
    context.fillStyle = '#0A1016';
    context.fillRect(0, 0, SIZE_PX, SIZE_PX);
    context.drawImage(plate, x - size / 2, y - size / 2, size, size, 0, 0, SIZE_PX, SIZE_PX);
    for (const [style, width] of LINES) cross(context, style, width);
  }
  const hide = () => {
    element.hidden = true;
  };
  return { element, show, hide };
}

function cross(context, style, width) {
  const half = SIZE_PX / 2;
  context.strokeStyle = style;
  context.lineWidth = width;
  context.beginPath();
  for (const [a, b] of [
    [0, half - GAP_PX],
    [half + GAP_PX, SIZE_PX],
  ]) {
    context.moveTo(a, half);
    context.lineTo(b, half);
    context.moveTo(half, a);
    context.lineTo(half, b);
  }
  context.stroke();
}
