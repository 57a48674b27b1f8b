// The scene and the one renderer: each half is drawn into its own part of the canvas.

import { Color, Quaternion, Scene, WebGLRenderer } from '../vendor/three.module.js';
import { angleAt } from '../time/track.js';
import { Contact } from './contact.js';
import { watched } from './craft_sight.js';
import { sharedUniforms, STARLIGHT } from './materials.js';
import { gridStep, Scenery, Sky } from './scenery.js';
import { turning } from './tumbling.js';
import { FrameTimer } from './webgl.js';

const NONE = Object.freeze([]);
const lies = new Quaternion();
const MOVES = 0, // layers: what moves, its paths and people
  ROUND = 1; // and what stands round them
const CLEAR = { aboard: 0x0d1217, outside: 0x080e16 };

export class Picture {
  constructor(canvas, machine) {
    this.machine = machine;
    this.drawOn(canvas);
    this.ratio = this.timer.ratio;
    this.shared = sharedUniforms(!machine.software);
    this.contact = machine.software ? null : new Contact(this.shared);
    this.scene = new Scene();
    this.sceneries = [];
    this.sky = new Sky(this.shared);
    this.scene.add(this.sky.group);
  }

  drawOn(canvas) {
    this.renderer = new WebGLRenderer({ canvas, antialias: !this.machine.software, powerPreference: 'high-performance' });
    this.renderer.autoClear = false;
    this.renderer.setScissorTest(true);
    this.timer = new FrameTimer(this.renderer.getContext(), this.machine);
  }

  get lost() {
    return this.renderer.getContext().isContextLost();
  }

  // The context is back. The renderer sends everything to it anew, but not that halves are cut out: one would wipe away the other.
  restore() {
    this.renderer.setScissorTest(true);
    this.timer.restart();
  }

  // The context does not come back: another canvas; throws where there is none to be had.
  renew(canvas) {
    const { renderer } = this;
    this.drawOn(canvas);
    renderer.dispose();
    if (this.size) this.fit();
  }

  resize(width, height) {
    if (this.size?.width === width && this.size.height === height) return;
    this.size = { width, height };
    this.fit();
  }

  // Another size empties the canvas and allocates it anew, which costs a frame: once for each that is another.
  fit() {
    this.renderer.setDrawingBufferSize(this.size.width, this.size.height, this.ratio);
  }

  // What is drawn round the motions: one for the habitat shown, another when a second is shown beside it.
  scenery(k) {
    if (!this.sceneries[k]) {
      this.sceneries[k] = new Scenery(this.shared);
      this.scene.add(this.sceneries[k].whole);
    }
    return this.sceneries[k];
  }

  repaint() {
    for (const scenery of this.sceneries) scenery?.paint.repaint();
  }

  // Starts a frame. `still`: nothing moves, so it may take its time and be drawn finer.
  begin(time_s, still) {
    const ratio = still ? this.timer.still : this.timer.adapted();
    if (ratio !== this.ratio) {
      this.ratio = ratio;
      this.fit();
    }
    this.time_s = time_s;
    this.shared.uDpr.value = ratio;
    this.shared.uNow.value = time_s + 1e-6;
  }

  // One half into its rectangle; the others' things are hidden.
  drawHalf(half, others) {
    const { renderer } = this;
    const { x, y, width, height } = half.rect;
    this.dress(half, others);
    const below = this.size.height - y - height;
    this.darken(half, { x: x * this.ratio, y: below * this.ratio, width: width * this.ratio, height: height * this.ratio });
    renderer.setViewport(x, below, width, height);
    renderer.setScissor(x, below, width, height);
    renderer.setClearColor(CLEAR[half.frame], 1);
    renderer.clear();
    this.render(half, half.plate?.shown);
  }

