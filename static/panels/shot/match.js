// Could this path be? A drawn or filmed path against what any habitat could do.

/** `element`: the section under its heading; update() is called while the place is open. */
export function createMatch({ element }) {
  element.hidden = true;
  return { update() {} };
}
