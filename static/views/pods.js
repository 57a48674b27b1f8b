// Flat floors that go round an axis: pods on arms, cabins on a tether, a tumbling hull. Each floor is a rectangle of card with
// its own metre grid, the edges of its box as lines, plumb lines where "down" is known, and the arc that is level.

import { BoxGeometry } from '../vendor/three.module.js';
import { Craft, put } from './craft.js';
import { KIND, Dots } from './dots.js';
import { groundOf } from './ground.js';
import { joinery } from './connectors.js';
import { cardMaterial, deckMaterial } from './materials.js';
import { rgb } from './styles.js';
import { merged, rectangle } from './wheel.js';

const PLUMB_M = 1.1;
const DEG = Math.PI / 180;
const p = { x: 0, y: 0, z: 0 };

export class Pods extends Craft {
  constructor(shared) {
    super(shared);
    this.decks = [];
    this.trays = this.mesh(cardMaterial(shared, '#56636B', { side: 'both' }));
    this.boxes = [1, -1].map(() => this.ribbon({ color: '#97A09D', width: 1.3, fogged: 1 }));
    this.joints = [1, -1].map(() => this.mesh(cardMaterial(shared, '#8A9290', { fill: 0.42 })));
    this.lines = [1, -1].map(() => this.ribbon({ color: '#A9B0AC', width: 1.2, alpha: 0.85, fogged: 1 }));
    this.plumbs = this.ribbon({ color: '#EFEADC', width: 1.6, order: 3 });
    this.normals = this.ribbon({ color: '#EFEADC', width: 1, alpha: 0.35, dash: [3, 3], order: 3 });
    this.level = this.ribbon({ color: '#EFEADC', width: 1.4, alpha: 0.55, dash: [5, 3], order: 3 });
    this.bobs = new Dots(shared, { order: 4 });
    this.lights = [1, -1].map(() => this.footlights());
    this.group.add(this.bobs.points);
    this.lantern();
  }

  build(shape, _eye, floor) {
    const R = shape.radius_m;
    this.radius_m = R;
    this.ground = groundOf(shape);
    this.half_m = this.ground.reach(floor).axial_m;
    this.floors = shape.floors;
    this.decks.forEach((deck, i) => { deck.visible = i < this.floors.length; });
    this.floors.forEach((one, i) => this.buildDeck(one, i));
    put(this.trays, merged(this.floors.map((one, i) => this.tray(one, i))));
    this.buildBoxes();
    this.buildLights();
    this.buildLevels();
    const r = Math.min(0.03 * R, 0.4 + 0.006 * R);
    const widest = Math.max(...this.floors.map(({ half_m }) => half_m[1]));
    this.light(R, r, Math.min(2 * widest, 0.4 * R));
    [1, -1].forEach((side, i) => {
      const { solid, lines } = joinery(shape.kind, this.ground, this.floors, side);
      this.joints[i].visible = solid.length > 0;
      if (solid.length) put(this.joints[i], merged(solid));
      this.lines[i].set(lines);
    });
  }

  buildDeck({ half_m: [a, z] }, i) {
    this.decks[i] ??= this.mesh(deckMaterial(this.shared));
    this.decks[i].material.uniforms.uEdge.value = z;
    put(this.decks[i], rectangle((along, axial) => this.point(i, along, 0, axial), a, z));
  }

  point(floor, along, height, axial) {
    const { x, y, z } = this.ground.at(along, height, axial, 0, p, floor);
    return [x, y, z];
  }

  // The hull under a floor, seen from every side but above.
  tray({ half_m: [a, z], azimuth_rad }, i) {
    const thick = this.thick(i);
    const [x, y] = this.point(i, 0, -0.51 * thick, 0);
    return new BoxGeometry(2 * a, 0.98 * thick, 2 * z).rotateZ(azimuth_rad).translate(x, y, 0);
  }

  thick(i) {
    const { half_m } = this.floors[i];
    return Math.min(0.5, 0.08 * Math.min(...half_m), 0.03 * this.radius_m + 0.02);
  }