  // One half into a target of its own, `ratio` drawn px to one of its rectangle; `bare`: on nothing, neither night nor stars;
  // `unseen`: things that are left out, and the scenery where there are any, but for a craft that is itself what moves; `deep`: what
  // is drawn without a depth of its own (paths, bodies as dots) gets one.
  // The page's stages are not touched: their next frame begins anew.
  drawAside(half, others, { target, ratio, time_s, bare, unseen = [], deep = false }) {
    const { renderer, shared } = this;
    const page = { ratio: this.ratio, time_s: this.time_s };
    Object.assign(this, { ratio, time_s });
    shared.uDpr.value = ratio;
    shared.uNow.value = time_s + 1e-6;
    this.dress(half, others);
    this.sky.group.visible &&= !bare;
    const hidden = unseen.length ? [...half.scenery.beside(half.shown), ...unseen].filter(one => one.visible) : [];
    for (const one of hidden) one.visible = false;
    const flat = deep ? materialsOf(half.group).filter(material => !material.depthWrite) : [];
    this.darken(half, { x: 0, y: 0, width: half.rect.width * ratio, height: half.rect.height * ratio });
    for (const material of flat) material.depthWrite = true;
    renderer.setRenderTarget(target);
    renderer.setClearColor(asItIs(bare ? 0 : CLEAR[half.frame]), bare ? 0 : 1);
    renderer.clear();
    this.render(half, half.plate?.shown && !bare && !deep);
    for (const one of hidden) one.visible = true;
    for (const material of flat) material.depthWrite = false;
    renderer.setRenderTarget(null);
    Object.assign(this, page);
  }

  // Where things meet, as long as the machine keeps up.
  darken({ eye }, place) {
    if (!this.contact) return;
    if (this.timer.fine) this.contact.prepare(this.renderer, this.scene, eye.camera, eye.span_m, place);
    else this.shared.uContact.value = 0;
  }

  // `plated`: with the plate between what stands round the motions and all else. What the habitat hides stays hidden.
  render({ eye: { camera }, scenery, plate }, plated) {
    const { renderer, scene } = this;
    if (!plated) return renderer.render(scene, camera);
    for (const [group, layer] of [[scenery.whole, ROUND], [this.sky.group, ROUND], ...scenery.things.map(group => [group, MOVES])])
      group.traverse(one => one.layers.set(layer));
    camera.layers.set(ROUND);
    renderer.render(scene, camera);
    renderer.render(plate.scene, camera);
    camera.layers.set(MOVES);
    renderer.render(scene, camera);
    camera.layers.enable(ROUND);
  }

  // What all materials ask of the half about to be drawn; the others' things are hidden.
  dress(half, others) {
    const { shared, ratio } = this;
    const { width, height } = half.rect;
    const { camera } = half.eye;
    const { model, scenery } = half;
    for (let k = 0; k < this.sceneries.length; k += 1) if (this.sceneries[k]) this.sceneries[k].whole.visible = this.sceneries[k] === scenery;
    shared.uAxis.value = model.radius_m;
    shared.uOver.value.w = model.ground.level ? 1 : 0;
    half.dress(shared, scenery.habitat, this.time_s);
    scenery.habitat.seen(half.eye.span_m);
    seeThrough(half);
    shared.uHalf.value.set((width * ratio) / 2, (height * ratio) / 2);
    shared.uPx.value = (height * ratio) / (2 * Math.tan((camera.fov * Math.PI) / 360));
    shared.uNear.value = camera.near;
    shared.uStep.value = gridStep(model.radius_m, half.eye.span_m);
    const still = turning(model, this.time_s, lies)?.invert();
    shared.uStar.value.fromArray(STARLIGHT);
    if (still && half.frame === 'outside') shared.uStar.value.applyQuaternion(still);
    if (still) this.sky.lookAs(camera, still);
    else this.sky.look(camera, half.frame === 'aboard' && !half.stride_s ? -angleAt(model.answer, this.time_s) : 0);
    this.sky.group.visible = !model.ground.level; // a turntable is in a room
    for (let k = 0; k < others.length; k += 1) others[k].group.visible = others[k] === half;
  }

  end(started_ms, still) {
    if (!still) this.timer.mark(started_ms);
  }
}

// What of a craft would hide the motions is seen through; without one there is nothing to look for.
function seeThrough(half) {
  const { model, shown, frame, eye } = half,
    { habitat } = half.scenery,
    { hull } = habitat;
  const places = hull.isThere || model.tumbling ? watched(shown, frame, point => half.drawnAt(point)) : NONE;
  habitat.openUp(model.tumbling && places.length > 0);
  if (hull.isThere) hull.openTo(eye.camera.position, places, frame);
}

function materialsOf(group) {
  const found = new Set();
  group.traverse(({ material }) => material && found.add(material));
  return [...found];
}

// A colour whose parts are not made linear: a target keeps what is written, as the screen does.
function asItIs(hex) {
  return new Color(((hex >> 16) & 255) / 255, ((hex >> 8) & 255) / 255, (hex & 255) / 255);
}
