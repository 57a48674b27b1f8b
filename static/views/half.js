// One stage: its eye, its actors and paths, its labels. Aboard and Outside differ only in what they add (aboard.js, outside.js).

import { Group, Quaternion, Vector3 } from '../vendor/three.module.js';
import { Actors } from './actors.js';
import { Anchors } from './anchors.js';
import { Eye } from './cameras.js';
import { craftPoints } from './craft_reach.js';
import { Dims } from './dims.js';
import { Labels } from './labels.js';
import { Tape } from './measure.js';
import { LEAST_BODY_PX, namesAt, plainAt } from './path_labels.js';
import { Paths } from './paths.js';
import { turnAt } from './model.js';
import { ComparedPaths } from './compared_paths.js';
import { rigOfFiled } from './filed_camera.js';
import { meetGround, meetPlane, ray } from './framing.js';
import { Pours } from './pour.js';
import { Crowd } from './spots.js';
import { isWithheld } from '../state/shown.js';
import { framing } from './camera_presets.js';
import { PERSON_M } from './lay_figure.js';
import { lineWidth } from './line_width.js';
import { Threads } from './threads.js';
import { Touches } from './touches.js';
import { intoCraft } from './tumbling.js';
import { Vessels } from './vessels.js';

const LABEL_PX = 14; // of labels at a desk: where they grow, lines do too
const CLEAR_PX = 6;
const FOOT_PX = 38; // kept free at the foot, where the legend lies
const MOST_SEGMENTS = 180; // of a path, for labels to keep off
export const NONE = Object.freeze([]);
const v = new Vector3();
const px = [0, 0];
const ORIGIN = new Vector3(),
  UPRIGHT = new Quaternion();

export class Half {
  constructor(shared, frame, dom) {
    Object.assign(this, { frame, dom, slot: dom.frame, pointer: null });
    this.eye = new Eye();
    this.group = new Group();
    this.paths = new Paths(shared, frame);
    this.actors = new Actors(shared, frame);
    this.pours = new Pours(shared, frame);
    this.vessels = new Vessels(shared, frame);
    this.compared = new ComparedPaths(shared, frame);
    this.touches = new Touches(shared, frame);
    this.threads = new Threads(shared, frame);
    this.dims = new Dims(shared);
    this.tape = new Tape(shared);
    this.labels = new Labels(dom.labels);
    this.crowds = [new Crowd(), new Crowd()]; // of paths, which move with the eye alone, and of what else labels keep off
    this.crowdKey = null;
    this.anchors = new Anchors();
    this.wanted = []; // labels, and the rectangles that they are kept off: filled anew every frame
    this.keptOff = [];
    this.framed = { rig: null };
    this.group.add(
      this.paths.group,
      this.actors.group,
      this.pours.group,
      this.vessels.group,
      this.compared.group,
      this.touches.dots.points,
      this.dims.mesh,
      ...this.threads.meshes,
      ...this.tape.meshes,
    );
  }

  // `others`: models of further habitats whose paths are laid over these.
  read(model, shown, chosen, view, stride_s, others = []) {
    const told = shown.filter(m => !isWithheld(view, m.name)); // all but those whose way is held back
    Object.assign(this, { model, shown, told, chosen, view, stride_s });
    this.paths.read(model, shown, view);
    this.actors.read(model, shown);
    this.pours.read(model, shown);
    this.vessels.read(model, shown);
    this.compared.read(model, told, others);
    this.touches.read(model, told);
    this.threads.read(model, shown);
    this.lead = chosen ?? shown[0] ?? null;
    this.hull_m = model.craft ? 2 * farthest(craftPoints(model)) : 0;
    this.crowdKey = this.named = this.plain = null;
  }

  // Where along the ground the middle of the picture is, or null.
  middle() {
    const [x, y, z] = this.eye.rig.target;
    const along_m = this.model.ground.level ? null : this.model.ground.under({ x, y, z }, 0, this.lead?.floor ?? 0)?.along_m;
    return along_m ?? null;
  }

