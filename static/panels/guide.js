// The short look round, in the page's own column: nothing lies over anything, and no focus is taken. What a step is about has a frame.

import { tr } from '../state/language.js';
import { STEPS, createGuide } from '../state/guide.js';
import { $, h, setAttribute, setText } from './shared/dom.js';

let shown = null; // {guide, element}

/** Shows it from the start; `focus`: where somebody asked for it. */
export function showGuide({ store, focus = false }) {
  shown?.guide.leave();
  store.look({ guided: true, folded: false });
  const step = h('p', { class: 'small', id: 'guide-step' }),
    says = h('p', { 'aria-live': 'polite' });
  const back = h('button', { type: 'button', class: 'link', onclick: () => guide.back() }, tr('Back')),
    on = h('button', { type: 'button', class: 'btn', onclick: () => guide.next() }),
    skip = h('button', { type: 'button', class: 'link', onclick: () => guide.leave() }, tr('Skip'));
  const element = h(
    'section',
    { class: 'guide', 'aria-labelledby': 'guide-step', onkeydown: event => event.key === 'Escape' && guide.leave() },
    step,
    says,
    h('p', { class: 'links' }, on, back, skip),
  );
  const guide = createGuide({ turned: draw });
  shown = { guide, element };

  function draw() {
    point(guide.step?.points);
    if (guide.at === null) return away();
    setText(step, tr('A look round: {at} of {count}', { at: guide.at + 1, count: guide.count }));
    setText(says, tr(guide.step.say));
    setText(on, guide.isLast ? tr('Done') : tr('Next'));
    setAttribute(back, 'hidden', guide.at === 0);
    setAttribute(skip, 'hidden', guide.isLast);
  }
  function away() {
    const had = element.contains(document.activeElement);
    element.remove();
    shown = null;
    if (had) $('.stage-view')?.focus({ preventScroll: true });
  }
  draw();
  $('#hint').after(element);
  if (!focus) return;
  element.scrollIntoView({ block: 'nearest' });
  on.focus();
}

// What is pointed at, and nothing else.
function point(selector) {
  for (const { points } of STEPS) $(points)?.classList.toggle('pointed-at', points === selector);
}