  // Edges of the room over each floor: up to its ceiling, else a rail.
  buildBoxes() {
    this.boxes.forEach((box, k) => box.set(this.floors.flatMap(({ half_m: [a, z], ceiling_m }, i) => {
      const high = ceiling_m ?? Math.min(1.1, 0.16 * this.radius_m);
      const axial = (k ? -1 : 1) * z;
      const edge = (height) => ({ points: [-a, a].flatMap((along) => this.point(i, along, height, axial)) });
      const posts = [-a, a].map((along) => ({ points: [0, high].flatMap((height) => this.point(i, along, height, axial)) }));
      const over = ceiling_m === null ? [] : [-a, a].map((along) => ({ points: [0, axial].flatMap((end) => this.point(i, along, high, end)) }));
      return [edge(0), edge(high), ...posts, ...over];
    })));
  }

  buildLights() {
    this.lights.forEach((lights, k) => {
      lights.begin();
      this.floors.forEach(({ half_m: [a, z] }, i) => {
        const count = Math.max(2, Math.min(24, Math.round((2 * a) / 2.5)));
        for (let n = 0; n < count; n += 1) {
          this.ground.at(((n + 0.5) / count - 0.5) * 2 * a, Math.min(0.12, 0.1 * z), (k ? -1 : 1) * 0.97 * z, 0, p, i);
          lights.add(p, { size: 3, diameter: Math.min(0.26, 0.06 * z), kind: KIND.light, tint: rgb('#FFC98A'), alpha: 0.85 });
        }
      });
      lights.end();
    });
  }

  // "Down" changes along a flat floor: a plumb line at each place it is known, beside the floor's own upright.
  buildLevels() {
    const [plumbs, normals, arcs] = [[], [], []];
    this.bobs.begin();
    this.floors.forEach((one, i) => {
      const axial = -0.86 * one.half_m[1];
      const high = Math.min(PLUMB_M, 0.25 * one.radius_m, 0.6 * (one.ceiling_m ?? Infinity));
      for (const { along_m, lean_deg } of one.levels) {
        const lean = lean_deg * DEG;
        const top = [along_m - high * Math.sin(lean), high * Math.cos(lean)];
        plumbs.push({ points: [...this.point(i, ...top, axial), ...this.point(i, along_m, 0.02, axial)] });
        normals.push({ points: [...this.point(i, along_m, 0.02, axial), ...this.point(i, along_m, high, axial)] });
        this.ground.at(along_m, 0.05 * high, axial, 0, p, i);
        this.bobs.add(p, { size: 5, diameter: 0.07 * high, kind: KIND.bead, tint: rgb('#EFEADC'), time: -1 });
      }
      if (one.levels.length) arcs.push({ points: levelArc(one).flatMap(([along, height]) => this.point(i, along, height, axial)) });
    });
    this.bobs.end();
    this.plumbs.set(plumbs);
    this.normals.set(normals);
    this.level.set(arcs);
  }

  seen(span_m) {
    const unit = span_m / 700;
    for (const ribbon of [this.normals, this.level]) ribbon.uniforms.uUnit.value = unit;
  }

  cutAway(side) {
    [1, -1].forEach((s, i) => {
      this.boxes[i].mesh.visible = s !== side;
      this.lights[i].points.visible = s !== side;
      this.joints[i].visible = s !== side && this.joints[i].geometry.attributes.position !== undefined;
      this.lines[i].mesh.visible = s !== side;
    });
  }
}

// The circle about the axis that touches the floor's middle, as far as the floor reaches: [along, height].
function levelArc({ radius_m: r, half_m: [a] }) {
  const end = Math.atan2(a, r);
  return Array.from({ length: 33 }, (_, k) => {
    const angle = end * (k / 16 - 1);
    return [r * Math.sin(angle), 2 * r * Math.sin(angle / 2) ** 2];
  });
}
