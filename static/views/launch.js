// The launch arrow of the chosen throw, Aboard, while the clock stands at its release: drag the ring to aim and set the speed,
// Alt-drag for the heading, or use the keyboard. It writes the document; the server answers with the path.

import { tr, trLater } from '../state/language.js';
import { headed } from './arrows.js';
import { button } from './overlay.js';
import { triad } from './ground.js';
import { Ribbon } from './ribbon.js';
import { figure, launched } from './spoken.js';
import { BONE } from './materials.js';

const NONE = Object.freeze([]);
const DEG = Math.PI / 180;
const LENGTH = 0.023; // of the span, for each m/s
const MOST = 0.3; // of the span
const HEADING_PER_PX = 0.5;

export class Launch {
  // `hold(true | false)` stops and restarts framing while the ring is dragged.
  constructor(shared, dom, store, hold) {
    Object.assign(this, { dom, store, hold });
    this.ribbon = new Ribbon(shared, { color: BONE, width: 2.2, depth: false, order: 9, capacity: 64 });
    this.ribbon.material.uniforms.uNow = { value: 1e9 };
    this.mesh = this.ribbon.mesh;
    this.ring = button(dom.box, 'launch-ring');
    this.ring.hidden = true;
    this.byHeading = false;
    this.ring.addEventListener('pointerdown', event => this.grab(event));
    this.ring.addEventListener('pointermove', event => this.drag(event));
    for (const type of ['pointerup', 'pointercancel']) this.ring.addEventListener(type, () => this.drop());
    this.ring.addEventListener('keydown', event => this.key(event));
  }

  // Gives the label asked for, or nothing when there is nothing to launch.
  update(half, clock) {
    const m = half.chosen;
    const ready =
      !this.store.view.fixed &&
      !half.aimed?.open &&
      !half.view.presenting &&
      m?.stage.aimed &&
      this.store.document.motions[m.i]?.kind === m.motion.kind &&
      (this.dragging || (!clock.playing && Math.abs(clock.time_s - m.starts_s) < clock.frame_s / 2));
    if (!ready) {
      if (this.shown) this.ring.hidden = true;
      this.mesh.visible = false;
      return NONE;
    }
    Object.assign(this, { half, m });
    const { speed_m_s, heading_deg, elevation_deg } = this.aim();
    const { span_m } = half.eye;
    if (!this.dragging) this.unit_m = Math.min(LENGTH * span_m, (MOST * span_m) / Math.max(speed_m_s, 1e-9));
    this.from = half.model.ground.at(m.release.along_m, m.release.height_m, m.release.axial_m, 0, {}, m.floor);
    const dir = this.direction(heading_deg, elevation_deg);
    const to = ['x', 'y', 'z'].map((c, k) => this.from[c] + dir[k] * speed_m_s * this.unit_m);
    this.draw(to, heading_deg, elevation_deg, speed_m_s * this.unit_m);
    return this.showRing(to, speed_m_s, heading_deg, elevation_deg);
  }

  get shown() {
    return !this.ring.hidden;
  }

  aim() {
    const read = field => this.store.read(`motions.${this.m.i}.${field}`) ?? 0;
    return { speed_m_s: read('speed_m_s'), heading_deg: read('heading_deg'), elevation_deg: read('elevation_deg') };
  }

  basis() {
    const { ground } = this.half.model;
    return triad(ground.azimuth(this.m.release.along_m, this.m.floor), ground.level);
  }

  direction(heading_deg, elevation_deg) {
    const { spin, up, axial } = this.basis();
    const [h, e] = [heading_deg * DEG, elevation_deg * DEG];
    return [0, 1, 2].map(c => Math.cos(e) * (Math.cos(h) * spin[c] + Math.sin(h) * axial[c]) + Math.sin(e) * up[c]);
  }

  // The arrow, a dotted level line, and the arc between them.
  draw(to, heading_deg, elevation_deg, long) {
    const from = [this.from.x, this.from.y, this.from.z];
    const point = (e, r) => this.direction(heading_deg, e).map((d, k) => from[k] + d * r);
    const arc = [];
    for (let k = 0; k <= 12; k += 1) arc.push(...point((elevation_deg * k) / 12, long * 0.5));
    const dots = Array.from({ length: 8 }, (_, k) => ({ points: [...point(0, long * (0.05 + 0.085 * k)), ...point(0, long * (0.085 + 0.085 * k))] }));
    const gap = 10 * this.half.eye.metresPerPx;
    const tip = from.map((f, k) => f + (to[k] - f) * Math.max(0, 1 - gap / Math.max(long, 1e-9)));
    this.ribbon.set(long > gap ? [...headed(from, tip, this.half.eye, 'coriolis').slice(0, 1), { points: arc }, ...dots] : []);
  }

