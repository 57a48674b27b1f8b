// The steps of a talk in their order: each pressed to go there, dragged by its grip or moved with Alt and the arrows; the one it is at is
// unfolded.

import { tr } from '../../state/language.js';
import { lineWords, stepFacts } from '../../state/talk_words.js';
import { h, onDrag, setAttribute, setChildren, setText } from '../shared/dom.js';
import { smallDrawing } from '../shared/small_drawing.js';

/** `form`: element and update(at), of the step it is at; drawingOf(step): of its scene, or null while there is none; units(): the system of units; go(at); move(at, to) → whether
 *  it was. */
export function createStepsList({ talk, form, drawingOf, units, go, move }) {
  const element = h('ol', { class: 'talk-steps', 'aria-label': tr('Steps') });
  const none = h('p', { class: 'kept-none' }, tr('No steps yet. Set the stages as you want them seen, and keep that as the first step.'));
  let rows = [];

  function row(at) {
    const number = h('span', { class: 'talk-number' }, String(at + 1)),
      picture = h('span', { class: 'talk-picture' }),
      line = h('b', {}),
      facts = h('span', { class: 'small' });
    const button = h(
      'button',
      { type: 'button', class: 'talk-step', 'aria-keyshortcuts': 'Alt+ArrowUp Alt+ArrowDown', onclick: () => go(at), onkeydown: event => onKey(event, at) },
      number,
      picture,
      h('span', { class: 'talk-words' }, line, facts),
    );
    const grip = h('span', { class: 'talk-grip', 'aria-hidden': true, title: tr('Drag to another place') });
    const li = h('li', {}, h('div', { class: 'talk-row' }, button, grip));
    drag(grip, li, at);
    return { li, button, picture, line, facts, drawn: undefined };
  }

  function onKey(event, at) {
    const by = event.altKey && !event.ctrlKey && !event.metaKey ? { ArrowUp: -1, ArrowDown: 1 }[event.key] : 0;
    if (!by) return;
    event.preventDefault();
    event.stopPropagation();
    if (move(at, at + by)) focus(at + by);
  }

  // where it would come to lie is marked; let go there, it does
  function drag(grip, li, at) {
    let to = at;
    onDrag(grip, {
      start: () => li.classList.add('dragged'),
      move: event => {
        const beyond = rows.filter(({ li: one }) => one !== li && event.clientY > middle(one.querySelector('.talk-row'))).length;
        to = beyond;
        for (const [k, one] of rows.entries()) {
          one.li.classList.toggle('drop-above', to < at && k === to);
          one.li.classList.toggle('drop-below', to > at && k === to);
        }
      },
      end: (event, moved) => {
        for (const one of rows) one.li.classList.remove('dragged', 'drop-above', 'drop-below');
        if (event.type === 'pointerup' && moved) move(at, to);
      },
    });
  }

  function update() {
    const { steps, at } = talk;
    if (rows.length !== steps.length) {
      rows = steps.map((_, i) => rows[i] ?? row(i));
      setChildren(
        element,
        rows.map(({ li }) => li),
      );
    }
    none.hidden = steps.length > 0;
    element.hidden = !steps.length;
    for (const [i, one] of rows.entries()) {
      setText(one.line, lineWords(steps[i]));
      setText(one.facts, stepFacts(steps[i], steps[i - 1] ?? null, units()).join(' · '));
      setAttribute(one.button, 'aria-current', i === at ? 'step' : null);
      one.li.classList.toggle('at', i === at);
      draw(one, drawingOf(steps[i]));
    }
    const here = rows[at]?.li;
    if (here && form.element.parentElement !== here) here.append(form.element);
    if (here) form.update(at);
  }

  function draw(one, drawing) {
    if (one.drawn === drawing) return;
    one.drawn = drawing;
    setChildren(one.picture, smallDrawing(drawing));
  }

  const focus = at => rows[at]?.button.focus();
  const middle = part => {
    const { top, height } = part.getBoundingClientRect();
    return top + height / 2;
  };
  return { element, none, update, focus, reveal: at => rows[at]?.li.scrollIntoView({ block: 'nearest' }) };
}
