// Handles over a picture: a mark, and the ends of the line of known length. Arrows move them; the line's ends are dragged too.

import { tr } from '../../state/language.js';
import { h, onDrag, setAttribute } from '../shared/dom.js';

const STEP_PX = 1,
  LARGE = 10;
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1], Enter: [0, 0] };

/** move([dx, dy]): by keys, [0, 0] for Enter; drag(event) and dropped() where it is dragged; left(): it lost the focus. */
export function createGrip({ kind, label, move, left, drag = null, dropped = null }) {
  const element = h('span', {
    class: `ring-grip ${kind}`,
    role: 'slider',
    tabindex: 0,
    'aria-label': label,
    'aria-roledescription': tr('slider of two ways'),
    'aria-valuemin': 0,
    onblur: left,
    onkeydown: event => {
      const by = STEPS[event.key];
      if (event.ctrlKey || event.metaKey || event.altKey || !by) return;
      move(by.map(part => part * STEP_PX * (event.shiftKey ? LARGE : 1)));
      event.preventDefault();
      event.stopPropagation();
    },
  });
  if (drag)
    onDrag(element, {
      start: event => event.preventDefault(),
      move: (event, _down, moved) => moved && drag(event),
      end: (_event, moved) => moved && dropped(),
    });

  /** Where it stands in a picture `width` by `height`; `isSet`: not only offered there. */
  function place([x, y], { width, height }, shown, isSet = true) {
    element.hidden = !shown;
    element.style.left = `${((100 * x) / width).toFixed(3)}%`;
    element.style.top = `${((100 * y) / height).toFixed(3)}%`;
    setAttribute(element, 'aria-valuemax', width);
    setAttribute(element, 'aria-valuenow', Math.round(x));
    const at = { x: Math.round(x), y: Math.round(y) };
    setAttribute(
      element,
      'aria-valuetext',
      isSet ? tr('{x} px from the left, {y} from the top', at) : tr('not marked, {x} px from the left, {y} from the top', at),
    );
  }
  return { element, place };
}
