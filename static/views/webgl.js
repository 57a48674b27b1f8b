// What this machine can draw, and how long it takes. Software rendering gets no antialiasing (lines fade in the shader) and
// fewer pixels when draws take long; once nothing moves, one finer frame is drawn on any machine.

const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;
const SLOW_MS = 64; // 15 frames a second, and a little more
const QUICK_MS = 34;
const LEAST = 0.5;
const FIRST_FRAMES = 4; // they compile shaders: no measure of what a frame costs
const JUDGED = 6; // frames of one size before another is tried
const MOST_JUDGED = 384; // the same where one size was too large and the next too small: another allocates the canvas anew
const STILL = { software: 1.5, hardware: 2 };

// null without WebGL 2.
export function probe() {
  try {
    const gl = document.createElement('canvas').getContext('webgl2');
    if (!gl) return null;
    const info = gl.getExtension('WEBGL_debug_renderer_info');
    const name = String(info ? gl.getParameter(info.UNMASKED_RENDERER_WEBGL) : gl.getParameter(gl.RENDERER));
    gl.getExtension('WEBGL_lose_context')?.loseContext();
    return { software: SOFTWARE.test(name) };
  } catch {
    return null;
  }
}

// Watches how long a frame takes to its last pixel, by fences, and says how many drawn pixels a page pixel gets.
export class FrameTimer {
  constructor(gl, { software }) {
    this.gl = gl;
    this.most = software ? 1 : Math.min(window.devicePixelRatio || 1, 2);
    this.still = software ? STILL.software : Math.max(this.most, STILL.hardware);
    this.ratio = this.most;
    this.fine = !software; // what only a graphics processor can afford
    this.done_ms = 0; // when the last frame was: a frame that waited for it is not slow for that
    this.restart();
  }

  // As at the first frame: whatever waits is forgotten.
  restart() {
    this.waiting = [];
    this.spent_ms = this.learned = 0; // of the frames that are judged next
    this.since = 0; // the last change
    this.skip = FIRST_FRAMES;
    this.judged = JUDGED;
    this.way = 0; // that the size went last: 1 finer, -1 coarser
  }

  mark(started_ms) {
    const fence = this.gl.fenceSync(this.gl.SYNC_GPU_COMMANDS_COMPLETE, 0);
    this.gl.flush();
    if (fence) this.waiting.push({ fence, started_ms });
  }

  // Frames not yet drawn to the last pixel.
  pending(now_ms) {
    while (this.waiting.length) {
      const { fence, started_ms } = this.waiting[0];
      if (this.gl.clientWaitSync(fence, 0, 0) === this.gl.TIMEOUT_EXPIRED) break;
      this.gl.deleteSync(fence);
      this.waiting.shift();
      this.learn(now_ms - Math.max(started_ms, this.done_ms));
      this.done_ms = now_ms;
    }
    return this.waiting.length;
  }

  learn(took_ms) {
    if (this.skip > 0) this.skip -= 1;
    else {
      this.spent_ms += took_ms;
      this.learned += 1;
      this.since += 1;
    }
  }

  // The ratio for a moving frame; it changes now and then, and each turn back and forth waits four times as long as the one before.
  adapted() {
    if (this.learned < JUDGED) return this.ratio;
    const mean_ms = this.spent_ms / this.learned,
      way = mean_ms > SLOW_MS ? -1 : mean_ms < QUICK_MS ? 1 : 0;
    this.spent_ms = this.learned = 0;
    if (!way || (way === -this.way && this.since < this.judged)) return this.ratio;
    if (way < 0 && this.fine) {
      this.fine = false;
      return this.ratio;
    }
    const before = this.ratio;
    this.ratio = way < 0 ? Math.max(LEAST * Math.min(1, this.most), this.ratio * 0.84) : Math.min(this.most, this.ratio * 1.12);
    if (this.ratio === before) return before;
    if (way === -this.way) this.judged = Math.min(MOST_JUDGED, 4 * this.judged);
    Object.assign(this, { way, since: 0, skip: 1 });
    return this.ratio;
  }
}
