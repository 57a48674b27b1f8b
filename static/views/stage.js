// Both stages on one canvas and one clock: hears the store, sees to it that a frame is drawn when something changed, never
// otherwise. Without WebGL the same arrays are drawn as flat plates.

import { Aboard, Beside } from './aboard.js';
import { attachPresets } from './chooser.js';
import { Extras } from './extras.js';
import { createFlat } from './flat.js';
import { attachHands } from './hands.js';
import { Lost } from './lost.js';
import { buildOverlay, halvesOf } from './overlay.js';
import { readModel, readOthers } from './model.js';
import { Outside } from './outside.js';
import { OwnView } from './own_camera.js';
import { Picture } from './picture.js';
import { Plate } from './plate.js';
import { Spoken, stageWords } from './spoken.js';
import { spanOf } from './framing.js';
import { isWithheld } from '../state/shown.js';
import { probe } from './webgl.js';

const STILL_AFTER_MS = 700; // a finer frame takes long where there is no graphics processor: not while a hand may still move
const LEAST_STRIDE_S = 0.05;

/** `tell(line)`: what is wrong with the drawing, {say, buttons}, or null. */
export function createStages({ element, store, clock, tell }) {
  const overlay = buildOverlay(element);
  const picture = createPicture(overlay.canvas);
  return picture ? new Stages(picture, overlay, store, clock, tell) : createFlat({ overlay, store, clock });
}

function createPicture(canvas) {
  const machine = probe();
  try {
    return machine && new Picture(canvas, machine);
  } catch {
    return null;
  }
}

const NO_ARROWS = { velocity: false, centrifugal: false, coriolis: false, alone: false };

// What is to be seen at a place: where something is aimed, nothing besides paths and people.
function viewOf(view) {
  if (view.place !== 5) return view;
  return { ...view, companion: false, companionOutside: false, arrows: NO_ARROWS, measure: view.measure === 'tape' ? 'tape' : 'off' };
}

// What is framed no farther than the clock may go, as text.
const heldIn = ({ withheld }) => (Number.isFinite(withheld?.until_s) ? JSON.stringify(withheld) : null);

const isMoving = half => half.eye.moving;

class Stages {
  constructor(picture, overlay, store, clock, tell) {
    Object.assign(this, { picture, overlay, store, clock, element: overlay.element, models: [] });
    const { shared } = picture;
    const hold = held => this.freeze(held);
    this.halves = { aboard: new Aboard(shared, overlay.halves.aboard, store, hold), outside: new Outside(shared, overlay.halves.outside) };
    this.all = Object.values(this.halves);
    this.extras = new Extras({ shared, store, clock, hold, came: () => this.read(), first: () => this.visible()[0] });
    this.beside = new Beside(picture, overlay, store, this.halves.outside);
    this.presets = { ...store.view.presets };
    this.held = heldIn(store.view);
    for (const half of this.all) this.attach(half);
    this.reduced = matchMedia('(prefers-reduced-motion: reduce)');
    this.reduced.addEventListener('change', () => this.read());
    this.lost = new Lost({ picture, overlay, store, tell, redraw: () => this.redraw(), back: () => this.redraw() });
    this.onFrame = now_ms => this.tick(now_ms);
    this.isHeld = name => isWithheld(store.view, name);
    this.listen();
  }

  attach(half) {
    this.picture.scene.add(half.group);
    half.spoken = new Spoken(half.dom);
    half.presets = attachPresets(half.dom, this.store);
    half.plate = new Plate(() => this.invalidate());
    half.own = new OwnView(half, this.store);
    attachHands(this, half);
  }

