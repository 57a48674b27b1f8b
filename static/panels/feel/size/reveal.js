// An answer that somebody has just asked for is brought into view: only the place's own body is scrolled, and no further than needed.

const FADES_PX = 24; // at the foot of the place, where what goes on below pales

/** Not while something is typed elsewhere: what is looked at there must stay where it is. `home` holds the answer's questions. */
export function reveal(answer, home) {
  const at = document.activeElement,
    asks = at?.matches('input, select, textarea');
  if (asks && !home.contains(at)) return;
  const body = answer.closest('.body'),
    asked = asks ? at.getBoundingClientRect() : null;
  body.scrollTop += nearest(answer.getBoundingClientRect(), body.getBoundingClientRect(), asked);
}

/** How far to scroll for `part` to lie within `whole`; one higher than that begins at its top. What was `asked` stays in sight
 *  as well, where that leaves `part` the lower half. */
export function nearest(part, whole, asked = null) {
  const over = part.top - whole.top,
    under = part.bottom - whole.bottom + FADES_PX,
    both = asked ? asked.top - whole.top - FADES_PX / 4 : over;
  if (over < 0) return over;
  const most = over - both < (whole.bottom - whole.top) / 2 ? both : over;
  return Math.max(0, Math.min(most, under));
}
