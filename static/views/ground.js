// Where a place (along, height, axial) lies on each kind of ground, which way is up there, and what one stands on. Nothing else in the
// views knows that decks are round and floors flat. Angles are about the axis; `turn` is the habitat's own angle in the stage.

import { azimuthOf, drawnPoint, placeAt } from './place.js';

const DEG = Math.PI / 180;

// The numbers that a habitat is shown from: `part` of the document, `answered` of the trace with its flat floors, `drawn` as the server
// gives it to be drawn (`server/rimfall/shapes/drawn.py`).
export function readShape(part, answered, drawn) {
  const { radius_m } = part;
  const floors = (answered?.floors ?? []).map(readFloor);
  return { ...drawn, radius_m, ceiling_m: part.ceiling_m ?? null, floors, drawn, key: JSON.stringify([drawn, floors]) };
}

// How far a floor reaches from its middle is read off its corners, along and across.
function readFloor({ name, corners_m, ceiling_corners_m, radius_m, azimuth_deg, gravity_g, levels }) {
  const azimuth_rad = azimuth_deg * DEG;
  const [s, c] = [Math.sin(azimuth_rad), Math.cos(azimuth_rad)];
  const most = fn => Math.max(...corners_m.map(corner => Math.abs(fn(corner))));
  const [top] = ceiling_corners_m ?? [];
  return {
    name,
    radius_m,
    azimuth_rad,
    gravity_g,
    half_m: [most(([x, y]) => y * c - x * s), most(([, , z]) => z)],
    ceiling_m: top ? radius_m - (top[0] * c + top[1] * s) : null,
    levels: levels ?? [],
  };
}

export function drawnGround(shape) {
  if (shape.floors.length) return new Floors(shape);
  return shape.level ? new Turntable(shape) : new Round(shape);
}

// What one ground must answer, told once: ground round the axis, measured from the radius toward the axis. Where it bends across, too,
// tube_m is the radius of that bend.
class Round {
  constructor(shape) {
    Object.assign(this, { shape, radius_m: shape.radius_m, tube_m: shape.section_m, level: false, whole: 'habitat' });
  }

  // The angle at which a place's "up" is read (0: up on the picture at time 0).
  azimuth(along_m) {
    return along_m / this.radius_m;
  }

  at(along_m, height_m, axial_m, turn_rad, out) {
    return placeAt(this.radius_m, along_m, height_m, axial_m, turn_rad, out);
  }

  // Height, over the radius, of what one stands on.
  surface(axial_m) {
    if (this.tube_m === null) return 0;
    const z = Math.min(Math.abs(axial_m), this.tube_m);
    return (z * z) / (this.tube_m + Math.sqrt(this.tube_m ** 2 - z * z));
  }

  // How far spinward one place is from another by the nearest way, at its own distance from the axis.
  spinward(from, to) {
    const turned = (to.along_m - from.along_m) / this.radius_m;
    return (turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI))) * (this.radius_m - to.height_m);
  }

  // A point `lift_m` above the surface.
  on(along_m, lift_m, axial_m, turn_rad, out, floor = 0) {
    return this.at(along_m, this.surface(axial_m) + lift_m, axial_m, turn_rad, out, floor);
  }

  // The place straight under a drawn point, and how far it is below, into `out`; null where there is nothing to stand on.
  under(point, turn_rad, _floor = 0, out = {}) {
    const R = this.radius_m,
      down = R - point.y;
    if (this.tube_m !== null && Math.abs(point.z) > this.tube_m) return null;
    out.along_m = (azimuthOf(point, R) - turn_rad) * R;
    out.height_m = R - Math.sqrt(point.x * point.x + down * down) - this.surface(point.z);
    out.axial_m = point.z;
    return out;
  }

  // Above the radius, or above the floor's plane.
  height(point, turn_rad, floor) {
    return this.under(point, turn_rad, floor)?.height_m ?? 0;
  }

  headroom() {
    return Math.min(2 * (this.tube_m ?? this.radius_m) - 0.1, this.shape.ceiling_m ?? Infinity);
  }

  // Half of what can be walked on (along, axial); axial null: as wide as can be seen.
  reach() {
    return { along_m: Math.PI * this.radius_m, axial_m: this.shape.half_m };
  }

  // Points that a picture of the whole must hold.
  outline() {
    const { outline_m } = this.shape;
    const points = [];
    const p = {};
    for (let i = 0; i < outline_m.length / 3; i += 1) {
      drawnPoint(outline_m, i, this.radius_m, p);
      points.push(p.x, p.y, p.z);
    }
    return points;
  }

  middleOf() {
    return { along_m: 0, axial_m: 0 };
  }
}

