// The drawing's context lost and had again: flat plates stand in at once, and where the browser does not give it back another is made.

import { tr } from '../state/language.js';
import { Plates } from './flat.js';
import { makeCanvas } from './overlay.js';

const BACK_MS = 5000, // a context that has not come back by then does not
  LONGEST_MS = 80_000;
const WAITED_FOR_MS = 30_000; // by what draws a picture to be saved

/** `tell(line)`: {say, buttons} while it is lost, then null; `back()`: everything can be drawn again. */
export class Lost {
  constructor({ picture, overlay, store, tell, redraw, back }) {
    Object.assign(this, { picture, overlay, store, tell, redraw, back, plates: null, now: false, timer: 0, wait_ms: BACK_MS, waiting: new Set() });
    this.hear(overlay.canvas);
  }

  hear(canvas) {
    canvas.addEventListener('webglcontextlost', event => {
      event.preventDefault();
      this.begin();
    });
    canvas.addEventListener('webglcontextrestored', () => {
      this.picture.restore();
      this.end();
    });
  }

  begin() {
    if (this.now) return;
    this.now = true;
    this.plates ??= new Plates(this.overlay, this.store, this.redraw);
    this.plates.show(true);
    this.tell({
      say: tr('The browser has lost its 3D drawing. Flat drawings stand in until it is back.'),
      buttons: [{ say: tr('Try again'), run: () => this.renew() }],
    });
    this.later();
    this.redraw();
  }

  later() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.renew(), this.wait_ms);
  }

  // Another canvas in the place of the lost one; where none is to be had, later again.
  renew() {
    const canvas = makeCanvas();
    try {
      this.picture.renew(canvas);
    } catch {
      this.wait_ms = Math.min(2 * this.wait_ms, LONGEST_MS);
      return this.later();
    }
    this.overlay.canvas.replaceWith(canvas);
    this.overlay.canvas = canvas;
    this.hear(canvas);
    this.end();
  }

  end() {
    if (!this.now || this.picture.lost) return;
    this.now = false;
    this.wait_ms = BACK_MS;
    clearTimeout(this.timer);
    this.plates.show(false);
    this.tell(null);
    this.back();
    for (const go of [...this.waiting]) go();
  }

  /** Once it can be drawn in 3D: at once, or when it is back. */
  over(signal) {
    if (this.picture.lost) this.begin(); // it is lost before it is told
    if (!this.now) return Promise.resolve();
    return new Promise((resolve, reject) => {
      const leave = () => {
        clearTimeout(timer);
        this.waiting.delete(go);
      };
      const go = () => (leave(), resolve());
      const give = problem => (leave(), reject(problem));
      const timer = setTimeout(() => give(new Error(tr('The browser has lost its 3D drawing. Save again once it is back.'))), WAITED_FOR_MS);
      signal?.addEventListener('abort', () => give(signal.reason), { once: true });
      this.waiting.add(go);
    });
  }
}
