// A craft that tumbles. Both stages draw it and all that is aboard in its own frame; Outside's eye is carried round it against its turning, and
// with the eye what stands still there: the paths, the stars, the light. So every place aboard, every label and every shadow is found as ever.

import { Matrix4, Quaternion, Vector3 } from '../vendor/three.module.js';
import { attitudeAt } from '../time/track.js';
import { drawnPoint } from './place.js';

const held = [1, 0, 0, 0];
const centre = { x: 0, y: 0, z: 0 };
const [middle, offset] = [new Vector3(), new Vector3()];

/** The craft's attitude at time t in drawing axes, null where it does not tumble. */
export function turning(model, time_s, out = new Quaternion()) {
  const attitude = model.tumbling && attitudeAt(model.answer, time_s, held);
  if (!attitude) return null;
  const [w, x, y, z] = attitude;
  return out.set(y, -x, z, w).normalize();
}

/** From the room into the craft at time t, {quaternion, position, matrix}; null where it does not tumble. */
export function intoCraft(model, time_s) {
  if (!model.tumbling) return null;
  const quaternion = turning(model, time_s)?.invert();
  if (!quaternion) return null;
  drawnPoint(model.answer.tumbling.centre_m, 0, model.radius_m, centre);
  middle.set(centre.x, centre.y, centre.z);
  const position = middle.clone().sub(offset.copy(middle).applyQuaternion(quaternion));
  return { quaternion, position, matrix: new Matrix4().compose(position, quaternion, new Vector3(1, 1, 1)) };
}
