// Outside: the frame that does not turn, starlit. The wheel turns under paths that go straight. With reduced motion nothing turns:
// the wheel is seen as it was at the release, and faintly at each bead, like a photograph exposed many times.

import { angleAt } from '../time/track.js';
import { Half, NONE } from './half.js';
import { Inset } from './inset.js';
import { PERSON_M } from './lay_figure.js';
import { bodyAt, deckAt, standing } from './model.js';
import { Ribbon } from './ribbon.js';
import { Crowd } from './spots.js';

const MOST_EXPOSURES = 24;
const STOPS = 6; // times at which it is looked where things are
const PERSON_COUNTS = 4; // times a path as long: nobody is hidden so that a path is seen
const OFF = [-1, -1]; // the picture
const CLOSE_M = 22; // a narrower picture than this, and the near rail would bar it

export class Outside extends Half {
  constructor(shared, dom) {
    super(shared, 'outside', dom);
    this.marks = new Ribbon(shared, { color: '#EFEADC', width: 1.4, alpha: 0.34, order: 2, capacity: 4 * MOST_EXPOSURES });
    this.marks.material.uniforms.uNow = { value: 1e9 };
    this.group.add(this.marks.mesh);
    this.around = new Inset(dom);
    this.insetKey = null;
    this.moving = new Crowd();
  }

  fitInto(rect, over) {
    super.fitInto(rect, over);
    const [title] = this.taken;
    this.around.fitInto(rect, title.y + title.h, this.grown);
    this.insetKey = null;
  }

  read(model, shown, chosen, view, stride_s, others) {
    super.read(model, shown, chosen, view, stride_s, others);
    this.around.read(model, shown, this.told);
    this.insetKey = null;
    this.person = this.lead ? standing([this.lead], model.ground)[0] : null;
    this.still_rad = stride_s && this.lead && !model.tumbling ? angleAt(model.answer, this.lead.starts_s) : null;
    this.actors.exposures = this.still_rad === null ? null : this.exposures();
  }

  // The wheel's angles at each bead.
  exposures() {
    const { starts_s, ends_s } = this.lead;
    const every = Math.max(this.stride_s, (ends_s - starts_s) / MOST_EXPOSURES);
    const count = Math.floor((ends_s - starts_s) / every + 1e-6);
    return Array.from({ length: count + 1 }, (_, k) => angleAt(this.model.answer, starts_s + k * every));
  }

  dress(shared, habitat, time_s) {
    const { span_m, distance_m } = this.eye;
    const whole = this.preset === 'w' || this.model.tumbling;
    const { level, radius_m } = this.model.ground;
    shared.uCool.value = 1;
    shared.uLamp.value = whole ? 1.6 : 1;
    if (level) shared.uFog.value.set(distance_m + 2 * radius_m, distance_m + 6 * radius_m + 8);
    else if (whole) shared.uFog.value.set(1e7, 2e7);
    else shared.uFog.value.set(distance_m + 0.8 * span_m, distance_m + 3.4 * span_m);
    shared.uPool.value.set(this.lead?.release.along_m ?? 0, whole ? 1e7 : Math.max(0.38 * span_m, 3));
    habitat.cutAway(span_m < CLOSE_M ? this.eyeSide() : 0, this.eyeSide());
    habitat.turn(this.model.tumbling ? 0 : (this.still_rad ?? angleAt(this.model.answer, time_s)));
    this.showRoom(habitat);
  }

  // The inset lies where it hides least of the paths and of who is carried round; while the eye goes along it stays where it is, clear of who and
  // what is there as it begins.
  placeLabels(how) {
    const { rigAt } = this.framed;
    const key = rigAt ? 'follows' : this.eye.stamp;
    if (key !== this.insetKey) {
      this.findCrowds();
      this.findMoving(Boolean(rigAt));
      this.insetKey = key;
      const [paths] = this.crowds,
        { moving } = this;
      this.around.put(this.showsPart(), (...where) => (rigAt ? 0 : paths.under(...where)) + PERSON_COUNTS * moving.under(...where));
    }
    super.placeLabels(how);
  }

  // People from head to foot, and bodies: as they are now, or at times all along.
  findMoving(now) {
    const { moving, model, shown } = this;
    moving.clear(this.rect.width, this.rect.height);
    for (const m of shown) {
      const [person] = standing([m], model.ground);
      const times = now ? [this.time_s] : Array.from({ length: STOPS + 1 }, (_, k) => m.starts_s + ((m.over_s - m.starts_s) * k) / STOPS);
      for (const time_s of times) {
        if (m.path.count) moving.add(...(this.project(bodyAt(model, m, 'outside', time_s, {})) ?? OFF));
        if (person) this.findPerson(person, time_s);
      }
    }
  }

  findPerson({ along_m, axial_m, floor }, time_s) {
    const [feet, head] = [0, PERSON_M].map(up => this.project(deckAt(this.model, 'outside', along_m, up, axial_m, time_s, {}, floor)));
    if (!feet || !head) return;
    this.moving.add(...feet);
    this.moving.line(...feet, ...head);
  }

  // Whether some of the habitat is off the picture. A turntable never is, but by hand.
  showsPart() {
    if (this.model.ground.level || this.preset === 'w' || this.model.tumbling) return false;
    const outline = this.model.ground.outline();
    for (let i = 0; i < outline.length; i += 3) {
      const px = this.project({ x: outline[i], y: outline[i + 1], z: outline[i + 2] });
      if (!px || px[0] < 0 || px[1] < 0 || px[0] > this.rect.width || px[1] > this.rect.height) return true;
    }
    return false;
  }

  rest() {
    super.rest();
    this.around.hide();
    this.insetKey = null;
  }

  alsoTaken() {
    return this.around.spots;
  }

  ownLabels(time_s) {
    this.markExposures();
    const { person } = this;
    if (!person || this.view.measure === 'off' || this.model.tumbling) return this.dims.clear();
    const labels = this.dims.turned(this.model, person, time_s, this.eye, this.frontEdge_m);
    return this.framed.rigAt ? NONE : labels; // the inset tells it
  }

  // One line across the deck, where people stand, at each exposure.
  markExposures() {
    this.marks.mesh.visible = false;
    if (!this.actors.exposures) return;
    const { ground } = this.model;
    const reach = Math.min(this.half_m ?? 0, 0.4 * this.eye.span_m);
    const along = this.lead?.release.along_m ?? 0;
    this.marks.set(
      this.actors.exposures.map(angle => ({
        points: [-reach, reach].flatMap(axial => {
          const p = ground.on(along, 0.01, axial, angle, {}, this.lead.floor);
          return [p.x, p.y, p.z];
        }),
      })),
    );
  }
}
