// What stands round the pictures: one canvas, and over each half its title, its buttons, its labels and its one focus stop; and how
// the halves share their room.

import { tr, trLater } from '../state/language.js';
import { groundKey } from '../state/shapes.js';

const TITLES = { aboard: trLater('Aboard'), outside: trLater('Outside') };
const DECK = { level: false, surface: 'deck' };
const STILL = { deck: trLater('the deck stands still'), floor: trLater('the floor stands still'), turntable: trLater('the turntable stands still') };
const SVG = 'http://www.w3.org/2000/svg';

export function buildOverlay(element) {
  element.classList.add('stages');
  const canvas = makeCanvas();
  element.append(canvas);
  const halves = { aboard: half(element, 'aboard'), outside: half(element, 'outside') };
  const seam = make('div', 'stages-seam', element);
  return { element, canvas, halves, seam, placeSeam: rect => placeSeam(seam, rect) };
}

export function makeCanvas() {
  const canvas = make('canvas', 'stages-canvas');
  canvas.setAttribute('aria-hidden', 'true');
  return canvas;
}

/** What stands still on a stage.
 *  @param {string} frame @param {{level: boolean, surface: string}} ground */
export function stillWords(frame, ground) {
  if (frame === 'aboard') return tr(STILL[groundKey(ground)]);
  return ground.level ? tr('the room stands still') : tr('the stars stand still');
}

function placeSeam(seam, rect) {
  seam.hidden = !rect;
  if (rect) Object.assign(seam.style, { transform: `translate(${rect.x}px, ${rect.y}px)`, width: `${rect.width}px`, height: `${rect.height}px` });
}

function half(element, frame) {
  const box = make('section', `stage stage-${frame}`, element);
  const name = tr(TITLES[frame]);
  const title = make('h2', 'stage-title', box);
  title.id = `stage-title-${frame}`;
  make('b', '', title).textContent = name;
  title.append(' ');
  make('em', '', title).textContent = stillWords(frame, DECK);
  box.setAttribute('aria-labelledby', title.id);
  const view = make('div', 'stage-view', box);
  view.tabIndex = 0;
  view.setAttribute('role', 'application');
  view.setAttribute('aria-roledescription', tr('stage'));
  const labels = make('div', 'stage-labels', box);
  labels.setAttribute('aria-hidden', 'true');
  const tools = make('div', 'stage-tools', box);
  const preset = button(tools, 'stage-seat');
  preset.append(presetIcon(), make('span', ''));
  preset.setAttribute('aria-expanded', 'false');
  preset.setAttribute('aria-haspopup', 'dialog');
  const measure = button(tools, 'stage-measure', tr('Measure'));
  measure.setAttribute('aria-expanded', 'false');
  measure.setAttribute('aria-haspopup', 'dialog');
  const alone = button(tools, 'stage-alone', tr('Maximise'));
  const steady = frame === 'outside' ? button(tools, 'stage-steady') : null; // what turns on the screen is stopped at once
  steady?.append(turnIcon());
  const live = make('p', 'stage-live', box);
  // Where title and buttons stand, in px of the stage.
  const corners = () => {
    const aside = title.lastElementChild;
    const runsUnder = () => title.offsetLeft + title.offsetWidth > (tools.offsetWidth ? tools.offsetLeft : box.clientWidth); // none while presenting
    aside.hidden = false;
    title.classList.remove('under');
    if (runsUnder()) {
      // no room for it beside the buttons: whose stage it is goes below, anything else may be missed
      if (element.classList.contains('several')) title.classList.add('under');
      else aside.hidden = true;
    }
    return [title, tools].map(part => ({ x: part.offsetLeft, y: part.offsetTop, w: part.offsetWidth, h: part.offsetHeight }));
  };
  // Where the page's own line lies over the stage, as a list of none or one.
  const lineOver = () => {
    const line = element.querySelector('.state.shown .state-box')?.getBoundingClientRect();
    if (!line) return [];
    const { left, top } = box.getBoundingClientRect();
    return [{ x: line.left - left, y: line.top - top, w: line.width, h: line.height }];
  };
  const retitle = ([says, aside]) => {
    title.firstElementChild.textContent = says;
    title.lastElementChild.textContent = aside;
  };
  return { element, frame, name, retitle, box, title, view, labels, tools, preset, measure, alone, steady, live, corners, lineOver };
}

