// Without WebGL: both stages as flat plates. Drawn from the same arrays and as live.

import { halvesOf } from './layout.js';
import { readModel } from './model.js';
import { Plate } from './plate.js';

export function createFlat({ furniture, store, clock }) {
  furniture.element.classList.add('stages-flat');
  const plates = Object.values(furniture.halves).map((dom) => new Plate(dom, store));
  let model = null;
  let rects = null;
  let asked = 0;
  // biome-ignore lint/correctness/noUnusedVariables: ??= reads it
  let fetching = null;            // what weighs people, with the first opening of place 4
  let drawWeights = null;

  function read() {
    const { clientWidth: width, clientHeight: height } = furniture.element;
    if (!width || !height) return;
    rects = halvesOf(width, height, store.view);
    furniture.placeSeam(rects.seam);
    for (const plate of plates) plate.fitInto(rects[plate.frame]);
    if (store.answer && model?.answer !== store.answer) model = readModel(store.answer, store.fields);
    if (!model) return;
    if (store.view.place === 4) fetching ??= import('./feel/plate.js').then((made) => { drawWeights = made.drawWeights; draw(); }, () => { fetching = null; });
    const shown = model.motions.filter((m) => !store.view.hidden.includes(m.name));
    for (const plate of plates) if (rects[plate.frame]) plate.read(model, shown, store.view);
    draw();
  }

  function draw() {
    const { view, feel, feelProblem } = store;
    const weigh = view.place === 4 && drawWeights ? (plate) => drawWeights(plate, feelProblem ? null : feel, clock.time_s) : null;
    for (const plate of plates) if (model && rects?.[plate.frame]) plate.draw(clock.time_s, clock.playing, weigh);
  }

  function invalidate() {
    if (!asked) asked = requestAnimationFrame((now_ms) => {
      asked = 0;
      clock.tick(now_ms);
      draw();
      if (clock.playing) invalidate();
    });
  }

  for (const topic of ['answer', 'view', 'feel']) store.on(topic, read);
  clock.on(invalidate);
  new ResizeObserver(read).observe(furniture.element);
  read();
  return { draw, invalidate, openSeats() {} };
}
