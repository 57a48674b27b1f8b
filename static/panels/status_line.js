// The line over the stages that says what the page is busy with or waits for; in an open sheet it stands under the sheet's title.

import { tr } from '../state/language.js';
import { h, setAttribute, setChildren, setText } from './shared/dom.js';

const PART = 100; // of a progress bar
const SECOND_MS = 1000;

export function createStatusLine({ status, home }) {
  const words = h('p', { class: 'state-words' }),
    so = h('span', { class: 'state-time' }),
    bar = h('progress', { max: PART, 'aria-label': tr('Progress') }),
    buttons = h('span', { class: 'state-buttons' }),
    heard = h('p', { class: 'unseen', role: 'status' });
  const element = h('div', { class: 'state' }, h('div', { class: 'state-box' }, words, so, bar, buttons), heard);
  let drawn = null,
    ticking = null,
    cameFrom = null; // what had the focus before a button here

  function update() {
    const { line } = status;
    setText(so, line?.for_s ? tr('{time} so far', { time: `${line.for_s}\u00a0s` }) : '');
    document.body.classList.toggle('waiting', status.dimmed);
    const key = line && [line.kind, line.say, ...line.buttons.map(({ say }) => say)].join('|');
    if (key !== drawn) draw(line);
    drawn = key;
    setAttribute(bar, 'hidden', line?.share === null || line === null);
    if (typeof line?.share === 'number') bar.value = Math.round(PART * line.share);
  }

  function draw(line) {
    const focused = element.contains(document.activeElement);
    element.classList.toggle('shown', line !== null);
    clearInterval(ticking);
    if (line?.kind === 'work') ticking = setInterval(update, SECOND_MS);
    setText(words, line?.say ?? '');
    setText(heard, line?.say ?? '');
    element.dispatchEvent(new CustomEvent('rimfall:line', { bubbles: true })); // labels on the stages keep off it
    setChildren(
      buttons,
      line?.buttons.map(({ say }, i) => h('button', { type: 'button', class: 'link', onclick: () => status.line?.buttons[i]?.run() }, say)),
    );
    if (focused) (buttons.querySelector('button') ?? cameFrom)?.focus();
  }

  function settle() {
    const sheet = document.querySelector('dialog[open]:modal');
    if (element.parentElement === (sheet ?? home)) return;
    if (sheet) sheet.querySelector('header').after(element);
    else home.append(element);
  }
  // what is outside an open sheet cannot be pressed
  new MutationObserver(settle).observe(document.body, { subtree: true, attributeFilter: ['open'] });

  element.addEventListener('focusin', ({ relatedTarget }) => {
    if (!element.contains(relatedTarget)) cameFrom = relatedTarget;
  });
  settle();
  status.on(update);
  update();
  return { element };
}
