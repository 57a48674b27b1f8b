// Aboard: the turning frame, lamplit. The deck stands still, paths curve, the stars go round.

import { Arrows } from './arrows.js';
import { Half } from './half.js';
import { Launch } from './launch.js';
import { figure } from './say.js';

export class Aboard extends Half {
  constructor(shared, dom, store, hold) {
    super(shared, 'aboard', dom);
    this.arrows = new Arrows(shared);
    this.launch = new Launch(shared, dom, store, hold);
    this.group.add(this.arrows.mesh, this.launch.mesh);
  }

  // A pool of light about where things start, distance fading to night.
  dress(shared, habitat) {
    const { span_m, distance_m, camera } = this.eye;
    const whole = this.view.seat.aboard === 'w';
    shared.uCool.value = whole ? 0.6 : 0;
    shared.uLamp.value = whole ? 1.5 : 1;
    shared.uFog.value.set(...(whole ? [1e7, 2e7] : [distance_m + 0.5 * span_m, distance_m + 3.3 * span_m]));
    shared.uPool.value.set((this.lead?.release.along_m ?? 0) - 0.1 * span_m, whole ? 1e7 : Math.max(0.47 * span_m, 3));
    habitat.cutAway(Math.sign(camera.position.z));
    habitat.turn(0);
  }

  ownLabels(time_s, clock) {
    const { model, shown, chosen, eye, view } = this;
    const tips = this.arrows.update(model, shown, chosen, time_s, eye, view.arrows);
    const words = tips.map(({ word, tip, value_g }) => ({
      key: `arrow ${word}`, text: value_g === null ? word : `${word} ${figure(value_g, '', 'si', value_g < 9.95 ? 2 : 0)}\u00a0g`, at: [tip], gap: 8, shy: true,
    }));
    const dims = view.measure === 'dimensions' ? this.dims.drift(model, shown, eye, this.frontEdge_m, view.units) : this.dims.clear();
    const figures = dims.map(({ key, text, at }) => ({ key, strong: text, at: [at], centred: true, gap: 4 }));
    return [...this.launch.update(this, clock), ...figures, ...words];
  }

  alsoTaken() {
    return this.launch.shown ? [this.launch.spot] : [];
  }

  pathPx() {
    return [...super.pathPx(), ...this.arrows.shafts.flatMap((p) => this.project(p) ?? [])];
  }
}
