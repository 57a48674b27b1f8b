// Making elements, in one line each; the page's few drawn signs; and the server's drawings as elements.

const SVG = 'http://www.w3.org/2000/svg';

export const $ = (selector, root = document) => root.querySelector(selector);
export const $$ = (selector, root = document) => [...root.querySelectorAll(selector)];

/** Whether the stages are flat drawings, without 3D. */
export const areStagesFlat = () => $('#stages').classList.contains('stages-flat');

/** h('button', {class: 'btn', onclick: fn, 'aria-pressed': true}, 'Add'): attributes, or handlers where the name begins with on. */
export function h(tag, attributes = {}, ...children) {
  return filled(document.createElement(tag), attributes, children);
}

export function s(tag, attributes = {}, ...children) {
  return filled(document.createElementNS(SVG, tag), attributes, children);
}

function filled(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith('on')) element.addEventListener(name.slice(2), value);
    else setAttribute(element, name, value);
  }
  element.append(...children.flat().filter(child => child !== null && child !== undefined && child !== false));
  return element;
}

/** true and strings are set, null and false are taken away; aria-* keeps its words true and false. */
export function setAttribute(element, name, value) {
  if (name.startsWith('aria-') && typeof value === 'boolean') value = String(value);
  if (value === null || value === undefined || value === false) element.removeAttribute(name);
  else if (element.getAttribute(name) !== String(value)) element.setAttribute(name, value === true ? '' : value);
}

export function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/** Children swapped only when what they say is new: a redraw must not take away the focus. */
export function setChildren(element, ...children) {
  element.replaceChildren(...children.flat().filter(child => child !== null && child !== undefined && child !== false));
}

/** Drags with the pointer captured: start(event) may return false to decline; move(event, start); end(event, moved). */
export function onDrag(element, { start, move, end }) {
  element.addEventListener('pointerdown', down => {
    if (down.button !== 0 || start?.(down) === false) return;
    let moved = false;
    element.setPointerCapture(down.pointerId);
    const go = event => {
      moved ||= Math.hypot(event.clientX - down.clientX, event.clientY - down.clientY) > 3;
      move(event, down, moved);
    };
    const stop = event => {
      element.removeEventListener('pointermove', go);
      element.removeEventListener('pointerup', stop);
      element.removeEventListener('pointercancel', stop);
      end?.(event, moved);
    };
    element.addEventListener('pointermove', go);
    element.addEventListener('pointerup', stop);
    element.addEventListener('pointercancel', stop);
  });
}

/** After the pointer is up again: what closes on losing focus must not move the button under a finger. */
let held = false;
const waiting = [];
export function watchPointer() {
  addEventListener(
    'pointerdown',
    () => {
      held = true;
    },
    true,
  );
  for (const type of ['pointerup', 'pointercancel']) {
    addEventListener(
      type,
      () => {
        held = false;
        setTimeout(() => waiting.splice(0).forEach(fn => fn()));
      },
      true,
    );
  }
}
export function whenPointerUp(fn) {
  if (held) waiting.push(fn);
  else fn();
}

// The page's few drawn signs. The fonts have no arrows or locks.

const LINE = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1.6 };
const SHAPES = {
  play: [18, [['path', { d: 'M4 2l12 7-12 7z', fill: 'currentColor' }]]],
  pause: [18, [['path', { d: 'M4 2.5h4v13H4zM10.5 2.5h4v13h-4z', fill: 'currentColor' }]]],
  back: [
    18,
    [
      ['path', { d: 'M12 3L5 9l7 6z', fill: 'currentColor' }],
      ['path', { d: 'M14.5 3v12', ...LINE }],
    ],
  ],
  on: [
    18,
    [
      ['path', { d: 'M6 3l7 6-7 6z', fill: 'currentColor' }],
      ['path', { d: 'M3.5 3v12', ...LINE }],
    ],
  ],
  loop: [20, [['path', { d: 'M4 10V8.5a4 4 0 0 1 4-4h9M14 1.5l3 3-3 3M16 9.5V11a4 4 0 0 1-4 4H3M6 18l-3-3 3-3', ...LINE }]]],
  undo: [18, [['path', { d: 'M6.5 3L3 6.5 6.5 10M3.5 6.5H11a4 4 0 0 1 0 8H7', ...LINE }]]],
  redo: [18, [['path', { d: 'M11.5 3L15 6.5 11.5 10M14.5 6.5H7a4 4 0 0 0 0 8h4', ...LINE }]]],
  second: [
    22,
    [
      ['circle', { cx: 7.5, cy: 11, r: 5, ...LINE }],
      ['path', { d: 'M14.2 6.3a5 5 0 1 1-2.4 1.2M17.5 1.5v6M14.5 4.5h6', ...LINE }],
    ],
  ],
  open: [
    18,
    [
      ['rect', { x: 3.5, y: 8, width: 11, height: 7.5, rx: 1, ...LINE }],
      ['path', { d: 'M6 8V5.4a3 3 0 0 1 5.8-1', ...LINE }],
    ],
  ],
  locked: [
    18,
    [
      ['rect', { x: 3.5, y: 8, width: 11, height: 7.5, rx: 1, fill: 'currentColor', stroke: 'currentColor', 'stroke-width': 1.6 }],
      ['path', { d: 'M6 8V5a3 3 0 0 1 6 0v3', ...LINE }],
    ],
  ],
  caution: [
    18,
    [
      ['circle', { cx: 9, cy: 9, r: 7.5, ...LINE }],
      ['path', { d: 'M9 4.6v5.4M9 11.9v1.7', ...LINE }],
    ],
  ],
  more: [18, [['path', { d: 'M3 9h.01M9 9h.01M15 9h.01', ...LINE, 'stroke-width': 2.4, 'stroke-linecap': 'round' }]]],
  before: [18, [['path', { d: 'M11.5 3L5.5 9l6 6', ...LINE }]]],
  after: [18, [['path', { d: 'M6.5 3l6 6-6 6', ...LINE }]]],
  close: [18, [['path', { d: 'M4 4l10 10M14 4L4 14', ...LINE }]]],
};

export function icon(name) {
  const [size, shapes] = SHAPES[name];
  return s(
    'svg',
    { width: size, height: size, viewBox: `0 0 ${size} ${size}`, 'aria-hidden': true, class: 'icon' },
    shapes.map(([tag, attributes]) => s(tag, attributes)),
  );
}

// A drawing of the server's, as SVG text, made into elements: the page shows it, and lays its handles over it.

/** The <svg> element of such a text, belonging to this document. */
export function parseDrawing(text) {
  return document.importNode(new DOMParser().parseFromString(text, 'image/svg+xml').documentElement, true);
}