  showRing(to, speed_m_s, heading_deg, elevation_deg) {
    const tip = { x: to[0], y: to[1], z: to[2] };
    const px = this.half.project(tip);
    this.ring.hidden = !px;
    if (!px) return [];
    const { width, height } = this.half.rect;
    const [x, y] = [Math.min(width, Math.max(0, px[0])), Math.min(height, Math.max(0, px[1]))];
    this.ring.style.transform = `translate(${x - 22}px, ${y - 22}px)`;
    this.spot = { x: x - 12, y: y - 12, w: 24, h: 24 };
    const says = [figure(speed_m_s, 'm/s', this.store.view.units, 1), launched(elevation_deg, heading_deg)];
    this.ring.setAttribute(
      'aria-label',
      tr(
        this.byHeading
          ? trLater('Launch of {motion}: {figures}. Arrow keys turn the heading, plus and minus change the speed, X swaps.')
          : trLater('Launch of {motion}: {figures}. Arrow keys turn the elevation, plus and minus change the speed, X swaps.'),
        { motion: this.m.name, figures: says.join(', ') },
      ),
    );
    return [{ key: 'launch', strong: says[0], text: `${says[1]}, `, at: [tip], gap: 18 }];
  }

  grab(event) {
    this.ring.setPointerCapture(event.pointerId);
    this.dragging = true;
    this.start = { x: event.clientX, ...this.aim() };
    this.hold(true);
    event.preventDefault();
    this.ring.focus();
  }

  drag(event) {
    if (!this.dragging) return;
    const box = this.dom.box.getBoundingClientRect();
    if (event.altKey || this.byHeading) this.write({ heading_deg: wrapped(this.start.heading_deg + (event.clientX - this.start.x) * HEADING_PER_PX) }, true);
    else this.write(this.aimAt(event.clientX - box.left, event.clientY - box.top), true);
  }

  drop() {
    if (!this.dragging) return;
    this.dragging = false;
    this.write({}, false);
    this.hold(false);
  }

  // Where the pointer's ray meets the upright plane of the throw; seen edge on, the plane that faces the eye.
  aimAt(x, y) {
    const { spin, up, axial } = this.basis();
    const level = this.direction(this.start.heading_deg, 0);
    const { eye } = this.half;
    const across = [level[1] * up[2] - level[2] * up[1], level[2] * up[0] - level[0] * up[2], level[0] * up[1] - level[1] * up[0]];
    const edgeOn = Math.abs(dot(across, eye.axes.back)) < 0.25;
    const v = this.half.onPlane(x, y, this.from, edgeOn ? eye.axes.back : across);
    if (!v) return {};
    const [s, u, z] = [dot(v, spin), dot(v, up), dot(v, axial)];
    const flat = edgeOn ? Math.hypot(s, z) : dot(v, level);
    const heading_deg = edgeOn ? Math.atan2(z, s) / DEG : this.start.heading_deg + (flat < 0 ? 180 : 0);
    return { speed_m_s: Math.hypot(s, u, z) / this.unit_m, elevation_deg: Math.atan2(u, Math.abs(flat)) / DEG, heading_deg: wrapped(heading_deg) };
  }

  // Writes what changed, rounded to what a hand can mean.
  write(aim, live) {
    const rounded = { ...aim };
    if ('speed_m_s' in aim) rounded.speed_m_s = limited(this.store, 'motions.*.speed_m_s', Number(aim.speed_m_s.toFixed(aim.speed_m_s < 30 ? 1 : 0)));
    for (const key of ['heading_deg', 'elevation_deg']) if (key in aim) rounded[key] = Math.round(aim[key]);
    const now = this.aim();
    for (const [key, value] of Object.entries(rounded)) if (value !== now[key]) this.store.set(`motions.${this.m.i}.${key}`, value, { live: true });
    if (!live) this.store.set(`motions.${this.m.i}.speed_m_s`, this.aim().speed_m_s);
  }

  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const turn = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    const speed = { '+': 1, '=': 1, '-': -1 }[event.key];
    const { speed_m_s, heading_deg, elevation_deg } = this.aim();
    if (turn && this.byHeading) this.write({ heading_deg: wrapped(heading_deg + turn) }, false);
    else if (turn) this.write({ elevation_deg: Math.max(-90, Math.min(90, elevation_deg + turn)) }, false);
    else if (speed) this.write({ speed_m_s: Math.max(0, speed_m_s + speed * (event.shiftKey ? 1 : 0.1)) }, false);
    else if (event.key.toLowerCase() === 'x') this.byHeading = !this.byHeading;
    else return;
    event.preventDefault();
    event.stopPropagation();
  }
}

function limited(store, path, value) {
  const field = store.fields?.fields?.[path];
  return Math.max(field?.min ?? 0, Math.min(field?.max ?? Infinity, value));
}

function wrapped(degrees) {
  return ((Math.round(degrees) % 360) + 360) % 360;
}

function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
