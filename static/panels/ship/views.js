// The craft from its side and its end, as the server draws it. The chosen part has a handle in both: dragged, or moved by the arrows.

import { tr, trLater } from '../../state/language.js';
import { clamp } from '../../state/scale.js';
import { movedPlace, viewsWords } from '../../state/ship.js';
import { showQuantity } from '../../state/units.js';
import { h, onDrag, parseDrawing, s, setAttribute, setChildren } from '../shared/dom.js';
import { createEditedName } from '../shared/figure.js';
import { drawnScale } from '../shared/large.js';

const STEP_M = 0.5,
  LARGE = 10,
  PX = [240, 1200]; // how wide the server draws
const VIEWS = ['side', 'end'],
  AXES = ['x', 'y', 'z'];
const MOVES = {
  side: trLater('{part}, from the side: left and right along the axis, up and down from it'),
  end: trLater('{part}, from the end: left and right, up and down'),
};

/** chosen() → the number of the part that has the handles; choose(number). */
export function createViews({ element, store, large, chosen, choose }) {
  const ground = s('g', {}),
    marks = VIEWS.map(() => s('circle', { r: 9, class: 'craft-mark' })),
    svg = s('svg', { class: 'craft-views', role: 'img' }, ground, marks);
  svg.addEventListener('click', event => pick(event.target.closest('g')?.querySelector('title')?.textContent));
  const grips = VIEWS.map(createGrip),
    box = h('div', { class: 'craft-box' }, svg, grips);
  const name = createEditedName({
    label: tr('Name of the craft'),
    kind: 'craft-name',
    read: () => store.document.craft.title || tr('The craft'),
    write: typed => store.set('craft.title', typed),
  });
  element.append(
    h('h3', { class: 'third' }, name.element),
    box,
    h('p', { class: 'links' }, large.button({ place: 6, title: () => tr('The craft from its side and end'), part: box })),
  );
  let drawn = null;

  const spoken = place => place.map((value, k) => `${AXES[k]} ${showQuantity(value, 'm', store.view.units)}`).join(', ');
  const parts = () => store.document.craft.parts;
  const placeOf = () => parts()[chosen()].place_m ?? [0, 0, 0];

  function pick(name) {
    const number = parts().findIndex(part => part.name === name);
    if (number >= 0) choose(number);
  }

  function put(place, live) {
    store.set(`craft.parts.${chosen()}.place_m`, place, { live });
  }

  function createGrip(view) {
    let from = null,
      px_per_m = 1;
    const grip = h('span', {
      class: 'ring-grip',
      role: 'slider',
      tabindex: 0,
      'aria-roledescription': tr('slider of two ways'),
      onkeydown: event => step(event, view),
    });
    onDrag(grip, {
      start(event) {
        event.preventDefault();
        grip.focus({ preventScroll: true });
        from = placeOf();
        px_per_m = drawn[view].px_per_m * scaleNow();
      },
      move(event, down, moved) {
        if (moved) put(movedPlace(view, from, (event.clientX - down.clientX) / px_per_m, (down.clientY - event.clientY) / px_per_m), true);
      },
      end(_event, moved) {
        if (moved) put(placeOf(), false);
      },
    });
    return grip;
  }

  function step(event, view) {
    const right = { ArrowLeft: -1, ArrowRight: 1 }[event.key] ?? 0,
      up = { ArrowDown: -1, ArrowUp: 1 }[event.key] ?? 0;
    if ((!right && !up) || event.ctrlKey || event.metaKey || event.altKey) return;
    const size = STEP_M * (event.shiftKey ? LARGE : 1);
    put(movedPlace(view, placeOf(), right * size, up * size), false);
    event.preventDefault();
    event.stopPropagation();
  }

  // the drawing is stretched over its box
  const scaleNow = () => svg.getBoundingClientRect().width / drawn.size_px[0];

  function update() {
    const { answer } = store.ship;
    if (store.document.craft) name.update();
    setAttribute(element, 'hidden', !answer?.drawing);
    if (!answer?.drawing) return;
    if (answer.drawing !== drawn) {
      drawn = answer.drawing;
      setAttribute(svg, 'viewBox', `0 0 ${drawn.size_px.join(' ')}`);
      setAttribute(svg, 'aria-label', viewsWords(tr('The craft'), parts()));
      setChildren(ground, [...parseDrawing(drawn.svg).childNodes]);
    }
    place();
  }

  function place() {
    const part = drawn.parts[chosen()];
    VIEWS.forEach((view, k) => {
      const there = Boolean(part);
      setAttribute(grips[k], 'hidden', !there);
      setAttribute(marks[k], 'visibility', there ? null : 'hidden');
      if (!there) return;
      const [x, y] = part[`${view}_px`];
      setAttribute(marks[k], 'cx', x);
      setAttribute(marks[k], 'cy', y);
      grips[k].style.left = `${(100 * x) / drawn.size_px[0]}%`;
      grips[k].style.top = `${(100 * y) / drawn.size_px[1]}%`;
      setAttribute(grips[k], 'aria-label', tr(MOVES[view], { part: part.name }));
      setAttribute(grips[k], 'aria-valuetext', spoken(placeOf()));
      setAttribute(grips[k], 'aria-valuenow', placeOf()[view === 'side' ? 2 : 0]);
    });
  }
  // of the drawings of the column, and of this one; what is not laid out leaves them as they are
  function widths() {
    const of = (part, known) => (part.clientWidth ? clamp(Math.round(part.clientWidth / drawnScale(part)), ...PX) : known);
    const { width_px, drawing_px } = store.ship;
    return { width_px: of(element, width_px), drawing_px: of(box, drawing_px) };
  }
  return { update, box, widths };
}
