// Torus and sphere, cut open: what is walked on is seen from inside, through the side that faces the eye. A sphere is the tube
// whose middle line has shrunk to the axis, so one profile serves both.

import { Craft, put, skinOf } from './craft.js';
import { KIND } from './dots.js';
import { cardMaterial, deckMaterial } from './materials.js';
import { placeAt } from './place.js';
import { rgb } from './styles.js';
import { band, evenly, ring, ringAngles, spokes, swept, xyz } from './wheel.js';

const ROUND = 220;               // most segments about the axis
const ACROSS = 72;               // and about the tube
const POLE = (86 * Math.PI) / 180;
const CUT = (15 * Math.PI) / 180;      // up to here the hull is there on the side of the eye too; its section shows the cut
const p = { x: 0, y: 0, z: 0 };

export class Shell extends Craft {
  constructor(shared) {
    super(shared);
    this.deckMaterial = deckMaterial(shared);
    const hull = cardMaterial(shared, '#56636B');
    const section = cardMaterial(shared, '#7E8886', { side: 'both' });
    this.deck = this.mesh(this.deckMaterial);
    this.keel = this.mesh(hull);
    this.hulls = [1, -1].map(() => this.mesh(hull));
    this.cuts = [1, -1].map(() => this.mesh(section));
    this.rims = [1, -1].map(() => this.mesh(section));
    this.hoops = this.ribbon({ color: '#97A09D', width: 1.3, alpha: 0.5, fogged: 1 });
    this.edges = [1, -1].map(() => this.ribbon({ color: '#97A09D', width: 1.3, fogged: 1 }));
    this.seams = [1, -1].map(() => this.ribbon({ color: '#97A09D', width: 1.3, fogged: 1 }));
    this.lights = [1, -1].map(() => this.footlights());
    this.spokes = this.mesh(cardMaterial(shared, '#8A9290', { fill: 0.42 }));
    this.lantern();
  }

  build(shape, eye) {
    const R = shape.radius_m;
    const torus = shape.kind === 'torus';
    Object.assign(this, { radius_m: R, torus, tube_m: torus ? shape.tube_radius_m : R, end_rad: torus ? Math.PI / 2 : POLE });
    this.half_m = (torus ? 0.87 : 0.57) * this.tube_m;
    this.deckMaterial.uniforms.uEdge.value = this.half_m;
    const angles = ringAngles(R, eye, ROUND);
    const across = this.profile([...ringAngles(this.tube_m, { ...eye, at_m: 0 }, ACROSS), CUT, -CUT]);
    put(this.deck, swept(R, angles, across, 'in', true));
    this.buildHull(angles, across, skinOf(R));
    this.buildLines(angles);
    this.buildLights(eye);
    this.buildHub(shape);
  }

  // From one rim to the other, at angles about the tube's middle line.
  profile(angles) {
    const { tube_m: b, end_rad } = this;
    const inside = angles.map((a) => ((a + 3 * Math.PI) % (2 * Math.PI)) - Math.PI).filter((a) => Math.abs(a) < end_rad - 1e-3).sort((q, r) => q - r);
    return [-end_rad, ...inside, end_rad].map((a) => ({ height: b * (1 - Math.cos(a)), axial: b * Math.sin(a), normal: [Math.cos(a), -Math.sin(a)] }));
  }

  buildHull(angles, across, thick) {
    const { radius_m: R } = this;
    const outer = ({ height, axial, normal }) => [height - normal[0] * thick, axial - normal[1] * thick];
    const outside = across.map((corner) => ({ height: outer(corner)[0], axial: outer(corner)[1], normal: corner.normal, up: Math.sign(corner.axial) * Math.acos(Math.min(1, corner.normal[0])) }));
    put(this.keel, swept(R, angles, outside.filter(({ up }) => Math.abs(up) < CUT + 1e-6), 'out'));
    [1, -1].forEach((side, i) => {
      put(this.hulls[i], swept(R, angles, outside.filter(({ up }) => side * up > CUT - 1e-6), 'out'));
      const rim = side > 0 ? across.at(-1) : across[0];
      put(this.rims[i], band(R, angles, [rim.height, rim.axial], outer(rim), 'in'));
      this.edges[i].set([{ points: ring(R, angles, rim.height, rim.axial) }]);
      const cut = across.find(({ axial }) => Math.abs(axial - side * this.tube_m * Math.sin(CUT)) < 1e-9 * this.tube_m);
      put(this.cuts[i], band(R, angles, [cut.height, cut.axial], outer(cut), side > 0 ? 'front' : 'back'));
      this.seams[i].set([[cut.height, cut.axial], outer(cut)].map(([height, axial]) => ({ points: ring(R, angles, height, axial) })));
    });
  }

  // Sections of the tube, meridians of the sphere.
  buildLines(angles) {
    const { radius_m: R, tube_m: b, torus, end_rad } = this;
    const round = Array.from({ length: 49 }, (_, k) => (torus ? Math.PI : end_rad) * (k / 24 - 1));
    const lines = Array.from({ length: 12 }, (_, k) => ({ points: round.flatMap((a) => xyz(R, ((k + 0.5) / 6) * Math.PI * R, b * (1 - Math.cos(a)), b * Math.sin(a))) }));
    const rings = torus ? [[2 * b, 0]] : [0.5, -0.5].map((share) => [R * (1 - Math.cos(share * Math.PI / 1.5)), R * Math.sin(share * Math.PI / 1.5)]);
    this.hoops.set([...lines, ...rings.map(([height, axial]) => ({ points: ring(R, angles, height, axial) }))]);
  }

  buildLights(eye) {
    const { radius_m: R, half_m: w, tube_m: b } = this;
    const reach = Math.min(Math.PI * R, 3 * Math.max(eye.near_m, eye.far_m));
    this.lights.forEach((lights, i) => {
      const axial = (i ? -1 : 1) * w;
      const height = b - Math.sqrt(b * b - w * w);
      lights.begin();
      for (const along of evenly(R, reach, 5, eye.at_m, 0.5)) {
        lights.add(placeAt(R, along, height + Math.min(0.2, 0.03 * R), axial, 0, p), { size: 3, diameter: Math.min(0.34, 0.02 * R), kind: KIND.light, tint: rgb('#FFC98A'), alpha: 0.9 });
      }
      lights.end();
    });
  }

  buildHub(shape) {
    const { radius_m: R, torus, tube_m: b } = this;
    const r = shape.hub_radius_m ?? Math.min(0.012 * R, 0.5 + 0.004 * R);
    this.light(R, r, torus ? Math.min(2 * b, 0.3 * R + 2 * r) : 2 * R * Math.sin(POLE));
    this.spoked = torus;
    if (torus) put(this.spokes, spokes(R, { ceiling_m: 2 * b, hub_radius_m: r }));
  }

  seen(span_m) {
    this.spokes.visible = this.spoked && span_m > 1.1 * this.radius_m;
  }

  // The half of the hull, its rim and its lights on the side of the eye: always open, and the rim with it when near.
  cutAway(side, eye_side = side) {
    [1, -1].forEach((s, i) => {
      this.hulls[i].visible = s !== eye_side;
      this.cuts[i].visible = this.seams[i].mesh.visible = s === eye_side;
      this.rims[i].visible = s !== side;
      this.edges[i].mesh.visible = s !== side;
      this.lights[i].points.visible = s !== side;
    });
  }
}
