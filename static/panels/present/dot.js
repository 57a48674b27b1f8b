// The bright dot that follows the pointer over a stage; the same for whoever follows.

import { h } from '../shared/dom.js';

/** `element`: what holds both stages. show({stage, x, y}): in shares of that stage; show(null): none. */
export function createDot({ element }) {
  const dot = h('span', { class: 'present-dot', 'aria-hidden': true, hidden: true });
  return {
    show(at) {
      const stage = at && element.querySelector(`.stage-${at.stage}`);
      dot.hidden = !stage;
      if (!stage) return;
      if (dot.parentElement !== stage) stage.append(dot);
      dot.style.left = `${100 * at.x}%`;
      dot.style.top = `${100 * at.y}%`;
    },
  };
}

/** Where a pointer is over the stages, as the dot has it; null beside them. */
export function placeOf({ target, clientX, clientY }) {
  const stage = target.closest?.('.stage');
  if (!stage) return null;
  const { left, top, width, height } = stage.getBoundingClientRect();
  const share = value => Number(Math.min(1, Math.max(0, value)).toFixed(4));
  return { stage: stage.matches('.stage-outside') ? 'outside' : 'aboard', x: share((clientX - left) / width), y: share((clientY - top) / height) };
}