  // The stage's rectangle, {x, y, width, height} in px of the page.
  // `over`: that of a smaller stage that lies over this one, or null.
  fitInto(rect, over = null) {
    const { x, y, width, height } = rect;
    this.rect = rect;
    this.beneath = over ? [{ x: over.x - x, y: over.y - y, w: over.width, h: over.height }] : NONE;
    Object.assign(this.dom.box.style, { transform: `translate(${x}px, ${y}px)`, width: `${width}px`, height: `${height}px` });
    this.labels.remeasure();
    this.grown = Math.max(1, this.labels.px / LABEL_PX);
    this.linePx = lineWidth(width, height) * Math.sqrt(this.grown);
    this.taken = this.dom.corners();
    const low = Math.max(...this.taken.map(({ y, h }) => y + h)); // of title and buttons: nothing that is framed lies under them
    this.inset = { top: between(0.08, (low + CLEAR_PX) / height, 0.28), bottom: between(0.08, (FOOT_PX * this.grown) / height, 0.18) };
    this.crowdKey = this.named = this.plain = null;
  }

  frameUp(time_s, move) {
    const { width, height } = this.rect;
    const aimed = this.aimed?.points() ?? [];
    const stage = {
      frame: this.frame,
      width,
      height,
      inset: this.inset,
      corners: this.taken,
      view: this.view,
      companion: this.showsCompanion(),
      others: [...this.compared.points(), ...(this.posts?.tops(this) ?? []), ...aimed],
      calm: Boolean(this.stride_s),
      still: aimed.length > 0,
    };
    const { camera } = this;
    this.framed = camera
      ? { rig: rigOfFiled(camera, this.model.radius_m, this.model.ground.level) }
      : framing(this.preset, stage, this.model, this.shown, this.chosen);
    this.eye.follow(this.framed.rig ?? this.framed.rigAt(time_s), move);
  }

  // A half may lie where another frame's stage usually is: that one's preset is then its own.
  get preset() {
    return this.view.presets[this.slot];
  }

  // What takes the seat's stead, as files have it, or null.
  get camera() {
    return this.frame === this.slot ? (this.view.cameras?.[this.slot] ?? null) : null;
  }

  // The camera as it stands, where that is no longer the seat's: as files have it, or null.
  movedFromSeat() {
    const { yaw, tilt, zoom } = this.eye.orbit,
      camera = this.camera || yaw || tilt || zoom !== 1 ? this.eye.asFiled(this.model.radius_m) : null;
    return camera && { position_m: camera.position_m, target_m: camera.target_m, up: camera.up, vertical_fov_deg: camera.vertical_fov_deg };
  }

  // The same as it stands in any case, with its name and view; null before it stands anywhere.
  asCamera() {
    const filed = this.eye.asFiled(this.model.radius_m);
    return filed && { name: this.slot, view: this.frame, ...filed };
  }

  showsCompanion() {
    return this.view.companion && (this.frame === 'aboard' || this.view.companionOutside);
  }

  // Everything that depends on the time or the eye; the labels it wants are left in `wanted`.
  update(time_s, now_ms, clock) {
    if (this.framed.rigAt) this.eye.follow(this.framed.rigAt(time_s));
    this.eye.own = this.own?.at(time_s) ?? null;
    this.into = this.frame === 'outside' ? intoCraft(this.model, time_s) : null;
    const reach_m = 4 * this.model.radius_m + 4 * (this.half_m ?? 0) + (this.model.ground.level ? 20 : 0) + this.hull_m;
    this.eye.place(this.rect.width, this.rect.height, now_ms, reach_m, this.into);
    this.standStill();
    this.paths.size(this.linePx, this.eye.metresPerPx);
    this.compared.size(this.linePx, this.eye.metresPerPx);
    this.actors.metresPerPx = this.eye.metresPerPx;
    this.actors.least_m = LEAST_BODY_PX * this.eye.metresPerPx;
    const weights = this.posts?.update(this, time_s) ?? NONE;
    this.time_s = time_s;
    const aimed = this.aimed?.update(time_s) ?? NONE;
    const guessed = this.guessed?.update(time_s) ?? NONE;
    this.actors.update(time_s);
    this.pours.update(time_s);
    this.vessels.update(time_s);
    const tape = this.tape.update(this, time_s);
    const threads = this.threads.update(time_s, this.eye, this.view.units);
    const own = this.ownLabels(time_s, clock);
    const { wanted } = this;
    let count = 0; // the first find room first
    count = put(wanted, count, weights);
    count = put(wanted, count, aimed);
    count = put(wanted, count, tape);
    count = put(wanted, count, guessed);
    count = put(wanted, count, this.touches.labels(this));
    count = put(wanted, count, this.nameLabels(time_s));
    count = put(wanted, count, own);
    count = put(wanted, count, threads);
    count = put(wanted, count, this.compared.labels());
    wanted.length = put(wanted, count, this.plainLabels());
  }