  listen() {
    this.store.on('answer', () => this.readAnswer());
    this.store.on('view', patch => this.readView(patch ?? {}));
    this.store.on('feel', () => this.read());
    this.store.on('shot', patch => this.readShot(patch));
    this.store.on('guesses', () => this.readGuesses());
    this.store.on('document', () => {
      if (this.halves.aboard.launch.shown) this.invalidate();
    }); // the arrow shows the document; all else the answer
    this.clock.on(() => this.invalidate());
    this.element.addEventListener('rimfall:line', () => {
      this.lineMoved = true;
      this.invalidate();
    });
    new ResizeObserver(() => this.resize()).observe(this.element);
    document.fonts?.ready.then(() => this.lettersCame());
    this.resize();
  }

  // Painted words and measured labels were made before the typeface arrived.
  lettersCame() {
    this.picture.repaint();
    for (const half of this.every()) half.labels.remeasure();
    this.read();
  }

  // Drawn at once and not at the next frame: whoever drags a slider waits for it.
  readAnswer() {
    const { answer, fields } = this.store;
    this.models = [readModel(answer, fields), ...readOthers(answer, fields)];
    this.read();
    this.fresh = true;
    queueMicrotask(() => {
      if (this.fresh) this.draw();
    });
  }

  readView(patch) {
    if ('split' in patch || 'alone' in patch || 'swapped' in patch || 'merged' in patch) this.resize();
    if ('measure' in patch) this.element.dataset.measure = this.store.view.measure;
    if ('type' in patch || 'measure' in patch || 'presenting' in patch) this.resize(); // words are of another size, or other buttons beside them
    const held = heldIn(this.store.view),
      move = { eased: !this.isCalm && !this.fresh, now_ms: performance.now() }; // another scene is framed at once
    const moved = held === this.held ? {} : { aboard: move, outside: move };
    this.held = held;
    for (const half of this.all) {
      const preset = this.store.view.presets[half.frame];
      if (preset === this.presets[half.frame]) continue;
      this.presets[half.frame] = preset;
      half.eye.home();
      moved[half.frame] = move;
    }
    if (this.store.view.measure !== 'tape') for (const half of this.every()) half.tape.clear();
    this.read(moved);
  }

  // Nothing large turns: as the system asks for, or the page's own button and key.
  get isCalm() {
    return this.reduced.matches || this.store.view.steady;
  }

  // The view as the open place has it.
  get seen() {
    return viewOf(this.store.view);
  }

  // The habitat both stages show: the scene's own, or one of those it is compared with.
  get model() {
    return this.models[this.store.view.habitat ?? 0] ?? this.models[0] ?? null;
  }

  // What is shown changed: the answer, the view, or the room there is.
  read(moved = {}) {
    const { model, store } = this;
    this.invalidate();
    if (!model || !this.rects) return;
    const { steady, beads_s } = store.view,
      stride_s = Math.max(LEAST_STRIDE_S, beads_s || 0.25);
    this.beside.show(this.lost.now ? [model] : this.models, model); // flat plates are of one habitat
    this.clock.stride_s = this.reduced.matches || (steady && model.tumbling) ? stride_s : null;
    for (const half of this.visible()) {
      this.attend(half);
      const own = half === this.beside.half ? this.beside.model : model;
      const shown = own.motions.filter(m => !store.view.hidden.includes(m.name));
      const chosen = shown.find(m => m.i === store.view.chosen) ?? null;
      const others = (store.view.compare ?? 'over') === 'over' ? this.models.filter(one => one !== own) : [];
      half.read(own, shown, chosen, this.seen, this.isCalm ? stride_s : null, others);
      half.aimed?.read();
      if (!this.frozen) half.frameUp(this.clock.time_s, moved[half.slot]);
    }
    this.build();
    if (this.lost.now) this.lost.plates.read(this.rects, model);
  }

  // At once and not at the next frame, of which a hidden page has none.
  redraw() {
    this.read();
    this.draw();
  }

  // `handles`: with what a hand takes hold of.
  attend(half, { handles = true } = {}) {
    this.extras.attend(half, { beside: half === this.beside.half, handles });
  }

  readGuesses() {
    for (const half of this.visible()) this.attend(half);
    this.invalidate();
  }

