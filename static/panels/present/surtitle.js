// The line over the stages while presenting, how far the talk has come, and four buttons for who has no clicker.

import { tr } from '../../state/language.js';
import { h, icon, setAttribute, setText } from '../shared/dom.js';

/** press(what): one of the presses of state/presenting.js. */
export function createSurtitle({ press }) {
  const line = h('h1', { class: 'surtitle-line', tabindex: -1 });
  const step = h('p', { class: 'surtitle-step' });
  const button = (what, label, sign) => h('button', { type: 'button', 'aria-label': label, title: label, onclick: () => press(what) }, sign);
  const back = button('back', tr('Back (Page Up)'), icon('before')),
    next = button('next', tr('On (Page Down)'), icon('after'));
  const element = h(
    'main',
    { class: 'surtitle dark' },
    line,
    h(
      'div',
      { class: 'surtitle-tools' },
      step,
      back,
      next,
      button('help', tr('Keys and controls (?)'), h('span', { 'aria-hidden': true }, '?')),
      button('leave', tr('Leave (Esc)'), icon('close')),
    ),
  );

  function update(talk) {
    const count = talk.steps.length;
    setText(line, talk.step?.line || talk.title || tr('Untitled talk'));
    setText(step, count > 1 ? tr('step {step} of {of}', { step: talk.at + 1, of: count }) : '');
    setAttribute(back, 'aria-disabled', count > 1 && talk.at === 0 ? true : null);
    setAttribute(next, 'aria-disabled', count > 1 && talk.at === count - 1 && talk.phase !== 'held' ? true : null);
  }
  return { element, update, focus: () => line.focus({ preventScroll: true }) };
}
