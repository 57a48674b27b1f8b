// A camera as files have it ({position_m, target_m, up, vertical_fov_deg}, origin on the axis) as the rig of a stage's eye: the inverse of `asFiled`.

import { axes } from './framing.js';
import { triad } from './ground.js';
import { azimuthOf } from './place.js';

const SMALL = 1e-9,
  NEAR = 1e-6;

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = v => v.map(part => part / Math.hypot(...v));

/** {target, azimuth, level, yaw, tilt, distance, fov} in drawn axes; with `axes` of its own where no yaw and tilt give its bank. `level`: up is the
 *  axis. Angles in radians, the field of view in degrees. */
export function rigOfFiled({ position_m, target_m, up, vertical_fov_deg }, radius_m, level) {
  const offset = position_m.map((part, k) => part - target_m[k]),
    back = unit(offset),
    right = unit(cross(up, back)),
    over = cross(back, right);
  const target = [target_m[0], target_m[1] + radius_m, target_m[2]];
  const azimuth = level ? 0 : azimuthUnder(right, over, () => azimuthOf({ x: target[0], y: target[1] }, radius_m));
  const own = triad(azimuth, level);
  const yaw = Math.atan2(-dot(right, own.axial), dot(right, own.spin)),
    tilt = Math.atan2(dot(back, own.up), dot(over, own.up));
  const rig = { target, azimuth, level, yaw, tilt, distance: Math.hypot(...offset), fov: vertical_fov_deg };
  const given = axes(rig);
  const banked = [given.right, given.up, given.back].some((way, k) => Math.hypot(...way.map((part, c) => part - [right, over, back][k][c])) > NEAR);
  return banked ? { ...rig, axes: { right, up: over, back } } : rig;
}

// Where round the rim upright is upright in the picture; `otherwise` where it looks along the rim, and any may do.
function azimuthUnder(right, over, otherwise) {
  const flat = Math.hypot(right[0], right[1]);
  if (flat < SMALL) return otherwise();
  const azimuth = Math.atan2(right[1], right[0]);
  return dot(over, triad(azimuth, false).up) < 0 ? azimuth + Math.PI : azimuth;
}
