// Under the picture: frame by frame through it, what a drag does, and what takes a mark back.

import { inSigns, tr } from '../../state/language.js';
import { frameCount, hasPicture, markAt } from '../../state/match.js';
import { countWords } from '../../state/words.js';
import { h, icon, setAttribute, setText } from '../shared/dom.js';
import { createChoice, createSwitch } from '../shared/choice.js';

/** get() → {match, turn, onward, canUndo}. */
export function createSteps({ get, step, toFrame, undo, turnTo, remove, clear, goOnward }) {
  const back = h(
      'button',
      { type: 'button', class: 'icon-button', 'aria-label': tr('Frame back'), title: tr('Frame back (,)'), onclick: () => step(-1) },
      icon('back'),
    ),
    on = h('button', { type: 'button', class: 'icon-button', 'aria-label': tr('Frame on'), title: tr('Frame on (.)'), onclick: () => step(1) }, icon('on')),
    slider = h('input', { type: 'range', min: 0, step: 1, 'aria-label': tr('Frame'), oninput: () => toFrame(Number(slider.value)) }),
    where = h('span', { class: 'match-frame' });
  const choice = createChoice({
    label: tr('What a drag over the picture does'),
    options: [
      { value: 'mark', say: tr('Mark the thing') },
      { value: 'scale', say: tr('Draw the line') },
    ],
    chosen: () => get().turn,
    choose: turnTo,
  });
  const onward = createSwitch({ label: tr('Step on after each mark'), on: () => get().onward, turn: () => goOnward(!get().onward) });
  const button = (words, onclick, title = null) => h('button', { type: 'button', class: 'link', onclick, title }, words);
  const undoing = button(tr('Undo'), undo, tr('Undo (Ctrl+Z)')),
    removing = button(tr('Remove this mark'), remove, tr('Remove this mark (Delete)')),
    clearing = button(tr('Remove all marks'), clear),
    marked = h('span', { class: 'small' });
  const transport = h('div', { class: 'match-transport' }, back, slider, on, where),
    tools = h('p', { class: 'links match-tools' }, choice.element, undoing, removing, clearing, onward.element, marked);
  const element = h('div', { class: 'match-steps' }, transport, tools);

  function update() {
    const { match, turn, canUndo } = get(),
      picture = hasPicture(match);
    setAttribute(transport, 'hidden', !picture);
    for (const part of [choice.element, removing, clearing, onward.element, marked]) setAttribute(part, 'hidden', !picture);
    setAttribute(undoing, 'disabled', !canUndo);
    if (!picture) return;
    const count = frameCount(match),
      time_s = match.frame / match.frame_rate;
    setAttribute(slider, 'max', Math.max(0, count - 1));
    slider.value = String(match.frame);
    const at = { number: match.frame + 1, count, time: inSigns(`${time_s.toFixed(2)}\u00a0s`) },
      words = match.source.count === null ? tr('Exposure {number}, {time}', at) : tr('Frame {number} of {count}, {time}', at);
    setAttribute(slider, 'aria-valuetext', words);
    setText(where, words);
    setAttribute(back, 'disabled', match.frame === 0);
    setAttribute(on, 'disabled', match.frame >= count - 1);
    setAttribute(choice.element, 'hidden', match.by !== 'plane');
    setAttribute(removing, 'disabled', turn !== 'mark' || markAt(match) === null);
    setAttribute(clearing, 'disabled', !match.marks.length);
    setText(marked, countWords(match.marks.length, 'mark'));
    choice.update();
    onward.update();
  }
  return { element, update };
}