  // While a hand drags, the eye keeps still.
  readShot(patch) {
    if ('aim' in patch) this.aiming = patch.live;
    if ('camera' in patch) this.invalidate();
    const drawn = this.visible().filter(half => half.aimed);
    if (!drawn.length || !this.model) return;
    for (const half of drawn) {
      half.aimed.read();
      if (!this.frozen && !this.aiming && ('aim' in patch || 'answer' in patch))
        half.frameUp(this.clock.time_s, { eased: !this.isCalm, now_ms: performance.now() });
      half.crowdKey = null;
    }
    this.build();
    this.invalidate();
  }

  build() {
    const { aboard, outside } = this.halves;
    const visible = this.visible();
    const spans = visible.map(half => spanOf(half.eye.rig, half.rect.width / half.rect.height));
    for (const [k, model] of [this.model, this.beside.model].entries())
      if (model) {
        const of = visible.filter(half => half.model === model);
        if (!of.length) continue;
        const scenery = this.picture.scenery(k);
        const { shown, lead } = of[0];
        const own = k ? [spans.at(-1), spans.at(-1)] : this.beside.model ? [spans[0], spans[0]] : [spans[0], spans.at(-1)];
        const followed = of.find(half => half.frame === 'outside' && half.framed.rigAt); // it sees any of the rim from near by
        scenery.build(model, shown, lead, own, followed ? own[1] : null, of.find(half => half.frame === 'aboard')?.middle() ?? null);
        const { half_m, open } = scenery.habitat;
        for (const half of k ? [this.beside.half] : [aboard, outside]) Object.assign(half, { scenery, half_m, frontEdge_m: open ? Infinity : half_m * 0.94 });
      }
  }

  // Every stage there is, and those now seen.
  every() {
    const { half } = this.beside;
    if (half) this.withBeside ??= [...this.all, half];
    return this.withBeside ?? this.all;
  }

  // The same list until others are seen: every frame asks for it.
  visible() {
    const { rects, seenNow } = this,
      aboard = rects.aboard ? this.halfIn('aboard') : null,
      outside = rects.outside ? this.halfIn('outside') : null,
      { over } = rects; // drawn last
    if (seenNow?.aboard !== aboard || seenNow.outside !== outside || seenNow.over !== over)
      this.seenNow = { aboard, outside, over, halves: (over === 'aboard' ? [outside, aboard] : [aboard, outside]).filter(Boolean) };
    return this.seenNow.halves;
  }

  halfIn(slot) {
    return slot === 'outside' && this.beside.model ? this.beside.half : this.halves[slot];
  }

  // While the launch ring is dragged the eye keeps still, whatever the path does.
  freeze(held) {
    this.frozen = held;
    if (!held) this.read({ aboard: { eased: !this.isCalm, now_ms: performance.now() } });
  }

  resize() {
    const { clientWidth: width, clientHeight: height } = this.element;
    if (!width || !height) return;
    this.rects = halvesOf(width, height, this.store.view);
    this.picture.resize(width, height);
    for (const half of this.all) {
      const rect = this.rects[half.frame];
      half.dom.box.hidden = !rect;
      half.dom.box.classList.toggle('over', this.rects.over === half.frame);
      if (rect) half.fitInto(rect, this.overIn(half.frame));
    }
    this.beside.fitInto(this.rects.outside, this.overIn('outside'));
    this.overlay.placeSeam(this.rects.seam);
    this.lineMoved = true;
    this.read();
  }

  // The rectangle of the small stage that lies over this one.
  overIn(frame) {
    const { over } = this.rects;
    return over && over !== frame ? this.rects[over] : null;
  }

  invalidate() {
    this.dirty = true;
    this.element.dataset.frame = 'asked';
    clearTimeout(this.rest);
    if (!this.frameRequest) this.frameRequest = requestAnimationFrame(this.onFrame);
  }

