// Without WebGL: both stages as flat plates with their titles and words. Drawn from the same arrays and as live.

import { halvesOf, svg } from './overlay.js';
import { readModel } from './model.js';
import { attachAlone } from './chooser.js';
import { LinePlate } from './line_plate.js';
import { Spoken, stageWords, turnedWords } from './spoken.js';

export function createFlat({ overlay, store, clock }) {
  overlay.element.classList.add('stages-flat');
  const plates = Object.values(overlay.halves).map(dom => new FlatPlate(dom, store));
  let model = null;
  let rects = null;
  let frameRequest = 0;
  // biome-ignore lint/correctness/noUnusedVariables: ??= reads it
  let fetching = null; // what weighs people, with the first opening of place 4
  let drawWeights = null;

  function read() {
    const { clientWidth: width, clientHeight: height } = overlay.element;
    if (!width || !height) return;
    rects = halvesOf(width, height, store.view);
    overlay.placeSeam(rects.seam);
    for (const plate of plates) plate.fitInto(rects[plate.frame]);
    if (store.answer && model?.answer !== store.answer) model = readModel(store.answer, store.fields);
    if (!model) return;
    if (store.view.place === 4)
      fetching ??= import('./feel/weights.js').then(
        module => {
          drawWeights = module.drawWeights;
          draw();
        },
        () => {
          fetching = null;
        },
      );
    const shown = model.motions.filter(m => !store.view.hidden.includes(m.name));
    for (const plate of plates) if (rects[plate.frame]) plate.read(model, shown, store.view);
    draw();
  }

  function draw() {
    const { view, feel, feelProblem } = store;
    const weigh = view.place === 4 && drawWeights ? plate => drawWeights(plate, feelProblem ? null : feel, clock.time_s) : null;
    for (const plate of plates) if (model && rects?.[plate.frame]) plate.draw(clock.time_s, clock.playing, weigh);
  }

  function invalidate() {
    if (!frameRequest)
      frameRequest = requestAnimationFrame(now_ms => {
        frameRequest = 0;
        clock.tick(now_ms);
        draw();
        if (clock.playing) invalidate();
      });
  }

  for (const topic of ['answer', 'view', 'feel']) store.on(topic, read);
  clock.on(invalidate);
  new ResizeObserver(read).observe(overlay.element);
  read();
  return { draw, invalidate, openPresets() {} };
}

// One stage as a flat plate, with its title and its words: what the stages are where there is no WebGL.

const ROOM = { top: 50, side: 36, foot: 44, arrow: 68, highest: 16, text: 14, paper: '#EEEFE9', named: true };

class FlatPlate {
  constructor(dom, store) {
    this.dom = dom;
    this.frame = dom.frame;
    const sheet = svg('svg', { class: 'stage-plate', 'aria-hidden': 'true' });
    this.lines = new LinePlate(sheet, dom.frame, ROOM);
    dom.view.before(sheet);
    dom.view.setAttribute('role', 'img');
    dom.preset.hidden = true;
    dom.measure.hidden = true;
    attachAlone(dom, store);
    this.spoken = new Spoken(dom);
  }

  fitInto(rect) {
    this.dom.box.hidden = !rect;
    if (!rect) return;
    const { x, y, width, height } = rect;
    Object.assign(this.dom.box.style, { transform: `translate(${x}px, ${y}px)`, width: `${width}px`, height: `${height}px` });
    this.lines.fitInto(rect);
  }

  read(model, shown, view) {
    Object.assign(this, { model, shown, view });
    this.lines.read(model, shown, view);
  }

  // `weigh`: draws what everybody feels and gives the words for it, or null.
  draw(time_s, playing, weigh = null) {
    this.lines.draw(time_s);
    const weights = weigh?.(this) ?? '';
    if (this.frame === 'outside') this.lines.say(turnedWords(this.model, time_s));
    this.spoken.say(stageWords(this.model, this.shown, this.frame, 'd', time_s, this.view.units, weights), performance.now(), playing);
  }
}