  // Outside of a craft that tumbles, what stands still is carried as the eye is.
  standStill() {
    this.carry(this.paths.group);
    this.carry(this.compared.group);
    this.carry(this.touches.dots.points);
  }

  carry({ position, quaternion }) {
    position.copy(this.into?.position ?? ORIGIN);
    quaternion.copy(this.into?.quaternion ?? UPRIGHT);
  }

  // A point that the stage's frame holds, as it is drawn.
  drawnAt(point) {
    if (!this.into) return point;
    v.set(point.x, point.y, point.z).applyMatrix4(this.into.matrix);
    return { x: v.x, y: v.y, z: v.z };
  }

  // Everything drawn that does not move by itself, for pictures without it; `paths`: those stay, but not ways that were not taken.
  besidesWhatMoves(paths) {
    const { actors } = this;
    const lies = [actors.shadows.mesh, this.vessels.group, this.dims.mesh, ...this.tape.meshes, this.arrows?.group, this.launch?.mesh, this.aimed?.group];
    const drawn = [this.paths.group, this.compared.group, this.touches.dots.points];
    return [...actors.people, ...actors.ghosts, ...lies, ...(paths ? [] : drawn)].filter(Boolean);
  }

  // At its path; where the eye goes along, at what moves.
  nameLabels(time_s) {
    if (this.framed.rigAt || this.into || this.posts || this.told.length < this.shown.length) return namesAt(this, time_s);
    this.named ??= namesAt(this, time_s);
    return this.named;
  }

  plainLabels() {
    if (!this.showsCompanion()) return NONE;
    if (this.into) return plainAt(this);
    this.plain ??= plainAt(this);
    return this.plain;
  }

  // Where they stand, unless neither they nor what they keep off has moved by a pixel or says something else; `anew`: in any case.
  placeLabels({ anew = false } = {}) {
    const { width, height } = this.rect;
    const taken = this.keptOff;
    taken.length = put(taken, put(taken, put(taken, put(taken, 0, this.taken), this.beneath), this.lineOver()), this.alsoTaken());
    const moved = this.anchors.read(this.wanted, taken, this.things(), this);
    if (!(anew || moved || this.labels.unsettled || this.crowdKey !== this.eye.stamp)) return;
    this.findCrowds();
    this.labels.place(this.wanted, { width, height, taken, crowds: this.crowds });
  }

  // Another half takes its place.
  rest() {
    this.labels.place([], { width: 0, height: 0, taken: [], crowds: [] });
  }

  // Where the page's own line lies over this stage. Set by the stages when it comes, goes or says something else.
  lineOver() {
    return this.over ?? NONE;
  }

  // Which way along the axis the eye stands (1 or −1).
  eyeSide() {
    return Math.sign(this.eye.camera.position.z) || 1;
  }

  // Somebody in the room is seen whole or not at all: legs alone tell nothing.
  showRoom(habitat) {
    const { person } = habitat;
    if (!person) return;
    const { width, height } = this.rect;
    const sees = height_m => this.projectInto(person.localToWorld(v.set(0, height_m, 0)), px) && px[0] > 0 && px[0] < width && px[1] > 0 && px[1] < height;
    habitat.showPerson(sees(0) && sees(PERSON_M));
  }

