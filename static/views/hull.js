// The craft round the habitat: its parts as the solids they are named for. What turns does so with the habitat, what is still with the
// room, the counter group on its own.

import { BoxGeometry, ConeGeometry, CylinderGeometry, Group, Mesh, SphereGeometry, TorusGeometry, Vector3 } from '../vendor/three.module.js';
import { partStrokes } from './craft_reach.js';
import { standBefore } from './craft_sight.js';
import { cardMaterial } from './materials.js';
import { Ribbon } from './ribbon.js';

const ROUND = 48,
  ACROSS = 16;
const THIN = 0.006, // of its length, a rod's radius; of its radius, that of a hoop
  LEAST_M = 0.08,
  POINT_M = 0.5;
const BEHIND = { polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 4 }; // of the deck, where both are one wall
const COLORS = { turning: '#6E8EA0', still: '#6E756F', counter: '#9A6F5C' };
const OUTLINE = { width: 1.3, alpha: 0.75, fogged: 1, order: 2 };
const AXIS = new Vector3(0, 0, 1);
const toAxis = geometry => geometry.rotateX(Math.PI / 2); // solids of three.js stand along y

const SOLIDS = {
  point: () => new SphereGeometry(POINT_M, ROUND / 2, ACROSS),
  rod: ({ length_m }) => toAxis(new CylinderGeometry(...twice(thin(length_m)), length_m, ACROSS)),
  ring: ({ radius_m }) => new TorusGeometry(radius_m, thin(radius_m), ACROSS / 2, 2 * ROUND),
  disc: ({ radius_m }) => toAxis(new CylinderGeometry(radius_m, radius_m, 2 * thin(radius_m), ROUND)),
  cylinder: ({ radius_m, length_m }) => toAxis(new CylinderGeometry(radius_m, radius_m, length_m, ROUND)),
  cylinder_shell: ({ radius_m, length_m }) => toAxis(new CylinderGeometry(radius_m, radius_m, length_m, ROUND, 1, true)),
  box: ({ size_m }) => new BoxGeometry(...size_m),
  sphere: ({ radius_m }) => new SphereGeometry(radius_m, ROUND, ROUND / 2),
  sphere_shell: ({ radius_m }) => new SphereGeometry(radius_m, ROUND, ROUND / 2),
  torus: ({ radius_m, tube_radius_m }) => new TorusGeometry(radius_m, tube_radius_m, ACROSS, 2 * ROUND),
  torus_shell: ({ radius_m, tube_radius_m }) => new TorusGeometry(radius_m, tube_radius_m, ACROSS, 2 * ROUND),
  cone: ({ radius_m, length_m }) => toAxis(new ConeGeometry(radius_m, length_m, ROUND)),
};

const thin = size_m => Math.max(THIN * size_m, LEAST_M);
const twice = value => [value, value];

/** The solid of a part, where it is in the craft's axes. */
export function solidOf(part, material) {
  const mesh = new Mesh(SOLIDS[part.solid](part), material);
  mesh.quaternion.setFromUnitVectors(AXIS, new Vector3(...part.axis).normalize());
  mesh.position.set(...part.place_m);
  return mesh;
}

/** A group whose children are in the craft's axes, where (X, Y, Z) is drawn as (y, −x, z). */
export function craftAxes() {
  const group = new Group();
  group.rotation.z = -Math.PI / 2;
  return group;
}

export class Hull {
  constructor(shared, habitat) {
    this.materials = Object.fromEntries(Object.entries(COLORS).map(([name, color]) => [name, cardMaterial(shared, color, { side: 'both', fill: 0.35 })]));
    for (const material of Object.values(this.materials)) Object.assign(material, BEHIND);
    this.groups = { turning: craftAxes(), still: craftAxes(), counter: craftAxes() };
    this.counter = new Group();
    this.counter.add(this.groups.counter);
    habitat.group.add(this.groups.turning);
    habitat.room.add(this.groups.still);
    habitat.whole.add(this.counter);
    this.shared = shared;
    this.solids = []; // {mesh, part, outline: once it was drawn as one}
    this.key = 'null';
  }

  // Made anew only when the craft changes.
  // What the habitat is drawn as is drawn only of one that tumbles: seen whole, it may be much longer than the deck.
  build({ craft, radius_m, tumbling }) {
    const key = JSON.stringify([craft, radius_m, tumbling]);
    if (key === this.key) return;
    this.key = key;
    this.ratio = craft?.counter_ratio ?? 0;
    for (const group of Object.values(this.groups)) {
      for (const drawn of group.children) drawn.geometry.dispose();
      group.clear();
    }
    this.groups.turning.position.y = this.groups.still.position.y = this.counter.position.y = radius_m;
    this.solids = (craft?.parts ?? [])
      .filter(part => tumbling || !part.is_habitat)
      .map(part => {
        const mesh = solidOf(part, this.materials[part.group]);
        this.groups[part.group].add(mesh);
        return { part, mesh };
      });
  }

  /** Draws as outlines the solids that stand between an eye and places, Vector3s; they stay so until this is asked again. */
  openTo(eye, places) {
    const open = places.length
      ? new Set(
          standBefore(
            this.solids.map(({ mesh }) => mesh),
            eye,
            places,
          ),
        )
      : new Set();
    for (const solid of this.solids) {
      const bars = open.has(solid.mesh);
      if (bars) solid.outline ??= this.outlineOf(solid.part);
      solid.mesh.visible = !bars;
      if (solid.outline) solid.outline.visible = bars;
    }
  }

  outlineOf(part) {
    const ribbon = new Ribbon(this.shared, { color: COLORS[part.group], ...OUTLINE });
    ribbon.material.uniforms.uNow = { value: 1e9 };
    ribbon.set(partStrokes(part).map(points => ({ points: points.flat() })));
    this.groups[part.group].add(ribbon.mesh);
    return ribbon.mesh;
  }

  // While it tumbles all of it turns as one.
  turn(angle_rad, room_rad) {
    this.counter.rotation.z = room_rad + this.ratio * (angle_rad - room_rad);
  }
}
