// Without WebGL, or while its context is lost: both stages as flat plates with their titles and words. Drawn from the same arrays and as live.

import { isWithheld } from '../state/shown.js';
import { halvesOf, svg } from './overlay.js';
import { readModel } from './model.js';
import { attachAlone } from './chooser.js';
import { LinePlate } from './line_plate.js';
import { Spoken, stageWords, turnedWords } from './spoken.js';

/** Both plates, shown or not; `redraw()` once more of what they draw has been fetched. */
export class Plates {
  constructor(overlay, store, redraw) {
    Object.assign(this, { overlay, store, redraw, rects: null, model: null, fetching: null, drawWeights: null });
    this.plates = Object.values(overlay.halves).map(dom => new FlatPlate(dom));
  }

  show(on) {
    this.overlay.element.classList.toggle('stages-flat', on);
    for (const plate of this.plates) plate.show(on);
  }

  // What is shown changed: the answer, the view, or the room there is.
  read(rects, model) {
    Object.assign(this, { rects, model });
    const { view } = this.store;
    if (!rects || !model) return;
    if (view.place === 4) this.weigh();
    const shown = model.motions.filter(m => !view.hidden.includes(m.name));
    for (const plate of this.plates) {
      const rect = rects[plate.frame];
      if (!rect) continue;
      plate.lines.fitInto(rect);
      plate.read(model, shown, view);
    }
  }

  // What weighs people is fetched with the first opening of place 4, or if that failed the next.
  weigh() {
    this.fetching ??= import('./feel/weights.js').then(
      module => {
        this.drawWeights = module.drawWeights;
        this.redraw();
      },
      () => {
        this.fetching = null;
      },
    );
  }

  draw({ time_s, playing }) {
    const { view, feel, feelProblem } = this.store;
    const weigh = view.place === 4 && this.drawWeights ? plate => this.drawWeights(plate, feelProblem ? null : feel, time_s) : null;
    for (const plate of this.plates) if (this.model && this.rects?.[plate.frame]) plate.draw(time_s, playing, weigh, this.store.guesses);
  }
}

export function createFlat({ overlay, store, clock }) {
  const plates = new Plates(overlay, store, draw);
  let model = null;
  let frameRequest = 0;

  function read() {
    const { clientWidth: width, clientHeight: height } = overlay.element;
    if (!width || !height) return;
    const rects = halvesOf(width, height, store.view);
    overlay.placeSeam(rects.seam);
    for (const dom of Object.values(overlay.halves)) placeBox(dom, rects[dom.frame], rects.over === dom.frame);
    if (store.answer && model?.answer !== store.answer) model = readModel(store.answer, store.fields);
    plates.read(rects, model);
    draw();
  }

  function draw() {
    plates.draw(clock);
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

  plates.show(true);
  for (const dom of Object.values(overlay.halves)) attachAlone(dom, store);
  for (const topic of ['answer', 'view', 'feel']) store.on(topic, read);
  store.on('guesses', draw);
  clock.on(invalidate);
  new ResizeObserver(read).observe(overlay.element);
  read();
  return { draw, invalidate, cameras: () => [], movedFromSeats: () => ({}), turned: () => ({}), turn() {}, depart() {}, openPresets() {} };
}

function placeBox({ box }, rect, over) {
  box.hidden = !rect;
  box.classList.toggle('over', over);
  if (rect) Object.assign(box.style, { transform: `translate(${rect.x}px, ${rect.y}px)`, width: `${rect.width}px`, height: `${rect.height}px` });
}

// One stage as a flat plate, with its title and its words: what the stages are where there is no WebGL.

const ROOM = { top: 50, side: 36, foot: 44, arrow: 68, highest: 16, text: 14, paper: '#EEEFE9', named: true };

class FlatPlate {
  constructor(dom) {
    this.dom = dom;
    this.frame = dom.frame;
    this.sheet = svg('svg', { class: 'stage-plate', 'aria-hidden': 'true' });
    this.lines = new LinePlate(this.sheet, dom.frame, ROOM);
    this.spoken = new Spoken(dom);
  }

  show(on) {
    const { dom, sheet } = this;
    if (on) dom.view.before(sheet);
    else sheet.remove();
    dom.view.setAttribute('role', on ? 'img' : 'application');
    dom.preset.hidden = dom.measure.hidden = on;
    if (dom.steady) dom.steady.hidden = on; // a plate of it does not turn
  }

  read(model, shown, view) {
    Object.assign(this, { model, shown, view });
    this.lines.read(model, shown, view);
  }

  // `weigh`: draws what everybody feels and gives the words for it, or null.
  draw(time_s, playing, weigh = null, guesses = null) {
    this.lines.draw(time_s);
    if (guesses) this.lines.drawGuesses(guesses, time_s);
    const weights = weigh?.(this) ?? '';
    if (this.frame === 'outside') this.lines.say(turnedWords(this.model, time_s));
    const now_ms = performance.now();
    if (!this.spoken.isDue(now_ms, playing)) return;
    const words = stageWords(this.model, this.shown, this.frame, 'd', time_s, this.view.units, weights, name => isWithheld(this.view, name));
    this.spoken.say(words, now_ms, playing);
  }
}
