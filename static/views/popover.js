// A small panel that a stage button opens. Escape, a press elsewhere or the button itself closes it; focus goes back.

import { make } from './overlay.js';

// `dom` is the half it belongs to; it lies over both halves, so that a low one does not cut it.
export function attachPopover(opener, dom, label, fill) {
  const panel = make('div', 'stage-popover', dom.element);
  panel.setAttribute('role', 'dialog');
  panel.setAttribute('aria-label', label);
  panel.hidden = true;

  const popover = {
    panel,
    get open() {
      return !panel.hidden;
    },
    show() {
      fill(panel);
      panel.hidden = false;
      place();
      opener.setAttribute('aria-expanded', 'true');
      (panel.querySelector('[aria-checked="true"]') ?? panel.querySelector('button'))?.focus();
      document.addEventListener('pointerdown', elsewhere, true);
    },
    hide({ refocus = true } = {}) {
      if (panel.hidden) return;
      panel.hidden = true;
      opener.setAttribute('aria-expanded', 'false');
      document.removeEventListener('pointerdown', elsewhere, true);
      if (refocus) opener.focus();
    },
    refresh() {
      if (!panel.hidden) fill(panel);
    },
  };

  function place() {
    const whole = dom.element.getBoundingClientRect();
    const at = opener.getBoundingClientRect();
    panel.style.right = `${Math.max(8, whole.right - Math.max(at.right, whole.left + panel.offsetWidth + 8))}px`;
    panel.style.top = `${Math.max(8, Math.min(at.bottom - whole.top + 8, whole.height - panel.offsetHeight - 8))}px`;
  }

  function elsewhere(event) {
    if (!panel.contains(event.target) && !opener.contains(event.target)) popover.hide({ refocus: false });
  }
  opener.addEventListener('click', () => (popover.open ? popover.hide() : popover.show()));
  panel.addEventListener('keydown', (event) => {
    event.stopPropagation();
    if (event.key === 'Escape') popover.hide();
    else rove(panel, event);
  });
  return popover;
}

// One tab stop for a set of choices; arrows move and choose.
function rove(panel, event) {
  const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  const choices = [...panel.querySelectorAll('[role="radio"]')];
  const here = choices.indexOf(document.activeElement);
  if (!by || here < 0) return;
  event.preventDefault();
  choices[(here + by + choices.length) % choices.length].click();
  panel.querySelector('[aria-checked="true"]')?.focus();
}
