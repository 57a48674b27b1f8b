// At place 4, beside everybody a post as tall as one g is here, its white part what they feel at the feet: ticks each tenth of a g,
// a collar at one; no taller than three, however much is felt. One mesh and one material a stage, made once; where posts stand and what they tell is rewritten each frame.

import { BoxGeometry, BufferAttribute, DynamicDrawUsage, InstancedBufferAttribute, InstancedMesh, Matrix4, Vector3 } from '../../vendor/three.module.js';
import { mostOf, onDeck, postTop, weighed, weightFigure, weightWords } from './weights.js';
import { postMaterial } from './post_material.js';
import { PERSON_M } from '../lay_figure.js';
import { turnAt } from '../model.js';
import { moved, standOf } from '../reach.js';
import { merged } from '../geometry.js';

const PLACE = 4;
const MOST = 128;
const WIDE_M = 0.15;
const LEAST_PX = [7, 10]; // wide; farther off a post is drawn wider than it is, never taller: by this share of its height
const SLIM = 0.35;
const COLLAR_PX = 2; // high, at least
const COLLAR_M = 0.03;
const PERSON_PX = 10; // lower on the picture than this nobody is drawn beside whom a post could stand
const ASIDE_M = { standing: [0.45, -0.45, 0.8, -0.8, 1.15, -1.15], lift: [1.0, -1.0, 1.35, -1.35] }; // to the viewer's right of the feet
const OVER_M = 0.12; // of a label over a head
const SHARES = [0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
const turned = new Matrix4();
const [x, y, z] = [new Vector3(), new Vector3(), new Vector3()];

export class Posts {
  constructor(shared, half, store) {
    Object.assign(this, { store, labelled: new Set(), words: '', spots: new Map(), seen: [] });
    this.weight = new InstancedBufferAttribute(new Float32Array(2 * MOST), 2).setUsage(DynamicDrawUsage);
    this.material = postMaterial(shared, { metres_a_g: PERSON_M, wide_m: WIDE_M });
    this.mesh = new InstancedMesh(postGeometry().setAttribute('weight', this.weight), this.material, MOST);
    this.mesh.instanceMatrix.setUsage(DynamicDrawUsage);
    this.mesh.frustumCulled = false;
    half.group.add(this.mesh);
  }

  get open() {
    return this.store.view.place === PLACE;
  }

  get tall_m() {
    return this.open ? (this.store.feel?.person.height_m ?? PERSON_M) : PERSON_M;
  }

  people(half, time_s) {
    const { feel, feelProblem } = this.store;
    return this.open ? weighed(half.model, half.actors.where, half.shown, feelProblem ? null : feel, time_s).slice(0, MOST) : [];
  }

  // Posts and figures of a frame; gives the labels it wants, the nearest first.
  update(half, time_s) {
    half.actors.grow(this.tall_m);
    const people = this.people(half, time_s);
    this.labelled = new Set(people.map(({ motion }) => motion));
    this.words = weightWords(people);
    const { position } = half.eye.camera;
    const stands = people.map(one => stanceOf(half, one, time_s, position));
    const drawn = PERSON_M > PERSON_PX * half.eye.metresPerPx;
    this.mesh.visible = drawn && people.length > 0;
    if (this.mesh.visible) this.put(half, stands);
    else for (const stand of stands) stand.aside_m = 0;
    this.seen = stands.flatMap(stand => this.outline(stand));
    return stands.map(stand => this.label(stand)).sort((a, b) => a.away_m - b.away_m);
  }

  // Points of a person and their post, for labels to keep off.
  outline({ feet, up, side, aside_m, weight_g }) {
    const lines = [[feet, this.tall_m], ...(aside_m ? [[moved(feet, side, aside_m), PERSON_M * topOf(weight_g)]] : [])];
    return lines.flatMap(([foot, tall_m]) => SHARES.map(share => moved(foot, up, share * tall_m)));
  }

  put(half, stands) {
    const { metresPerPx } = half.eye;
    const [least, most] = LEAST_PX.map(px => px * metresPerPx);
    const wide_m = Math.max(WIDE_M, least, Math.min(most, SLIM * PERSON_M));
    const bodies = stands.map(({ feet, up }) => [0.05, 0.5, 0.95].map(share => half.project(moved(feet, up, share * this.tall_m))).filter(Boolean));
    const taken = [];
    stands.forEach((stand, k) => {
      const { key, beside, weight_g, feet, up, side } = stand;
      const [least_px, tall_m] = [0.28 / metresPerPx, PERSON_M * topOf(weight_g)];
      const places = (ASIDE_M[beside] ?? ASIDE_M.standing).map(aside_m => aside_m + (Math.sign(aside_m) * (wide_m - WIDE_M)) / 2);
      const seenAt = index => [0, 0.5, 1].map(share => half.project(moved(moved(feet, side, places[index]), up, share * tall_m))).filter(Boolean);
      const spot = freest(places.length, seenAt, [...bodies.filter((_, other) => other !== k), ...taken], least_px, this.spots.get(key));
      this.spots.set(key, spot.index);
      taken.push(spot.seen);
      stand.aside_m = places[spot.index];
      this.place(k, stand);
    });
    this.mesh.count = stands.length;
    this.material.uniforms.uWiden.value = wide_m / WIDE_M;
    this.material.uniforms.uCollar.value = Math.max(1, (COLLAR_PX * metresPerPx) / COLLAR_M);
    this.mesh.instanceMatrix.needsUpdate = true;
    this.weight.needsUpdate = true;
  }

  place(k, { feet, up, side, front, aside_m, weight_g }) {
    const foot = moved(feet, side, aside_m);
    turned.makeBasis(x.set(...side), y.set(...up), z.set(...front)).setPosition(foot.x, foot.y, foot.z);
    this.mesh.setMatrixAt(k, turned);
    this.weight.setXY(k, weight_g, topOf(weight_g));
  }

  label({ key, name, weight_g, feet, up, side, aside_m, away_m }) {
    const over = (share, height_m) => moved(moved(feet, side, share * aside_m), up, height_m + OVER_M);
    const head_m = Math.max(this.tall_m, PERSON_M * topOf(weight_g));
    return {
      key: `weight ${key}`,
      text: `${name} `,
      strong: `${weightFigure(weight_g)}\u00a0g`,
      at: [over(0.5, head_m), over(1, head_m), over(2.2, 0.5 * head_m), over(-1, 0.5 * head_m)],
      gap: 4,
      away_m,
    };
  }

  // What a picture must hold besides: posts and people taller than people usually are.
  tops(half) {
    if (!this.open) return [];
    const { model, shown, frame } = half;
    const tall = weight_g => Math.max(this.tall_m, PERSON_M * topOf(weight_g));
    const points = [];
    const push = (feet, up, high_m) => {
      if (high_m > PERSON_M) {
        const p = moved(feet, up, high_m);
        points.push(p.x, p.y, p.z);
      }
    };
    for (const { person, motion, weight_g } of this.people(half, Infinity)) {
      const [from_s, to_s] = motion ? [motion.starts_s, motion.ends_s] : [person.since_s, shown[0]?.ends_s ?? 0];
      for (const time_s of [from_s, (from_s + to_s) / 2, to_s]) {
        const { feet, up } = motion ? standOf(model, motion, frame, time_s) : onDeck(model, person, turnAt(model, frame, time_s));
        push(feet, up, tall(motion ? mostOf(motion) : weight_g));
      }
    }
    return points;
  }
}

// How far up, in g, a post reaches: to a tick.
function topOf(weight_g) {
  return postTop(Math.ceil(10 * weight_g - 1e-6) / 10);
}

// Where somebody stands, which way is up for them, and the viewer's right and front.
function stanceOf(half, one, time_s, eye) {
  const { feet, up } = one.motion ? half.actors.movers.stance(one.motion, time_s) : onDeck(half.model, one.person, turnAt(half.model, half.frame, time_s));
  const toEye = x.set(eye.x - feet.x, eye.y - feet.y, eye.z - feet.z);
  const away_m = toEye.length();
  const side = z.crossVectors(y.set(...up), toEye);
  if (side.lengthSq() < 1e-6 * away_m * away_m) side.set(...half.eye.axes.right).projectOnPlane(y); // seen from straight above
  side.normalize();
  const front = x.crossVectors(side, y).toArray();
  return { ...one, beside: one.motion?.stage.beside, feet, up, side: side.toArray(), front, away_m };
}

// A post of height 1 and its collar, which is raised to one g.
function postGeometry() {
  const geometry = merged([new BoxGeometry(WIDE_M, 1, 0.06).translate(0, 0.5, 0), new BoxGeometry(1.7 * WIDE_M, COLLAR_M, 0.08)]);
  const count = geometry.attributes.position.count;
  return geometry.setAttribute(
    'collar',
    new BufferAttribute(
      Float32Array.from({ length: count }, (_, k) => (2 * k < count ? 0 : 1)),
      1,
    ),
  );
}

// Where beside somebody a post hides nobody: places are tried in order of liking, each as the points it takes on the picture, px.

const HIT = 10;
const STAY = 3; // how much better another place must be before a post moves

/** `seenAt(index)`: the points of the place of that index of `count`; `taken` the same of what must stay in sight; `least_px` the
    distance to keep; `last` the index it had. Gives {index, seen}: the first place that hides least. */
export function freest(count, seenAt, taken, least_px, last) {
  const dislike = index => index - (index === last ? STAY : 0);
  let best = null;
  for (const index of Array.from({ length: count }, (_, k) => k).sort((a, b) => dislike(a) - dislike(b))) {
    if (best && dislike(index) >= best.cost) break;
    const seen = seenAt(index);
    const cost = HIT * taken.filter(other => meets(seen, other, least_px)).length + dislike(index);
    if (!best || cost < best.cost) best = { index, seen, cost };
  }
  return best;
}

function meets(a, b, least_px) {
  return a.some(([x, y]) => b.some(([u, v]) => Math.hypot(x - u, y - v) < least_px));
}
