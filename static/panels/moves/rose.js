// The heading rose: a plan of the deck, spinward to the right; drag round it, or arrows. It turns a throw, and a ramp's rise.

import { tr } from '../../state/language.js';
import { fieldOf } from '../../state/fields.js';
import { groundOf } from '../../state/shapes.js';
import { headingWords } from '../../state/words.js';
import { h, onDrag, s, setAttribute, setText } from '../shared/dom.js';
import { createFigure } from '../shared/figure.js';
import { createFieldError } from '../shared/field_error.js';
import { createSwitch } from '../shared/choice.js';
import { createField } from '../shared/field.js';

export function createHeadingRow({ store, path, label = tr('Toward') }) {
  const field = fieldOf(store.fields, path);
  const hand = s('path', { d: 'M15 15H26.5', class: 'hand' });
  const rose = s(
    'svg',
    { class: 'rose', width: 30, height: 30, viewBox: '0 0 30 30', role: 'slider', tabindex: 0, 'aria-label': label, onkeydown },
    s('circle', { cx: 15, cy: 15, r: 13, class: 'edge' }),
    s('path', { d: 'M26 15h-3M15 4v3M4 15h3M15 26v-3', class: 'edge' }),
    hand,
    s('circle', { cx: 15, cy: 15, r: 2.4, class: 'pin' }),
  );
  const words = h('span', { class: 'toward' });
  const figure = createFigure({ store, path, label, step: () => 1 });
  const slot = createFieldError({ store, path, frame: figure.element });
  const element = h(
    'div',
    { class: 'row', 'data-row': path },
    h('span', { class: 'lab', title: tr('Double-click: the default'), ondblclick: () => put(field.default ?? 0, false) }, label),
    h('span', { class: 'rosebox' }, rose, words),
    figure.element,
    slot.element,
  );

  const value = () => store.read(path) ?? 0;
  const said = () => headingWords(value(), groundOf(store.fields, store.document.habitat).across);
  function put(degrees, live) {
    store.set(path, Math.min(field.max, Math.max(field.min, degrees)), { live });
  }
  function onkeydown(event) {
    const fine = event.shiftKey ? 10 : 1;
    const step = { ArrowRight: -fine, ArrowDown: -fine, ArrowLeft: fine, ArrowUp: fine, PageUp: 15, PageDown: -15 }[event.key];
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? 180 : step && turned(value() + step);
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    put(to, false);
  }
  onDrag(rose, {
    start(event) {
      event.preventDefault();
      rose.focus();
      aim(event);
      return true;
    },
    move: aim,
    end() {
      put(value(), false);
    },
  });
  function aim(event) {
    const box = rose.getBoundingClientRect();
    const raw = Math.atan2(box.top + box.height / 2 - event.clientY, event.clientX - box.left - box.width / 2) * (180 / Math.PI);
    const near = Math.round(raw / 15) * 15;
    put(turned(Math.abs(raw - near) < 3 && !event.shiftKey ? near : Math.round(raw)), true);
  }
  function update() {
    setAttribute(hand, 'transform', `rotate(${-value()} 15 15)`);
    setText(words, said());
    setAttribute(rose, 'aria-valuenow', value());
    setAttribute(rose, 'aria-valuetext', said());
    setAttribute(rose, 'aria-valuemin', field.min);
    setAttribute(rose, 'aria-valuemax', field.max);
    figure.update();
    slot.update();
  }
  return { element, update };
}

// kept between 0 and 360, where the words read best
function turned(degrees) {
  return ((degrees % 360) + 360) % 360;
}

// The ramp a ball rolls on: none, or its slope, the way it rises, length and width.

const FIRST_SLOPE_DEG = 10;

export function createSlope({ store, path }) {
  const on = () => (store.read(path) ?? null) !== null;
  const ramp = createSwitch({
    label: tr('On a ramp'),
    on,
    turn: wanted => store.set(path, wanted ? { slope_deg: FIRST_SLOPE_DEG, heading_deg: 0 } : null),
  });
  const row = (name, label) => createField({ store, path: `${path}.${name}`, label });
  const rows = [
    row('slope_deg', tr('Slope')),
    createHeadingRow({ store, path: `${path}.heading_deg`, label: tr('Rises') }),
    row('length_m', tr('Length')),
    row('width_m', tr('Width')),
  ];
  const inner = h(
    'div',
    {},
    rows.map(part => part.element),
  );
  return {
    element: h('div', { class: 'group' }, ramp.element, inner),
    update() {
      ramp.update();
      setAttribute(inner, 'hidden', !on());
      if (on()) rows.forEach(part => part.update());
    },
  };
}
