// The craft round the habitat: its parts as the solids they are named for. What turns does so with the habitat, what is still with the
// room, the counter group on its own.

import { BoxGeometry, ConeGeometry, CylinderGeometry, Group, Mesh, SphereGeometry, TorusGeometry, Vector3 } from '../vendor/three.module.js';
import { partStrokes } from './craft_reach.js';
import { standBefore } from './craft_sight.js';
import { cardMaterial } from './materials.js';
import { Ribbon } from './ribbon.js';

const FINE = { round: 48, across: 16 }, // corners about an axis and across
  COARSE = { round: 12, across: 6 }; // enough to tell what stands before what
const THIN = 0.006, // of its length, a rod's radius; of its radius, that of a hoop
  LEAST_M = 0.08,
  POINT_M = 0.5;
const BEHIND = { polygonOffset: true, polygonOffsetFactor: 2, polygonOffsetUnits: 4 }; // of the deck, where both are one wall
const COLORS = { turning: '#6E8EA0', still: '#6E756F', counter: '#9A6F5C' };
const OUTLINE = { width: 1.3, alpha: 0.75, fogged: 1, order: 2 };
const AXIS = new Vector3(0, 0, 1);
const toAxis = geometry => geometry.rotateX(Math.PI / 2); // solids of three.js stand along y

const SOLIDS = {
  point: (_, { round, across }) => new SphereGeometry(POINT_M, round / 2, across),
  rod: ({ length_m }, { across }) => toAxis(new CylinderGeometry(...twice(thin(length_m)), length_m, across)),
  ring: ({ radius_m }, { round, across }) => new TorusGeometry(radius_m, thin(radius_m), across / 2, 2 * round),
  disc: ({ radius_m }, { round }) => toAxis(new CylinderGeometry(radius_m, radius_m, 2 * thin(radius_m), round)),
  cylinder: ({ radius_m, length_m }, { round }) => toAxis(new CylinderGeometry(radius_m, radius_m, length_m, round)),
  cylinder_shell: ({ radius_m, length_m }, { round }) => toAxis(new CylinderGeometry(radius_m, radius_m, length_m, round, 1, true)),
  box: ({ size_m }) => new BoxGeometry(...size_m),
  sphere: ({ radius_m }, { round }) => new SphereGeometry(radius_m, round, round / 2),
  sphere_shell: ({ radius_m }, { round }) => new SphereGeometry(radius_m, round, round / 2),
  torus: ({ radius_m, tube_radius_m }, { round, across }) => new TorusGeometry(radius_m, tube_radius_m, across, 2 * round),
  torus_shell: ({ radius_m, tube_radius_m }, { round, across }) => new TorusGeometry(radius_m, tube_radius_m, across, 2 * round),
  cone: ({ radius_m, length_m }, { round }) => toAxis(new ConeGeometry(radius_m, length_m, round)),
};

const thin = size_m => Math.max(THIN * size_m, LEAST_M);
const twice = value => [value, value];

/** The solid of a part, where it is in the craft's axes. */
export function solidOf(part, material, corners = FINE) {
  const mesh = new Mesh(SOLIDS[part.solid](part, corners), material);
  mesh.quaternion.setFromUnitVectors(AXIS, new Vector3(...part.axis).normalize());
  mesh.position.set(...part.place_m);
  return mesh;
}

// The same solid with few corners, where the other one is: it is not drawn.
function bulkOf(part, mesh) {
  const bulk = solidOf(part, mesh.material, COARSE);
  bulk.matrixWorld = mesh.matrixWorld;
  return bulk;
}

/** A group whose children are in the craft's axes, where (X, Y, Z) is drawn as (y, −x, z). */
export function craftAxes() {
  const group = new Group();
  group.rotation.z = -Math.PI / 2;
  return group;
}

export class Hull {
  constructor(shared, habitat) {
    this.materials = Object.fromEntries(
      Object.entries(COLORS).map(([name, color]) => [name, cardMaterial(shared, color, { side: 'both', fill: 0.35, matter: 'metal' })]),
    );
    for (const material of Object.values(this.materials)) Object.assign(material, BEHIND);
    this.groups = { turning: craftAxes(), still: craftAxes(), counter: craftAxes() };
    this.counter = new Group();
    this.counter.add(this.groups.counter);
    habitat.group.add(this.groups.turning);
    habitat.room.add(this.groups.still);
    habitat.whole.add(this.counter);
    this.shared = shared;
    this.solids = []; // {mesh, part, bulk: the same for looking, outline: once it was drawn as one}
    this.looked = {};
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
        return { part, mesh, bulk: bulkOf(part, mesh) };
      });
  }

  /** Whether any solid is drawn. */
  get isThere() {
    return this.solids.length > 0;
  }

  /** Draws as outlines the solids that stand between an eye and places, Vector3s; they stay so until this is asked again. `stage`: whose eye it is. */
  openTo(eye, places, stage = '') {
    const open = this.before(eye, places, stage);
    for (const solid of this.solids) {
      const bars = open.has(solid.bulk);
      if (bars) solid.outline ??= this.outlineOf(solid.part);
      solid.mesh.visible = !bars;
      if (solid.outline) solid.outline.visible = bars;
    }
  }

  // Looked for anew only where the eye, what moves or a group stands otherwise.
  before(eye, places, stage) {
    const groups = Object.values(this.groups).flatMap(({ matrixWorld }) => matrixWorld.elements);
    const key = [this.key, ...eye.toArray(), ...places.flatMap(place => place.toArray()), ...groups].join();
    if (this.looked[stage]?.key !== key) {
      const bulks = places.length ? this.solids.map(({ bulk }) => bulk) : [];
      this.looked[stage] = { key, open: new Set(standBefore(bulks, eye, places)) };
    }
    return this.looked[stage].open;
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
