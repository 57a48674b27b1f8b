// The scene and the one renderer: the wheel is built once an answer, then each half is drawn into its own part of the canvas.

import { Scene, WebGLRenderer } from '../vendor/three.module.js';
import { angleAt } from '../time/track.js';
import { Habitat } from './habitat.js';
import { sharedUniforms } from './materials.js';
import { Paint } from './paint.js';
import { Sky } from './sky.js';
import { FrameTimer } from './webgl.js';

const CLEAR = { aboard: 0x0d1217, outside: 0x080e16 };

export class Picture {
  constructor(canvas, machine) {
    this.renderer = new WebGLRenderer({ canvas, antialias: !machine.software, powerPreference: 'high-performance' });
    this.renderer.autoClear = false;
    this.renderer.setScissorTest(true);
    this.timer = new FrameTimer(this.renderer.getContext(), machine);
    this.ratio = this.timer.ratio;
    this.shared = sharedUniforms();
    this.scene = new Scene();
    this.habitat = new Habitat(this.shared);
    this.paint = new Paint(this.shared);
    this.habitat.group.add(this.paint.mesh);
    this.sky = new Sky(this.shared);
    this.scene.add(this.habitat.pivot, this.sky.group);
  }

  resize(width, height) {
    this.size = { width, height };
    this.renderer.setPixelRatio(this.ratio);
    this.renderer.setSize(width, height, false);
  }

  // The wheel, as fine as what both stages see asks for: rounded, so that it is not made anew for a hair's breadth.
  build(model, aboard_m, outside_m, at_m) {
    const round = (span) => 2 ** (Math.round(2 * Math.log2(span)) / 2);
    const near_m = round(aboard_m);
    const far_m = round(Math.max(outside_m, aboard_m));
    this.habitat.build(model.shape, { near_m, far_m, at_m });
    const least_m = round(Math.min(outside_m, aboard_m));
    this.paint.build({ radius_m: model.radius_m, half_m: this.habitat.half_m, step_m: gridStep(model.radius_m, least_m), at_m, span_m: least_m });
  }

  // Starts a frame. `still`: nothing moves, so it may take its time and be drawn finer.
  begin(model, time_s, still) {
    const ratio = still ? this.timer.still : this.timer.adapted();
    if (ratio !== this.ratio) {
      this.ratio = ratio;
      this.renderer.setPixelRatio(ratio);
    }
    this.model = model;
    this.time_s = time_s;
    this.shared.uDpr.value = ratio;
    this.shared.uAxis.value = model.radius_m;
    this.shared.uNow.value = time_s + 1e-6;
  }

  // One half into its rectangle; the others' things are hidden.
  drawHalf(half, others) {
    const { renderer, shared, ratio } = this;
    const { x, y, width, height } = half.rect;
    const { camera } = half.eye;
    half.dress(shared, this.habitat, this.time_s);
    this.habitat.showSpokes(half.eye.span_m);
    shared.uHalf.value.set((width * ratio) / 2, (height * ratio) / 2);
    shared.uPx.value = (height * ratio) / (2 * Math.tan((camera.fov * Math.PI) / 360));
    shared.uNear.value = camera.near;
    shared.uStep.value = gridStep(this.model.radius_m, half.eye.span_m);
    this.sky.look(camera, half.frame === 'aboard' ? -angleAt(this.model.answer, this.time_s) : 0);
    for (const other of others) other.group.visible = other === half;
    const below = this.size.height - y - height;
    renderer.setViewport(x, below, width, height);
    renderer.setScissor(x, below, width, height);
    renderer.setClearColor(CLEAR[half.frame], 1);
    renderer.clear();
    renderer.render(this.scene, camera);
  }

  end(started_ms, still) {
    if (!still) this.timer.mark(started_ms);
  }
}

// Metres between thin grid lines: 1, or a power of ten where a metre is too fine to see (or larger than the wheel).
function gridStep(radius_m, span_m) {
  return 10 ** Math.max(radius_m < 1 ? -1 : 0, Math.round(Math.log10(span_m / 40)));
}
