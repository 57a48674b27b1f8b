// A stage seen through a camera of one's own: its eye goes where the camera is, a frame shows what its picture holds, and the plate lies in the frame.

import { cameraAt, frameIn } from '../state/own_camera.js';
import { make } from './overlay.js';

/** What a half's eye is to be at a time, in drawn axes, where the camera is looked through there, and where its picture lies: {camera, eye, picture},
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
    Object.assign(this, { half, store, drawn: null });
    this.frame = make('div', 'own-frame');
    this.frame.setAttribute('aria-hidden', 'true');
    this.plate = make('canvas', 'own-plate', this.frame);
    half.dom.labels.before(this.frame);
    this.frame.hidden = true;
  }

  /** What the eye is to be, or null; the frame and the plate are laid. */
  at(time_s) {
    const seen = seenThrough(this.store, this.half, time_s),
      { frame } = this;
    frame.hidden = !seen;
    if (!seen) return null;
    const { x, y, width, height } = seen.picture;
    Object.assign(frame.style, { left: `${x}px`, top: `${y}px`, width: `${width}px`, height: `${height}px` });
    this.lay(seen.camera, time_s);
    return seen.eye;
  }

  // The plate's frame of this time, drawn once it is another.
  async lay({ plate: source, opacity }, time_s) {
    const { plate } = this;
    plate.hidden = !source || opacity === 0;
    plate.style.opacity = String(opacity);
    if (!source) return;
    const index = Math.max(0, Math.min((source.count ?? 1) - 1, Math.round(time_s * (source.rate ?? 24))));
    if (this.drawn?.source === source && this.drawn.index === index) return;
    this.drawn = { source, index };
    if (plate.width !== source.width || plate.height !== source.height) Object.assign(plate, { width: source.width, height: source.height });
    await source.draw(plate.getContext('2d'), index).catch(() => {});
  }
}