// Flat floors: along is a straight length, up is the floor's normal everywhere.
class Floors extends Round {
  constructor(shape) {
    super(shape);
    this.floors = shape.floors;
    this.whole = 'craft';
  }

  floor(floor) {
    return this.floors[floor] ?? this.floors[0];
  }

  azimuth(_along_m, floor = 0) {
    return this.floor(floor).azimuth_rad;
  }

  spinward(from, to) {
    return to.along_m - from.along_m;
  }

  at(along_m, height_m, axial_m, turn_rad, out, floor = 0) {
    const { radius_m, azimuth_rad } = this.floor(floor);
    const angle = azimuth_rad + turn_rad;
    const half = Math.sin(angle / 2);
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    out.x = (radius_m - height_m) * s + along_m * c;
    out.y = this.radius_m - radius_m + 2 * radius_m * half * half + height_m * c + along_m * s;
    out.z = axial_m;
    return out;
  }

  under(point, turn_rad, floor = 0, out = {}) {
    const { radius_m, azimuth_rad, half_m } = this.floor(floor);
    const angle = azimuth_rad + turn_rad;
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    const down = this.radius_m - point.y;
    const along_m = point.x * c - down * s;
    if (Math.abs(along_m) > half_m[0] || Math.abs(point.z) > half_m[1]) return null;
    out.along_m = along_m;
    out.height_m = radius_m - (point.x * s + down * c);
    out.axial_m = point.z;
    return out;
  }

  headroom(floor = 0) {
    const { ceiling_m, radius_m } = this.floor(floor);
    return ceiling_m ?? 2 * radius_m;
  }

  reach(floor = 0) {
    const [along_m, axial_m] = this.floor(floor).half_m;
    return { along_m, axial_m };
  }
}

// A turntable under outside gravity: up is the spin axis, a place's axial is its distance from that axis.
class Turntable extends Round {
  constructor(shape) {
    super(shape);
    Object.assign(this, { level: true, whole: 'turntable' });
  }

  // Straight, square to the radius of the place it is counted from.
  spinward(from, to) {
    return to.axial_m * Math.sin((to.along_m - from.along_m) / this.radius_m);
  }

  at(along_m, height_m, axial_m, turn_rad, out) {
    const R = this.radius_m;
    const angle = along_m / R + turn_rad;
    out.x = axial_m * Math.sin(angle);
    out.y = R - axial_m * Math.cos(angle);
    out.z = height_m;
    return out;
  }

  under(point, turn_rad, _floor = 0, out = {}) {
    const R = this.radius_m;
    const axial_m = Math.hypot(point.x, R - point.y);
    if (axial_m > R) return null;
    out.along_m = (azimuthOf(point, R) - turn_rad) * R;
    out.height_m = point.z;
    out.axial_m = axial_m;
    return out;
  }

  headroom() {
    return this.radius_m < 2 ? 0 : Infinity; // a small turntable is nothing to stand on
  }

  middleOf() {
    return { along_m: 0, axial_m: 0.5 * this.radius_m };
  }
}

// Spinward, up and axial at an azimuth, in drawing axes.
export function triad(azimuth, level) {
  const [s, c] = [Math.sin(azimuth), Math.cos(azimuth)];
  if (level) return { spin: [c, s, 0], up: [0, 0, 1], axial: [s, -c, 0] };
  return { spin: [c, s, 0], up: [-s, c, 0], axial: [0, 0, 1] };
}
