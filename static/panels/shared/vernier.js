// The vernier tape: a fixed index and a scale ten times finer that slides under it.

import { formatFigure } from '../../state/units.js';
import { h, onDrag, s, setAttribute } from './dom.js';

// one fine step of the slider on the tape, closer on a short tape so that it shows a few figures
const STEP_PX = 7,
  SHORT_STEP_PX = 5,
  SHORT = 220;

/** `unit`: the one it is read in: to(SI value), from(shown value), step(fine SI step) there. */
export function createVernier({ scale, value, write, unit }) {
  const drawn = s('svg', { 'aria-hidden': true });
  const element = h('span', { class: 'tape', hidden: true }, drawn);

  let width = 0,
    height = 0;
  new ResizeObserver(([entry]) => {
    ({ width, height } = entry.contentRect);
    update();
  }).observe(element);

  function update() {
    if (!width) return;
    const now = unit.to(value()),
      step = unit.step(scale.step(value())),
      [least, most] = [scale.min, scale.max].map(unit.to),
      middle = width / 2,
      px = stepPx(),
      first = Math.ceil((now - (middle / px) * step) / step);
    const parts = [],
      low = height < 24,
      ticks = low ? [3, 5, 7] : [4, 7, 10];
    for (let k = first; ; k += 1) {
      const x = middle + ((k * step - now) / step) * px;
      if (!(x <= width)) break;
      const at = k * step;
      if (at < least - step / 2 || at > most + step / 2) continue;
      const long = k % 10 === 0,
        half = k % 5 === 0;
      parts.push(s('path', { d: `M${x.toFixed(1)} 0v${ticks[long ? 2 : half ? 1 : 0]}`, class: long ? 'long' : 'short' }));
      if (long && x > 14 && x < width - 14)
        parts.push(s('text', { x: x.toFixed(1), y: height - (low ? 3 : 6), 'text-anchor': 'middle' }, formatFigure(at, step * 10)));
    }
    parts.push(
      s('path', { d: `M${middle} 0v${height - (low ? 13 : 17)}`, class: 'index' }),
      s('path', { d: `M${middle - 5} 0h10l-5 7z`, class: 'index full' }),
    );
    setAttribute(drawn, 'width', width);
    setAttribute(drawn, 'height', height);
    drawn.replaceChildren(...parts);
  }

  const stepPx = () => (width < SHORT ? SHORT_STEP_PX : STEP_PX);

  let from = 0;
  onDrag(element, {
    start(event) {
      event.preventDefault();
      from = value();
      return true;
    },
    move(event, down) {
      write(unit.from(unit.to(from) - ((event.clientX - down.clientX) / stepPx()) * unit.step(scale.step(from))), true);
    },
    end(_event, moved) {
      if (moved) write(value(), false);
    },
  });
  return { element, update };
}
