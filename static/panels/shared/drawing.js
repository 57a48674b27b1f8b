// A drawing of the server's, as SVG text, made into elements: the page shows it, and lays its handles over it.

/** The <svg> element of such a text, belonging to this document. */
export function parseDrawing(text) {
  return document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
}
