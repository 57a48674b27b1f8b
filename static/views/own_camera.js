// A stage seen through a camera of one's own: its eye goes where the camera is, a frame shows what its picture holds, and the plate lies in it.

import { cameraAt, frameIn } from '../state/own_camera.js';
import { make } from './overlay.js';

/** What a half's eye is to be at a time, in drawn axes, the camera that is looked through there, and where its picture lies: {camera, eye, picture},
 *  or null. */
export function seenThrough(store, half, time_s) {
  const { camera } = store.shot;
  if (!camera?.shown || camera.own.view !== half.frame) return null;
  const row = cameraAt(camera.own, time_s),
    picture = frameIn(camera.own.aspect, row.vertical_fov_deg, half.rect);
  const drawn = ([x, y, z]) => [x, y + half.model.radius_m, z];
  return { camera, picture, eye: { position: drawn(row.position_m), target: drawn(row.target_m), up: row.up, fov: picture.fov } };
}

/** Of one half: asks the store at each frame whether the camera is looked through there. */
export class OwnView {
  constructor(half, store) {
    Object.assign(this, { half, store });
    this.frame = make('div', 'own-frame');
    this.frame.setAttribute('aria-hidden', 'true');
    half.dom.labels.before(this.frame);
    this.frame.hidden = true;
  }

  /** What the eye is to be, or null; the frame and the plate are laid. */
  at(time_s) {
    const { half, frame } = this,
      seen = seenThrough(this.store, half, time_s);
    half.plate.lay(seen, half.rect, time_s);
    frame.hidden = !seen;
    if (!seen) return null;
    const { x, y, width, height } = seen.picture;
    Object.assign(frame.style, { left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` });
    return seen.eye;
  }
}
