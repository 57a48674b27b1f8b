// The eye of a stage: the chosen camera preset, the viewer's own orbit about it, and the move from one preset to the next.

import { Matrix4, PerspectiveCamera, Vector3 } from '../vendor/three.module.js';
import { clamp } from '../state/scale.js';
import { axes, spanOf } from './framing.js';

const MOVE_MS = 400;
const TILT = [-1.45, 1.6];
const ZOOM = [0.05, 30];
const MOST_FOV_DEG = 60; // from top to bottom: a wider view that turns is hard on those who watch
const turning = new Matrix4();
const [x, y, z] = [new Vector3(), new Vector3(), new Vector3()];

export class Eye {
  constructor() {
    this.camera = new PerspectiveCamera(30, 1, 0.1, 2000);
    this.camera.layers.enableAll();
    this.own = null; // a camera of one's own in its stead: {position, target, up, fov}
    this.rig = null; // of the preset: {target, azimuth, level, yaw, tilt, distance, fov}
    this.from = null;
    this.stamp = 0; // another one once it sees from elsewhere
    this.placed = new Float64Array(10);
    this.stood = { rig: null, orbit: null }; // what it was placed by last, while it stands still
    this.home();
  }

  home() {
    this.orbit = { yaw: 0, tilt: 0, zoom: 1 };
  }

  turn(yaw, tilt) {
    this.orbit.yaw += yaw;
    const base = this.rig?.tilt ?? 0;
    this.orbit.tilt = clamp(base + this.orbit.tilt + tilt, ...TILT) - base;
  }

  zoom(factor) {
    this.orbit.zoom = clamp(this.orbit.zoom * factor, ...ZOOM);
  }

  // From what is seen now to whatever it follows from here on, over `ms`; not eased: at once.
  depart({ eased, ms, now_ms }) {
    this.from = eased && this.rig && !this.rig.axes ? { rig: this.seen(now_ms), at_ms: now_ms, ms } : null;
    this.home();
  }

  // A new rig at once, or eased from what is seen now; a longer move under way goes on to it.
  follow(rig, { eased = false, now_ms = 0 } = {}) {
    if (rig.axes) this.from = null;
    else if (eased && this.from?.ms > MOVE_MS && this.rig?.level === rig.level) this.rig = rig;
    else if (eased && this.rig && !this.rig.axes && this.rig.level === rig.level) this.from = { rig: this.seen(now_ms), at_ms: now_ms, ms: MOVE_MS };
    else if ((!eased && this.from && !this.rig) || this.rig?.level !== rig.level) this.from = null;
    this.rig = rig.fov > MOST_FOV_DEG ? { ...rig, fov: MOST_FOV_DEG } : rig;
  }

  // Through a camera of one's own nothing of a move is seen, and none ends: the stage would be drawn for ever.
  get moving() {
    return this.from !== null && !this.own;
  }

  // The rig as it is at this moment of the move, with the viewer's orbit.
  seen(now_ms) {
    const goal = { ...this.rig, yaw: this.rig.yaw + this.orbit.yaw, tilt: this.rig.tilt + this.orbit.tilt, distance: this.rig.distance * this.orbit.zoom };
    if (!this.from) return goal;
    const u = (now_ms - this.from.at_ms) / this.from.ms;
    if (u >= 1) {
      this.from = null;
      return goal;
    }
    return between(this.from.rig, goal, ease(Math.max(0, u)));
  }

  // `into`: from the room into the frame that is drawn, where that is another's ({quaternion, matrix} of tumbling.js).
  place(width, height, now_ms, reach_m, into = null) {
    if (into) this.stood.rig = null;
    else if (this.stands(width, height, reach_m)) return;
    const { camera } = this;
    const rig = this.own ? rigOf(this.own) : this.seen(now_ms);
    const { right, up, back } = rig.axes ?? axes(rig);
    const aspect = width / height;
    const [tx, ty, tz] = rig.target;
    camera.position.set(tx + back[0] * rig.distance, ty + back[1] * rig.distance, tz + back[2] * rig.distance);
    camera.quaternion.setFromRotationMatrix(turning.makeBasis(x.set(...right), y.set(...up), z.set(...back)));
    camera.fov = rig.fov;
    camera.aspect = aspect;
    camera.near = Math.max(1e-3, 0.015 * rig.distance);
    camera.far = reach_m + rig.distance;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld(true);
    if (this.placedElsewhere(rig.fov, width, height)) this.stamp += 1;
    this.span_m = spanOf(rig, aspect);
    this.distance_m = rig.distance;
    this.axes = { right, up, back };
    this.metresPerPx = this.span_m / width;
    this.target = rig.target;
    this.filed = { position: camera.position.toArray(), target: rig.target, up };
    if (into) this.carry(into);
  }