  alsoTaken() {
    return NONE;
  }

  // px of the stage, or null behind the eye.
  project(p) {
    const out = [0, 0];
    return this.projectInto(p, out) ? out : null;
  }

  // The same without a new pair of numbers: whether it is before the eye.
  projectInto(p, out) {
    const { camera } = this.eye;
    v.set(p.x, p.y, p.z).applyMatrix4(camera.matrixWorldInverse);
    if (v.z > -camera.near) return false;
    v.applyMatrix4(camera.projectionMatrix);
    out[0] = (v.x * 0.5 + 0.5) * this.rect.width;
    out[1] = (0.5 - v.y * 0.5) * this.rect.height;
    return true;
  }

  // Where the pointer is, or that it left; true when another mark, or none, is under it now.
  pointAt(event) {
    if (!this.model) return false;
    const before = this.touches.near(this)?.event;
    const box = this.dom.view.getBoundingClientRect();
    this.pointer = event.type === 'pointerleave' ? null : [event.clientX - box.left, event.clientY - box.top];
    return this.touches.near(this)?.event !== before;
  }

  onPlane(x, y, point, normal) {
    return meetPlane(ray(this.eye, this.rect, x, y), point, normal);
  }

  onDeck(x, y, time_s) {
    const { model, eye } = this;
    const turn = turnAt(model, this.frame, time_s);
    const floor = this.lead?.floor ?? 0;
    return meetGround(ray(eye, this.rect, x, y), eye.camera.far, point => {
      const under = model.ground.under(point, turn, floor);
      return under && Math.abs(under.axial_m) <= this.half_m ? under.height_m : null;
    });
  }

  // Where along the ground a drawn point lies.
  alongOf(point, time_s) {
    return this.model.ground.under(point, turnAt(this.model, this.frame, time_s), this.lead?.floor ?? 0)?.along_m ?? null;
  }

  // Where the paths run on the picture, and what stands on it, for labels to keep off.
  findCrowds() {
    const { width, height } = this.rect;
    const [paths, things] = this.crowds;
    if (this.crowdKey !== this.eye.stamp) {
      this.crowdKey = this.eye.stamp;
      paths.clear(width, height);
      for (const m of this.told) {
        this.crowdLine(paths, m.lines[this.frame].points);
        if (this.showsCompanion()) this.crowdLine(paths, this.paths.companionLine(m));
      }
      for (const line of [...this.compared.lines, ...(this.aimed?.crowd() ?? [])]) this.crowdLine(paths, line.points);
      this.labels.unsettled = true;
    }
    things.clear(width, height);
    const seen = this.things();
    for (let k = 0; k < seen.length; k += 1) if (this.projectInto(seen[k], px)) things.add(px[0], px[1]);
  }

  crowdLine(crowd, points) {
    if (!points) return;
    const every = 3 * Math.max(1, Math.ceil(points.length / 3 / MOST_SEGMENTS));
    let last = null;
    for (let i = 0; i < points.length; i += every) {
      const q = this.project(this.drawnAt({ x: points[i], y: points[i + 1], z: points[i + 2] }));
      if (q && last) crowd.line(last[0], last[1], q[0], q[1]);
      else if (q) crowd.add(q[0], q[1]);
      last = q;
    }
  }

  // Points of who is weighed, of arrows and the like.
  things() {
    return this.posts?.seen ?? NONE;
  }
}

// Copies all of `some` into `out` from `count` on; how many there are then.
export function put(out, count, some) {
  for (let k = 0; k < some.length; k += 1) out[count + k] = some[k];
  return count + some.length;
}

function farthest(points) {
  let most = 0;
  for (let i = 0; i < points.length; i += 3) most = Math.max(most, Math.hypot(points[i], points[i + 1], points[i + 2]));
  return most;
}

function between(least, value, most) {
  return Math.max(least, Math.min(most, value));
}
