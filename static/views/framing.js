// From a direction of view and the points that must be seen to where the eye stands (exact, no search: each side of the picture bounds
// a half-space of eyes), and from a point of the picture back into the scene.

import { triad } from './ground.js';

const RAD = Math.PI / 180;
const CLEAR_PX = 16; // about title and buttons: points lie apart, and lines run between them

// Right, up and back of an eye that looks from (yaw, tilt) about the local up at `azimuth` (`level`: up is the axis).
export function axes({ azimuth, level, yaw, tilt }) {
  const { spin, up, axial } = triad(azimuth, level);
  const [sy, cy, st, ct] = [Math.sin(yaw), Math.cos(yaw), Math.sin(tilt), Math.cos(tilt)];
  const mix = (s, u, z) => [0, 1, 2].map(c => s * spin[c] + u * up[c] + z * axial[c]);
  return { right: mix(cy, 0, -sy), up: mix(-st * sy, ct, -st * cy), back: mix(ct * sy, st, ct * cy) };
}

// `inset`: shares of the picture left free {top, bottom, side}. Gives {target, distance} for a field of view in degrees.
export function fit(points, view, fov, aspect, inset) {
  const { right, up, back } = axes(view);
  const tall = Math.tan((fov * RAD) / 2);
  const wide = tall * aspect * (1 - 2 * inset.side);
  const over = tall * (1 - 2 * inset.top);
  const under = tall * (1 - 2 * inset.bottom);
  const most = { r: -Infinity, l: -Infinity, t: -Infinity, b: -Infinity, near: -Infinity, far: Infinity };
  for (let i = 0; i < points.length; i += 3) {
    const [x, y, z] = [right, up, back].map(d => d[0] * points[i] + d[1] * points[i + 1] + d[2] * points[i + 2]);
    most.r = Math.max(most.r, x + wide * z);
    most.l = Math.max(most.l, wide * z - x);
    most.t = Math.max(most.t, y + over * z);
    most.b = Math.max(most.b, under * z - y);
    most.near = Math.max(most.near, z);
    most.far = Math.min(most.far, z);
  }
  const eye = Math.max((most.r + most.l) / (2 * wide), (most.t + most.b) / (over + under), most.near + 0.02 * (most.near - most.far) + 0.05);
  const x = (most.r - most.l) / 2;
  const y = (most.t - over * eye + under * eye - most.b) / 2;
  const z = (most.near + most.far) / 2;
  return { target: [0, 1, 2].map(c => right[c] * x + up[c] * y + back[c] * z), distance: eye - z };
}

/** As `fit`, but as high as only those need who would lie under one of the `corners`, [{x, y, w, h}] px of a stage `width` by `height`: title and
    buttons leave the middle of its top free. */
export function fitBetween(points, view, fov, { width, height }, inset, corners) {
  const aspect = width / height;
  const high = { ...inset, top: Math.min(inset.top, inset.side) };
  const rig = fit(points, view, fov, aspect, high);
  if (high.top === inset.top || !meets(points, view, fov, { width, height }, rig, corners)) return rig;
  return fit(points, view, fov, aspect, inset);
}

function meets(points, view, fov, { width, height }, { target, distance }, corners) {
  const { right, up, back } = axes(view);
  const px = height / (2 * Math.tan((fov * RAD) / 2));
  for (let i = 0; i < points.length; i += 3) {
    const [x, y, z] = [right, up, back].map(d => d[0] * (points[i] - target[0]) + d[1] * (points[i + 1] - target[1]) + d[2] * (points[i + 2] - target[2]));
    const [across, down] = [width / 2 + (px * x) / (distance - z), height / 2 - (px * y) / (distance - z)];
    if (corners.some(c => across > c.x - CLEAR_PX && across < c.x + c.w + CLEAR_PX && down < c.y + c.h + CLEAR_PX)) return true;
  }
  return false;
}

// Metres across the picture at the target.
export function spanOf({ distance, fov }, aspect) {
  return 2 * distance * Math.tan((fov * RAD) / 2) * aspect;
}

// From a point of the picture into the scene.

const STEPS = 600;

// Eye and direction of the ray through (x, y) px of a stage.
export function ray(eye, rect, x, y) {
  const { camera, axes } = eye;
  const tall = Math.tan((camera.fov * Math.PI) / 360);
  const u = ((2 * x) / rect.width - 1) * tall * camera.aspect;
  const v = (1 - (2 * y) / rect.height) * tall;
  const { position: o } = camera;
  return { from: [o.x, o.y, o.z], along: [0, 1, 2].map(c => u * axes.right[c] + v * axes.up[c] - axes.back[c]) };
}

// Offset from `point` to where the ray meets the plane through it, or null.
export function meetPlane({ from, along }, point, normal) {
  const p = [point.x, point.y, point.z];
  const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const speed = dot(along, normal);
  const s =
    dot(
      p.map((c, k) => c - from[k]),
      normal,
    ) / speed;
  return Number.isFinite(s) && s > 0 ? from.map((c, k) => c + s * along[k] - p[k]) : null;
}

// Where the ray goes through what can be walked on, from above, or null. `height(point)`: above the surface, null where it ends.
export function meetGround({ from, along }, far_m, height) {
  const long = Math.hypot(...along);
  const point = s => ({ x: from[0] + (s / long) * along[0], y: from[1] + (s / long) * along[1], z: from[2] + (s / long) * along[2] });
  let above = null;
  for (let k = 0; k <= STEPS; k += 1) {
    const s = far_m * (k / STEPS) ** 2;
    const h = height(point(s));
    if (h !== null && h <= 0 && above !== null) return point(bisected(t => height(point(t)) ?? -1, above, s));
    above = h !== null && h > 0 ? s : null;
  }
  return null;
}

function bisected(fn, above, below) {
  let [a, b] = [above, below];
  for (let k = 0; k < 48; k += 1) {
    const middle = (a + b) / 2;
    if (fn(middle) > 0) a = middle;
    else b = middle;
  }
  return b;
}