  // Whether nothing has moved since it was placed: then all of it holds.
  stands(width, height, reach_m) {
    const { stood, orbit, camera } = this;
    const same =
      !this.from &&
      !this.own &&
      stood.rig === this.rig &&
      stood.orbit === orbit &&
      stood.yaw === orbit.yaw &&
      stood.tilt === orbit.tilt &&
      stood.zoom === orbit.zoom &&
      stood.width === width &&
      stood.height === height &&
      stood.reach_m === reach_m &&
      camera.aspect === width / height;
    if (same) return true;
    Object.assign(stood, { rig: this.from || this.own ? null : this.rig, orbit, ...orbit, width, height, reach_m });
    return false;
  }

  placedElsewhere(fov, width, height) {
    const { placed } = this,
      { position: o, quaternion: q } = this.camera;
    let moved = false;
    const put = (k, part) => {
      moved ||= placed[k] !== part;
      placed[k] = part;
    };
    put(0, o.x);
    put(1, o.y);
    put(2, o.z);
    put(3, q.x);
    put(4, q.y);
    put(5, q.z);
    put(6, q.w);
    put(7, fov);
    put(8, width);
    put(9, height);
    return moved;
  }

  carry({ quaternion, matrix }) {
    const { camera, axes: own } = this;
    camera.position.applyMatrix4(matrix);
    camera.quaternion.premultiply(quaternion);
    camera.updateMatrixWorld(true);
    this.axes = Object.fromEntries(Object.entries(own).map(([name, way]) => [name, new Vector3(...way).applyQuaternion(quaternion).toArray()]));
    this.target = new Vector3(...this.target).applyMatrix4(matrix).toArray();
  }

  // As it was placed last, in the axes of files: as drawn, but with the origin on the axis. null before.
  asFiled(radius_m) {
    if (!this.filed) return null;
    const { position, target, up } = this.filed,
      { fov, aspect } = this.camera;
    const moved = ([x, y, z]) => [x, y - radius_m, z];
    return { position_m: moved(position), target_m: moved(target), up: [...up], vertical_fov_deg: fov, aspect };
  }
}

// A camera that stands where it is told to, as a rig with axes of its own.
function rigOf({ position, target, up, fov }) {
  const [eye, aim, over] = [position, target, up].map(parts => new Vector3(...parts));
  const back = eye.clone().sub(aim),
    distance = back.length();
  back.normalize();
  const right = over.clone().cross(back).normalize();
  const turned = [right, back.clone().cross(right), back].map(axis => axis.toArray());
  return { target, distance, fov, axes: { right: turned[0], up: turned[1], back: turned[2] } };
}

function between(a, b, u) {
  const mix = (p, q) => p + (q - p) * u;
  const swing = (p, q) => p + (((q - p + 3 * Math.PI) % (2 * Math.PI)) - Math.PI) * u;
  return {
    target: a.target.map((c, i) => mix(c, b.target[i])),
    azimuth: swing(a.azimuth, b.azimuth),
    level: b.level,
    yaw: swing(a.yaw, b.yaw),
    tilt: mix(a.tilt, b.tilt),
    distance: Math.exp(mix(Math.log(a.distance), Math.log(b.distance))),
    fov: mix(a.fov, b.fov),
  };
}

// cubic-bezier(.2, 0, 0, 1), near enough for a camera
function ease(u) {
  return 1 - (1 - u) ** 3 * (1 + 1.2 * u * (1 - u));
}
