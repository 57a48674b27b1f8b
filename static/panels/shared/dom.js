// Making elements, in one line each.

const SVG = 'http://www.w3.org/2000/svg';

export const $ = (selector, root = document) => root.querySelector(selector);
export const $$ = (selector, root = document) => [...root.querySelectorAll(selector)];

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
