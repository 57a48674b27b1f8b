// Aboard: the turning frame, lamplit. The deck stands still, paths curve, the stars go round. With it a second habitat beside the first,
// aboard too, in the place of Outside.

import { stillWords } from './overlay.js';
import { tr } from '../state/language.js';
import { homeBeside, homeCount, homeWords } from '../state/homes.js';
import { angleAt } from '../time/track.js';
import { Arrows } from './arrows.js';
import { Half, NONE, put } from './half.js';
import { Legend } from './legend.js';
import { Launch } from './launch.js';
import { degrees, figure } from './spoken.js';

export class Aboard extends Half {
  // `store` and `hold` for the stage whose motions can be launched by hand; a second habitat is only looked at.
  constructor(shared, dom, store = null, hold = null) {
    super(shared, 'aboard', dom);
    this.arrows = new Arrows(shared);
    this.launch = store && new Launch(shared, dom, store, hold);
    this.legend = new Legend(dom);
    this.ownAsked = []; // filled anew every frame
    this.also = [];
    this.arrowLabels = [];
    this.group.add(this.arrows.group);
    if (this.launch) this.group.add(this.launch.mesh);
  }

  read(model, shown, chosen, view, stride_s, others) {
    super.read(model, shown, chosen, view, stride_s, others);
    this.figuresKey = null;
    this.levels = this.levelLabels();
    const { arrows, place } = view;
    const told = shown.filter(m => place !== 4 || m.stage.mover !== 'person'); // who is weighed has none
    this.legend.show(
      Arrows.kindsOf(arrows.alone ? told.filter(m => m === this.lead) : told, arrows),
      arrows.alone ? this.lead?.name : null,
      this.rect,
      this.grown,
    );
  }

  // A pool of light about where things start, distance fading to night.
  dress(shared, habitat, time_s) {
    const { span_m, distance_m } = this.eye;
    const goesOver = this.model.tumbling && this.lead?.tumbles,
      whole = this.preset === 'w' || goesOver;
    const { level, radius_m } = this.model.ground;
    shared.uCool.value = goesOver ? 0.8 : whole ? 0.6 : 0;
    shared.uLamp.value = whole ? 1.5 : 1;
    if (level) shared.uFog.value.set(distance_m + 2 * radius_m, distance_m + 6 * radius_m + 8);
    else if (whole) shared.uFog.value.set(1e7, 2e7);
    else shared.uFog.value.set(distance_m + 0.5 * span_m, distance_m + 3.3 * span_m);
    shared.uPool.value.set((this.lead?.release.along_m ?? 0) - 0.1 * span_m, whole ? 1e7 : Math.max(0.47 * span_m, 3));
    habitat.cutAway(this.eyeSide(), this.eyeSide());
    habitat.turn(0, this.model.tumbling || this.stride_s ? 0 : -angleAt(this.model.answer, time_s));
    this.showRoom(habitat);
  }

  ownLabels(time_s, clock) {
    const { model, shown, lead, eye, view } = this;
    const tips = this.arrows.update(
      model,
      this.posts ? shown.filter(m => !this.posts.labelled.has(m)) : shown,
      lead,
      time_s,
      eye,
      view.arrows,
      2 * Math.sqrt(this.grown),
    );
    this.legend.tell(this.arrows.drawn);
    const launch = this.launch?.update(this, clock) ?? NONE,
      own = this.ownAsked;
    let count = put(own, put(own, 0, launch), this.figures());
    for (let k = 0; k < tips.length; k += 1) own[count + k] = this.arrowLabel(k, tips[k]);
    count += tips.length;
    own.length = put(own, count, this.levels);
    return own;
  }

