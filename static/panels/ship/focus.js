// The focus stays where it was over what is made anew.

const FOCUSABLE = 'button, input, select, [tabindex], [contenteditable]';
const keyOf = part =>
  [
    part.closest('[role=group]')?.getAttribute('aria-label'),
    part.tagName,
    part.name,
    part.getAttribute('aria-label'),
    part.type === 'radio' ? part.value : '',
    part.textContent,
  ].join('|');

/** rebuild() makes the children of `element` anew; what had the focus, or what is called the same, has it after; `or`: else what. */
export function keepFocus(element, rebuild, or = null) {
  const focused = element.contains(document.activeElement) && document.activeElement;
  const key = focused && keyOf(focused);
  rebuild();
  if (!focused || element.contains(document.activeElement)) return;
  const same = [...element.querySelectorAll(FOCUSABLE)].find(part => keyOf(part) === key);
  (same ?? (or && element.querySelector(or)))?.focus({ preventScroll: true });
}

/** What has the focus is about to be hidden or has been: the first of these that is seen has it instead. */
export function passFocus(...next) {
  const { activeElement } = document;
  if (activeElement && activeElement !== document.body && activeElement.checkVisibility()) return;
  next.find(part => part?.checkVisibility())?.focus({ preventScroll: true });
}
