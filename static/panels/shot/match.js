// Could this path be? A drawn or filmed path against what any habitat could do.

/** `element`: the section under its heading, both hidden until there is something to test with; update() is called while the place is open. */
export function createMatch({ element }) {
  for (const part of [element, document.getElementById('shot-match-title')]) part.hidden = true;
  return { update() {} };
}
