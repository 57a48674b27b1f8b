// Whether the ship would cope, on the sheet: the craft drawn, every question with its answer, and what the answers rest on and leave out.

import { tr } from '../state/language.js';
import { h, parseDrawing, setAttribute } from '../panels/shared/dom.js';
import { craftRequest, findingsOf, restOn, viewsWords } from '../state/ship.js';

const WIDTH_PX = 420; // of its drawings; the sheet scales them

/** The answer about a scene's craft; null where it carries none. */
export const askCraft = async (client, document, units) => {
  const body = craftRequest(document);
  return body && client.craft(body, { units, width: WIDTH_PX });
};

/** `answer` of askCraft: nothing where that is null. */
export function craftOf(answer) {
  if (!answer) return [];
  const { title, parts } = answer.craft;
  const views = viewsWords(title || tr('The craft'), parts),
    findings = findingsOf(answer);
  return [
    title && h('h3', {}, title),
    drawn(answer.drawing.svg, views, 'craft-views'),
    h('div', { class: 'findings' }, findings.map(findingOf)),
    h('h3', {}, tr('What this rests on, and leaves out')),
    h('p', { class: 'note cited' }, restOn(findings).join(' ')),
    h('p', { class: 'note' }, answer.caution),
  ].filter(Boolean);
}

function findingOf({ question, says, chart }) {
  return h('div', { class: 'finding' }, h('h3', {}, question), h('p', {}, says.join(' ')), chart && drawn(chart.svg, chart.says, 'chart', chart.says));
}

function drawn(text, words, name, caption = null) {
  const svg = parseDrawing(text);
  setAttribute(svg, 'role', 'img');
  setAttribute(svg, 'aria-label', words);
  for (const side of ['width', 'height']) svg.removeAttribute(side);
  return h('figure', { class: name }, svg, caption && h('figcaption', {}, caption));
}
