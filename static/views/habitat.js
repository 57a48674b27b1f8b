// The habitat that turns, drawn by whichever craft its shape asks for; and round a turntable the room that does not.

import { Group } from '../vendor/three.module.js';
import { Bench } from './bench.js';
import { Drum } from './drum.js';
import { Pods } from './pods.js';
import { Shell } from './shell.js';

const CRAFTS = { cylinder: Drum, torus: Shell, sphere: Shell, pods: Pods, tether: Pods, tumbler: Pods, turntable: Bench };

export class Habitat {
  constructor(shared) {
    this.shared = shared;
    this.crafts = new Map();
    this.pivot = new Group();
    this.group = new Group();
    this.still = new Group();    // does not turn with the habitat
    this.room = new Group();
    this.whole = new Group();
    this.pivot.add(this.group);
    this.still.add(this.room);
    this.whole.add(this.pivot, this.still);
  }

  // Made anew only when what it is made from changes.
  build(shape, eye, floor) {
    const key = JSON.stringify([shape, eye, floor]);
    if (key === this.key) return;
    this.key = key;
    const R = shape.radius_m;
    for (const group of [this.pivot, this.still]) group.position.set(0, R, 0);
    for (const group of [this.group, this.room]) group.position.set(0, -R, 0);
    this.craft = this.craftOf(CRAFTS[shape.kind]);
    for (const craft of this.crafts.values()) {
      craft.group.visible = craft === this.craft;
      if (craft.room) craft.room.visible = craft === this.craft;
    }
    this.craft.build(shape, eye, floor);
  }

  craftOf(Kind) {
    if (!this.crafts.has(Kind)) {
      const craft = new Kind(this.shared);
      this.crafts.set(Kind, craft);
      this.group.add(craft.group);
      if (craft.room) this.room.add(craft.room);
    }
    return this.crafts.get(Kind);
  }

  get half_m() {
    return this.craft.half_m;
  }

  get open() {
    return this.craft.open;
  }

  // `room_rad`: how far the room has turned on this stage.
  turn(angle_rad, room_rad = 0) {
    this.pivot.rotation.z = angle_rad;
    this.still.rotation.z = room_rad;
    this.whole.updateMatrixWorld(true);
  }

  // `side` of the axis whose rails and posts would stand before the scene, 0 for none; `eye_side` where the eye is.
  cutAway(side, eye_side) {
    this.craft.cutAway(side, eye_side);
  }

  seen(span_m) {
    this.craft.seen(span_m);
  }
}
