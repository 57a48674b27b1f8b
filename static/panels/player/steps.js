// The steps of a talk, to choose from while it is not presented, and the button that presents.

import { tr } from '../../state/language.js';
import { h, icon, setAttribute, setText } from '../shared/dom.js';

export function createPresentButton({ present }) {
  return { element: h('button', { type: 'button', class: 'player-button', title: tr('Present (P)'), onclick: () => present.enter() }, tr('Present')) };
}

/** `line`: the element that says the line of the step it is at; `home`: where the list of steps stands. */
export function createSteps({ talk, home, line }) {
  const buttons = talk.steps.map((step, at) =>
    h(
      'button',
      {
        type: 'button',
        class: 'player-step',
        title: step.line || null,
        'aria-label': tr('Step {number}: {line}', { number: at + 1, line: step.line || tr('no line') }),
        onclick: () => talk.go(at),
      },
      at + 1,
    ),
  );
  const turn = (label, act, sign) => h('button', { type: 'button', class: 'player-step', 'aria-label': label, title: label, onclick: act }, icon(sign));
  const back = turn(tr('Back (Page Up)'), () => talk.back(), 'before'),
    on = turn(tr('On (Page Down)'), () => talk.next(), 'after');
  home.append(h('nav', { class: 'player-steps', 'aria-label': tr('Steps') }, back, buttons, on));

  function update() {
    setText(line, talk.step?.line ?? '');
    setAttribute(back, 'aria-disabled', talk.at === 0 ? true : null);
    setAttribute(on, 'aria-disabled', talk.at === talk.steps.length - 1 && talk.phase !== 'held' ? true : null);
    buttons.forEach((button, at) => setAttribute(button, 'aria-current', at === talk.at ? 'step' : null));
  }
  for (const topic of ['step', 'phase']) talk.on(topic, update);
  update();
}
