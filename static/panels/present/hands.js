// What hands do while presenting: keys of keyboard and clicker, a swipe, a pointer that rests. Nothing of it reaches the page beneath.

import { pressOf, swipeOf } from '../../state/presenting.js';

const STILL_MS = 4000;
const VALUED = 'input[type=range], [role=slider], [role=spinbutton]';
const TEXTS = 'select, textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])';

/** Hears the window until stop() is called. press(what); idle(true) once nothing has moved for 4 s, idle(false) when something does. */
export function attachHands({ element, press, idle }) {
  const off = new AbortController();
  const listen = (target, type, hear, options = {}) => target.addEventListener(type, hear, { ...options, signal: off.signal });
  let tabbed = false, // the focus is where it is by the Tab key
    timer = 0,
    still = false,
    held = false; // a key of ours is down: some browsers press the focused button when Space comes up again

  function move() {
    if (still) idle(false);
    still = false;
    clearTimeout(timer);
    timer = setTimeout(rest, STILL_MS);
  }
  function rest() {
    still = true;
    idle(true);
  }

  const isOpen = () => document.querySelector('dialog[open], :popover-open') !== null;
  function where(target) {
    if (target.closest?.(TEXTS) || target.isContentEditable) return 'text';
    return tabbed && target.closest?.(VALUED) ? 'slider' : '';
  }

  listen(
    window,
    'keydown',
    event => {
      move();
      if (event.key === 'Tab') tabbed = true;
      if (isOpen() && event.key !== 'F5') return;
      const what = pressOf(event, where(event.target));
      if (!what) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      held = event.key === ' ';
      if (what !== 'nothing' && !(event.repeat && !['next', 'back'].includes(what))) press(what);
    },
    { capture: true },
  );
  listen(
    window,
    'keyup',
    event => {
      if (held && event.key === ' ') event.preventDefault();
      held = false;
    },
    { capture: true },
  );
  listen(window, 'pointermove', move, { capture: true });
  listen(window, 'wheel', move, { capture: true, passive: true });
  listen(
    window,
    'pointerdown',
    () => {
      tabbed = false;
      move();
    },
    { capture: true },
  );
  attachSwipe({ element, listen, press });
  move();
  return {
    stop() {
      off.abort();
      clearTimeout(timer);
      if (still) idle(false);
    },
  };
}

// One finger's way over the stages is a swipe, and turns no view; two fingers do what they always do.
function attachSwipe({ element, listen, press }) {
  const fingers = new Map();
  listen(
    element,
    'pointerdown',
    event => {
      if (event.pointerType === 'touch' && event.target.closest('.stage-view')) fingers.set(event.pointerId, event);
    },
    { capture: true },
  );
  listen(
    element,
    'pointermove',
    event => {
      if (fingers.size === 1 && fingers.has(event.pointerId)) event.stopPropagation();
    },
    { capture: true },
  );
  for (const type of ['pointerup', 'pointercancel'])
    listen(
      element,
      type,
      event => {
        const down = fingers.get(event.pointerId),
          alone = fingers.size === 1;
        fingers.delete(event.pointerId);
        if (!down || !alone || type === 'pointercancel') return;
        const what = swipeOf(event.clientX - down.clientX, event.clientY - down.clientY, event.timeStamp - down.timeStamp);
        if (!what) return;
        event.stopPropagation();
        event.target.dispatchEvent(new PointerEvent('pointercancel', { pointerId: event.pointerId, bubbles: true })); // to whoever saw it come down
        press(what);
      },
      { capture: true },
    );
}
