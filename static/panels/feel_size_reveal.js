// An answer that somebody has just asked for is brought into view: only the place's own body is scrolled, and no further than needed.

/** Not while something is typed elsewhere: what is looked at there must stay where it is. `home` holds the answer's questions. */
export function reveal(answer, home) {
  const at = document.activeElement;
  if (at?.matches('input, select, textarea') && !home.contains(at)) return;
  const body = answer.closest('.body');
  body.scrollTop += nearest(answer.getBoundingClientRect(), body.getBoundingClientRect());
}

/** How far to scroll for `part` to lie within `whole`; one higher than that begins at its top. */
export function nearest(part, whole) {
  const over = part.top - whole.top,
    under = part.bottom - whole.bottom;
  return over < 0 ? over : Math.max(0, Math.min(over, under));
}
