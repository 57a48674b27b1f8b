// All that is drawn of one habitat besides its motions (the craft, what is painted on its deck, ramps, tables and cups), and the stars.

import { Cups } from './cups.js';
import { Habitat } from './habitat.js';
import { Hull } from './hull.js';
import { Paint } from './paint.js';
import { Stands } from './stands.js';
import { Group, Quaternion, Vector3 } from '../vendor/three.module.js';
import { STARS } from '../vendor/stars.js';
import { Dots, KIND } from './dots.js';
import { starsOf } from './stars.js';

export class Scenery {
  constructor(shared) {
    this.habitat = new Habitat(shared);
    this.habitat.hull = new Hull(shared, this.habitat);
    this.paint = new Paint(shared);
    this.stands = new Stands(shared);
    this.cups = new Cups(shared);
    this.habitat.group.add(this.paint.mesh, this.stands.group, this.cups.group);
    this.whole = this.habitat.whole;
    this.things = [this.stands.group, this.cups.group]; // that belong to motions
  }

  // What of it is not among the motions shown: all, but where its craft tumbles nothing save the light of its lamp.
  beside(shown) {
    return shown.some(m => m.tumbles) ? [this.habitat.glow, this.habitat.haze] : [this.whole];
  }

  // As fine as what is seen asks for: rounded, so that nothing is made anew for a hair's breadth. `anywhere_m`: the span at which any
  // place of the rim may be seen, or null; `middle_m`: of what is seen Aboard, along the ground.
  build(model, shown, lead, [aboard_m, outside_m], anywhere_m = null, middle_m = null) {
    const round = span => 2 ** (Math.round(2 * Math.log2(span)) / 2);
    const at_m = lead?.release.along_m ?? 0;
    const floor = lead?.floor ?? 0;
    const outside = shown.some(m => m.outside); // an open cylinder would hide it
    this.habitat.build(
      model,
      {
        near_m: round(Math.min(aboard_m, anywhere_m ?? Infinity)),
        far_m: round(anywhere_m ?? Math.max(outside_m, aboard_m)),
        at_m,
        everywhere: anywhere_m !== null,
      },
      floor,
      outside,
    );
    this.habitat.hull.build(model);
    const span_m = round(Math.min(outside_m, aboard_m));
    const step_m = gridStep(model.radius_m, span_m);
    const paint_m = Math.round((middle_m ?? at_m) / step_m) * step_m;
    this.paint.build(model.ground, { half_m: this.habitat.half_m, step_m, at_m: paint_m, span_m, floor });
    this.stands.read(model, shown);
    this.cups.read(model, shown);
  }
}

// Metres between thin grid lines: 1, or a power of ten where a metre is too fine to see (or larger than the wheel).
export function gridStep(radius_m, span_m) {
  return 10 ** Math.max(radius_m < 1 ? -1 : 0, Math.round(Math.log10(span_m / 40)));
}

// Stars: they stand still Outside and turn Aboard. Drawn about the eye, behind everything.

const FAR = 50;
const AXIAL = new Vector3(0, 0, 1);
const turn = new Quaternion();

export class Sky {
  constructor(shared) {
    this.group = new Group();
    const stars = starsOf(STARS);
    const dots = new Dots(shared, { capacity: stars.length, additive: true, order: -10 });
    dots.material.transparent = false; // drawn before all that is solid
    dots.begin();
    for (const { toward, size_px, tint } of stars) {
      const [x, y, z] = toward.map(one => FAR * one);
      dots.add({ x, y, z }, { size: size_px, kind: KIND.light, tint });
    }
    dots.end();
    this.group.add(dots.points);
  }

  look(camera, angle_rad) {
    this.lookAs(camera, turn.setFromAxisAngle(AXIAL, angle_rad));
  }

  lookAs(camera, quaternion) {
    this.group.position.copy(camera.position);
    this.group.scale.setScalar((camera.near * 4) / FAR);
    this.group.quaternion.copy(quaternion);
  }
}