export function make(tag, className, parent) {
  const element = document.createElement(tag);
  if (className) element.className = className;
  parent?.append(element);
  return element;
}

export function button(parent, className, text = '') {
  const element = make('button', className, parent);
  element.type = 'button';
  element.textContent = text;
  return element;
}

export function svg(tag, attributes, parent) {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  parent?.append(element);
  return element;
}

function presetIcon() {
  const icon = svg('svg', { viewBox: '0 0 16 16', width: 16, height: 16, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.3, 'aria-hidden': 'true' });
  svg('path', { d: 'M2 5a7 7 0 0 0 12 0' }, icon);
  svg('path', { d: 'M8 14v-3M8 11l-3.4-4M8 11l3.4-4' }, icon);
  return icon;
}

// A wheel that goes round, held by a bar.
function turnIcon() {
  const icon = svg('svg', { viewBox: '0 0 16 16', width: 16, height: 16, fill: 'none', stroke: 'currentColor', 'stroke-width': 1.5, 'aria-hidden': 'true' });
  svg('path', { d: 'M13.5 6.2A6 6 0 1 0 14 8M14 2.6v3.9h-3.9' }, icon);
  svg('path', { d: 'M6.4 5.8v4.4M9.6 5.8v4.4' }, icon);
  return icon;
}

// How the stages share their room: whichever split leaves each nearer 16:10, unless the viewer fixed it.

const GAP = 2;
const NEAR = 1.6;
const SMALL = 0.34; // of the width or height, where one lies over the other
const CLEARLY = 0.15; // so much nearer, in the log: a lane more in the timeline does not turn them round

function splitOf(width, height, wanted) {
  if (wanted === 'beside' || wanted === 'stacked') return wanted;
  const off = (w, h) => Math.abs(Math.log(w / h / NEAR));
  return off(width / 2, height) + CLEARLY < off(width, height / 2) ? 'beside' : 'stacked';
}

// Rectangles {x, y, width, height} of both halves; null for the one that is not shown. Swapped, each has the other's; merged, one has all the
// room and the other, `over`, lies small in its corner.
export function halvesOf(width, height, { split, alone, swapped = false, merged = false }) {
  if (merged) return mergedIn(width, height, (alone === 'outside') === !swapped);
  const rects = apartIn(width, height, { split, alone });
  if (!swapped) return rects;
  return { ...rects, aboard: rects.outside, outside: rects.aboard };
}

function mergedIn(width, height, outsideFills) {
  const whole = { x: 0, y: 0, width, height };
  const wide = Math.floor(Math.min(SMALL * width, NEAR * SMALL * height * 1.25)),
    high = Math.floor(wide / NEAR),
    gap = Math.floor(0.02 * Math.min(width, height));
  const small = { x: width - wide - gap, y: outsideFills ? height - high - gap : gap, width: wide, height: high }; // where each is empty night
  return outsideFills ? { aboard: small, outside: whole, seam: null, over: 'aboard' } : { aboard: whole, outside: small, seam: null, over: 'outside' };
}

function apartIn(width, height, { split, alone }) {
  const whole = { x: 0, y: 0, width, height };
  if (alone) return { aboard: alone === 'aboard' ? whole : null, outside: alone === 'outside' ? whole : null, seam: null };
  if (splitOf(width, height, split) === 'beside') {
    const w = Math.floor((width - GAP) / 2);
    return { aboard: { ...whole, width: w }, outside: { ...whole, x: w + GAP, width: width - w - GAP }, seam: { x: w, y: 0, width: GAP, height } };
  }
  const h = Math.floor((height - GAP) / 2);
  return { aboard: { ...whole, height: h }, outside: { ...whole, y: h + GAP, height: height - h - GAP }, seam: { x: 0, y: h, width, height: GAP } };
}