  // What is written at the tip of an arrow; the same labels every frame, their figures written anew once they are others.
  arrowLabel(k, { word, color, tip, value_g }) {
    this.arrowLabels[k] ??= { key: '', word: null, text: '', color: '', at: [tip], gap: 8, shy: true, places: 0, size: -1 };
    const label = this.arrowLabels[k],
      places = value_g === null ? 0 : value_g < 0.095 ? 3 : value_g < 9.95 ? 2 : 0,
      size = value_g === null ? -1 : Math.round(value_g * 10 ** places); // as it is written
    label.color = color;
    label.at[0] = tip;
    if (label.word === word && label.places === places && label.size === size) return label;
    Object.assign(label, { key: `arrow ${word}`, word, places, size });
    label.text = value_g === null ? tr(word) : `${tr(word)} ${figure(value_g, '', 'si', places)}\u00a0g`;
    return label;
  }

  // Made anew only when seen from elsewhere.
  figures() {
    const { model, told, eye, view, frontEdge_m } = this;
    const key = `${eye.stamp} ${frontEdge_m}`;
    if (key !== this.figuresKey) {
      this.figuresKey = key;
      const dims = view.measure === 'dimensions' ? this.dims.drift(model, told, eye, frontEdge_m, view.units) : this.dims.clear();
      this.drifts = dims.map(({ key: own, text, at }) => ({ key: own, strong: text, at: [at], centred: true, gap: 4 }));
    }
    return this.drifts;
  }

  // On a flat floor: how far "down" leans where it is known, at the plumb lines farthest out.
  levelLabels() {
    const { shape, ground } = this.model;
    const floor = this.lead?.floor ?? 0;
    const levels = [...(shape.floors[floor]?.levels ?? [])].sort((a, b) => a.along_m - b.along_m);
    const axial = -0.86 * (shape.floors[floor]?.half_m[1] ?? 0);
    return [levels[0], levels.at(-1)]
      .filter(level => level && Math.abs(level.lean_deg) >= 0.1)
      .map((level, k) => ({
        key: `level ${k}`,
        text: tr('down leans '),
        strong: degrees((level.lean_deg * Math.PI) / 180).replace('−', ''),
        shy: true,
        gap: 8,
        at: [1.1, 0.5].map(height => ground.at(level.along_m, height, axial, 0, {}, floor)),
      }));
  }

  rest() {
    super.rest();
    this.legend.hide();
  }

  alsoTaken() {
    const { also } = this;
    let count = 0;
    if (this.legend.spot) also[count++] = this.legend.spot;
    if (this.launch?.shown) also[count++] = this.launch.spot;
    also.length = count;
    return also;
  }

  things() {
    return this.posts ? [...super.things(), ...this.arrows.shafts] : this.arrows.shafts;
  }
}

// Two habitats beside each other: Aboard of a second one, in the place, with the eye and the buttons of Outside. Both titles then
// say what they are aboard of.

export class Beside {
  constructor(picture, overlay, store, outside) {
    Object.assign(this, { picture, overlay, store, outside, half: null, model: null, rect: null });
  }

  // `models` of an answer, the scene's own first; `shown` the one the other stage shows.
  show(models, shown) {
    this.model = models[homeBeside(this.store)] ?? null;
    if (this.model && !this.half) this.make();
    this.entitle(shown);
    const idle = this.model ? this.outside : this.half;
    idle?.rest();
  }

  make() {
    this.half = new Aboard(this.picture.shared, this.outside.dom);
    Object.assign(this.half, { eye: this.outside.eye, spoken: this.outside.spoken });
    this.picture.scene.add(this.half.group);
    this.fitInto(this.rect, this.over);
  }

  fitInto(rect, over = null) {
    Object.assign(this, { rect, over });
    if (rect) this.half?.fitInto(rect, over);
  }

  // `name`: of the habitat shown, where it is not the scene's own; `facts`: what stands still aboard, and what outside
  entitle({ name, facts: { ground } }) {
    const { aboard, outside } = this.overlay.halves;
    const whose = homeCount(this.store) > 1 && this.store.answer ? homeWords(this.store, 0) : null;
    this.overlay.element.classList.toggle('several', whose !== null);
    const of = half => [half.name, [name, whose, stillWords(half.frame, ground)].filter(Boolean).join(', ')];
    aboard.retitle(this.model ? [aboard.name, whose] : of(aboard));
    outside.retitle(this.model ? [aboard.name, homeWords(this.store, homeBeside(this.store))] : of(outside));
  }
}