  // At most one frame waits behind the one being drawn: a slow machine never falls behind the clock.
  tick(now_ms) {
    this.frameRequest = 0;
    this.clock.tick(now_ms);
    if (this.dirty && (this.lost.now || this.picture.timer.pending(performance.now()) < 2)) this.draw();
    if (this.dirty || this.clock.playing || this.visible().some(isMoving)) this.invalidate();
    else this.rest = setTimeout(() => this.draw({ still: true }), STILL_AFTER_MS);
  }

  draw({ still = false } = {}) {
    if (!this.model || !this.rects) return;
    this.dirty = false;
    if (this.lost.now) this.lost.plates.draw(this.clock);
    else this.drawHalves(still);
    this.element.dataset.frame = still ? 'still' : 'drawn'; // whoever takes a picture of the page waits for it
    if (this.fresh) this.tellDrawn();
  }

  drawHalves(still) {
    const now_ms = performance.now();
    const { time_s, playing } = this.clock;
    this.picture.begin(time_s, still);
    const visible = this.visible();
    for (let k = 0; k < visible.length; k += 1) {
      visible[k].update(time_s, now_ms, this.clock);
      this.picture.drawHalf(visible[k], this.every());
    }
    this.picture.end(now_ms, still);
    for (let k = 0; k < visible.length; k += 1) {
      const half = visible[k];
      if (this.lineMoved) half.over = half.dom.lineOver();
      if (still) half.labels.forget(); // at rest each lies where it is best, however it came there
      half.placeLabels();
      half.around?.draw(half, time_s);
      if (half.spoken.isDue(now_ms, playing))
        half.spoken.say(
          stageWords(half.model, half.shown, half.frame, half.preset, time_s, this.store.view.units, half.posts?.words, this.isHeld),
          now_ms,
          playing,
        );
    }
    this.lineMoved = false;
  }

  tellDrawn() {
    this.fresh = false;
    const { habitat } = this.store.answer.scene;
    performance.mark('rimfall-drawn');
    this.element.dataset.drawnRadius = habitat.radius_m;
    this.element.dataset.drawnSpin = habitat.spin_rpm;
    this.element.dispatchEvent(new CustomEvent('rimfall:drawn', { bubbles: true }));
  }

  // The stages whose eyes are known: none where they are flat plates.
  get eyed() {
    return this.model && this.rects && !this.lost.now ? this.visible() : [];
  }

  // What each stage is seen from at this moment: [{name, view, position_m, target_m, up, vertical_fov_deg, aspect}].
  cameras() {
    return this.eyed.flatMap(half => half.asCamera() ?? []);
  }

  // {aboard, outside}: the camera as it stands where it has been moved from its seat, {position_m, target_m, up, vertical_fov_deg}, or null.
  movedFromSeats() {
    return Object.fromEntries(this.eyed.filter(half => half.frame === half.slot).map(half => [half.slot, half.movedFromSeat()]));
  }

  // How far a hand has turned each eye from its seat, {aboard, outside}: {yaw, tilt, zoom}; and turned so.
  turned() {
    return Object.fromEntries(this.all.map(half => [half.slot, { ...half.eye.orbit }]));
  }

  turn(orbits) {
    for (const half of this.all) {
      const orbit = orbits[half.slot];
      if (orbit && Object.keys(half.eye.orbit).some(part => half.eye.orbit[part] !== orbit[part])) Object.assign(half.eye.orbit, orbit);
    }
    this.invalidate();
  }

  // Each eye goes from where it is to where it is sent from here on, over `ms`, and what a hand turned is forgotten; not eased: it is there at once.
  depart({ eased, ms }) {
    const now_ms = performance.now();
    for (const half of this.all) half.eye.depart({ eased: eased && !this.isCalm, ms, now_ms });
    this.invalidate();
  }

  openPresets(frame) {
    if (!this.lost.now) this.halves[frame].presets.show();
  }
}
