// The cylinder: deck, hull in section, rails, footlights, ceiling, hub lantern and spokes. Segments are as fine as the eye
// needs: a chord may leave the circle by a third of a pixel, less where people stand.

import { Craft, put, skinOf } from './craft.js';
import { cardMaterial, deckMaterial } from './materials.js';
import { KIND } from './dots.js';
import { placeAt } from './place.js';
import { rgb } from './styles.js';
import { band, drawnHalfWidth, evenly, ring, ringAngles, spokes, xyz } from './wheel.js';

const p = { x: 0, y: 0, z: 0 };

export class Drum extends Craft {
  constructor(shared) {
    super(shared);
    this.deckMaterial = deckMaterial(shared);
    const section = cardMaterial(shared, '#7E8886', { side: 'both' });
    this.deck = this.mesh(this.deckMaterial);
    this.hull = this.mesh(cardMaterial(shared, '#56636B'));
    this.sections = [1, -1].map(() => this.mesh(section));
    this.ceiling = this.mesh(cardMaterial(shared, '#A8ACA2', { side: 'both', alpha: 0.1, fill: 0.6 }));
    this.edges = this.ribbon({ color: '#97A09D', width: 1.3, fogged: 1 });
    this.rails = [1, -1].map(() => this.ribbon({ color: '#8E9693', width: 1.2, alpha: 0.9, fogged: 1 }));
    this.lights = [1, -1].map(() => this.footlights());
    this.spokes = this.mesh(cardMaterial(shared, '#8A9290', { fill: 0.42 }));
    this.lantern();
  }

  // `shape` of shape.js; `eye` {near_m, far_m, at_m}: spans seen Aboard and Outside, and where.
  build(shape, eye) {
    const R = shape.radius_m;
    this.radius_m = R;
    this.half_m = drawnHalfWidth(shape, eye);
    this.open = shape.width_m === null;
    const angles = ringAngles(R, eye);
    this.deckMaterial.uniforms.uEdge.value = this.half_m;
    this.deckMaterial.uniforms.uOpen.value = this.open ? 1 : 0;
    this.buildShell(angles, skinOf(R), shape);
    this.buildRails(angles, shape, eye);
    this.buildHub(shape);
  }

  buildShell(angles, thick, shape) {
    const { radius_m: R, half_m: w } = this;
    put(this.deck, band(R, angles, [0, w], [0, -w], 'in', true));
    put(this.hull, band(R, angles, [-thick, w], [-thick, -w], 'out'));
    this.sections.forEach((mesh, i) => {
      mesh.visible = !this.open;
      const z = i ? -w : w;
      if (!this.open) put(mesh, band(R, angles, [-thick, z], [0, z], i ? 'back' : 'front'));
    });
    this.ceiling.visible = shape.ceiling_m !== null;
    if (this.ceiling.visible) put(this.ceiling, band(R, angles, [shape.ceiling_m, w], [shape.ceiling_m, -w], 'out'));
    const rings = this.open ? [] : [[0, w], [0, -w], [-thick, w], [-thick, -w]];
    if (shape.ceiling_m !== null) rings.push([shape.ceiling_m, w], [shape.ceiling_m, -w]);
    this.edges.set(rings.map(([h, z]) => ({ points: ring(R, angles, h, z) })));
  }

  buildRails(angles, shape, eye) {
    const { radius_m: R, half_m: w } = this;
    const high = Math.min(1.1, 0.16 * R, 0.5 * (shape.ceiling_m ?? 1e9));
    const bar = Math.min(0.05, 0.0025 * R);
    const reach = Math.min(Math.PI * R, 3 * Math.max(eye.near_m, eye.far_m));
    [1, -1].forEach((side, i) => {
      const z = side * w;
      const posts = evenly(R, reach, 2.5, eye.at_m).map((along) => ({ points: [0, high].flatMap((h) => xyz(R, along, h, z)), diameter: [0.8 * bar, 0.8 * bar] }));
      this.rails[i].set(this.open ? [] : [{ points: ring(R, angles, high, z), diameter: angles.map(() => bar) }, ...posts]);
      const lights = this.lights[i];
      lights.begin();
      if (!this.open) for (const along of evenly(R, reach, 5, eye.at_m, 0.5)) {
        lights.add(placeAt(R, along, Math.min(0.2, 0.03 * R), side * (w - Math.min(0.2, 0.05 * w)), 0, p), { size: 3, diameter: Math.min(0.34, 0.02 * R), kind: KIND.light, tint: rgb('#FFC98A'), alpha: 0.9 });
      }
      lights.end();
    });
  }

  buildHub(shape) {
    const { radius_m: R, half_m: w } = this;
    const r = shape.hub_radius_m ?? Math.min(0.012 * R, 0.5 + 0.004 * R);
    this.light(R, r, this.open ? 2 * w : Math.min(2 * w + 0.06 * R, 2 * w + 3));
    this.spoked = shape.hub_radius_m !== null && shape.hub_radius_m < 0.4 * R;
    if (this.spoked) put(this.spokes, spokes(R, shape));
  }

  // Spokes are drawn where the wheel is seen as a wheel; nearer by they would only sweep across the flight.
  seen(span_m) {
    this.spokes.visible = this.spoked && span_m > 1.1 * this.radius_m;
  }

  // The rail and lights on the side of the eye (1 or −1) are cut away where they would stand before the scene.
  cutAway(side) {
    [1, -1].forEach((s, i) => {
      this.rails[i].mesh.visible = side !== s && !this.open;
      this.lights[i].points.visible = side !== s && !this.open;
    });
  }
}
