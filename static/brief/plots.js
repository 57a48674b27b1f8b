// The three plots, as the server draws them for any file.

import { h } from '../panels/shared/dom.js';
import { parseDrawing } from '../panels/shared/drawing.js';

const FORMATS = ['plot-path-svg', 'plot-height-svg', 'plot-felt-svg'];
const FOOT_MM = 5; // the caution under each: the page has its own

/** Their figures; none where the scene has nothing to plot. */
export async function plotsOf(client, scene) {
  if (!scene.motions.length) return [];
  const files = await Promise.all(FORMATS.map(format => client.exported(format, { scene, export: {} })));
  return Promise.all(files.map(async file => h('figure', { class: 'plot' }, drawn(await file.text()))));
}

function drawn(text) {
  const svg = parseDrawing(text);
  const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
  svg.setAttribute('viewBox', `0 0 ${width} ${height - FOOT_MM}`);
  svg.setAttribute('aria-label', svg.querySelector('title').textContent);
  for (const side of ['width', 'height']) svg.removeAttribute(side);
  return svg;
}
