// Labels written into a picture: placed by the stages' own rule, on the same plates and in the same letters.

import { make } from './overlay.js';

const PLATE = { fill: 'rgba(10, 16, 22, .56)', corner: 2, left: 5, top: 1 };
const LEAD = 'rgba(239, 234, 220, .75)';
const LETTERS = '#EFEADC';
const TITLE = { x: 22, y: 14, line: 28, gap: 8 };

/** Out of sight, for the two stages of a picture: only the widths and the letters of their labels are asked of it. */
export function standsAside() {
  const element = make('div', 'stages stages-aside', document.body);
  element.inert = true;
  element.setAttribute('aria-hidden', 'true');
  const stage = frame => {
    const box = make('div', 'stage', element);
    const title = make('div', 'stage-title', box);
    const says = [make('b', '', title), make('em', '', title)];
    const corners = () => [{ x: TITLE.x, y: TITLE.y, w: title.offsetWidth, h: title.offsetHeight }];
    return { frame, box, title, says, labels: make('div', 'stage-labels', box), corners, lineOver: () => [] };
  };
  return { aboard: stage('aboard'), outside: stage('outside') };
}

/** The stage's name in a picture, from the element that says it on the page: before the half is fitted, which keeps clear of it. */
export function nameHalf(half, title) {
  half.dom.says.forEach((part, k) => {
    part.textContent = title.children[k].textContent;
  });
}

/** `bare`: the name needs a plate too. */
export function writeLabels(context, half, { ratio, bare, time_s }) {
  const { says } = half.dom;
  half.taken = half.dom.corners();
  half.placeLabels({ anew: true });
  context.save();
  context.scale(ratio, ratio);
  context.translate(half.rect.x, half.rect.y);
  context.textBaseline = 'alphabetic';
  if (bare) plate(context, { x: TITLE.x - 8, y: TITLE.y, width: half.dom.title.offsetWidth + 16, height: TITLE.line + 2 });
  writeTitle(context, says);
  if (half.around?.spot) {
    context.save();
    context.translate(half.around.spot.x, half.around.spot.y);
    half.around.ink(context, half, time_s);
    context.restore();
  }
  if (half.legend?.spot) {
    const { x, y, w, h } = half.legend.spot;
    plate(context, { x, y, width: w, height: h });
    const font = `400 ${half.labels.font}`;
    half.legend.ink(context, (text, left, top) => write(context, text, { font, color: LETTERS, x: left, y: top, line: h - 7, halo: 4 }));
  }
  const written = [...half.labels.pool.values()].filter(label => !label.hidden);
  for (const { lead } of written) if (lead) writeLead(context, lead);
  for (const label of written) writeLabel(context, label, half.labels.font);
  context.restore();
}

function writeTitle(context, says) {
  let x = TITLE.x;
  for (const part of says) {
    x += write(context, part.textContent, { style: getComputedStyle(part), x, y: TITLE.y, line: TITLE.line, halo: 10 }) + TITLE.gap;
  }
}

function writeLead(context, [x0, y0, x1, y1]) {
  Object.assign(context, { strokeStyle: LEAD, lineWidth: 1 });
  context.beginPath();
  context.moveTo(x0, y0);
  context.lineTo(x1, y1);
  context.stroke();
}

function writeLabel(context, { element, plain, bold, x, y, size: [width, height] }, font) {
  plate(context, { x, y, width, height });
  const { color } = getComputedStyle(element);
  const line = height - 2 * PLATE.top - 1;
  let at = x + PLATE.left;
  for (const [part, weight] of [
    [plain, element.style.fontWeight || 400],
    [bold, 600],
  ]) {
    at += write(context, part.textContent, { font: `${weight} ${font}`, color, x: at, y: y + PLATE.top, line, halo: 4 });
  }
}

function plate(context, { x, y, width, height }) {
  context.fillStyle = PLATE.fill;
  context.beginPath();
  context.roundRect(x, y, width, height, PLATE.corner);
  context.fill();
}

// One run of letters in a line of the given height; gives its width.
function write(
  context,
  text,
  { style, font = `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`, color = style.color, x, y, line, halo },
) {
  context.font = font;
  const { width, fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = context.measureText(text);
  Object.assign(context, { fillStyle: color, shadowColor: '#0A1016', shadowBlur: halo * context.getTransform().a });
  context.fillText(text, x, y + (line - up - down) / 2 + up);
  context.shadowBlur = 0;
  return width;
}
