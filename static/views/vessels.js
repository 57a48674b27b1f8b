// What liquids come from: a jug at the lip of a pour, tilted as it pours, or a tap where it drips. They turn with the habitat; the lip is
// where the answer has it, and the rest is there to be recognised.

import { CylinderGeometry, Group, LatheGeometry, Matrix4, Mesh, TorusGeometry, Vector2, Vector3 } from '../vendor/three.module.js';
import { dripsFromTap } from './attendant.js';
import { turnAt } from './model.js';
import { cardMaterial } from './materials.js';
import { triad } from './ground.js';
import { merged } from './geometry.js';

const DEG = Math.PI / 180;
const UPRIGHT_DEG = 12; // of a jug that does not pour
const LEVEL_DEG = 68; // of one that pours level
const MOST_DEG = 118;
const SWING_S = 0.4; // from one to the other
const HIGH_M = 0.22;
const BELLY_M = 0.085; // from the lip to the jug's own axis
const PLAIN_LIP_M = 0.03; // a wider lip has a larger jug
const turning = new Matrix4();
const leaning = new Matrix4();
const [x, y, z] = [new Vector3(), new Vector3(), new Vector3()];

export class Vessels {
  constructor(shared, frame) {
    Object.assign(this, { frame, group: new Group(), card: cardMaterial(shared, '#B9AE97', { side: 'both', fill: 0.75 }), pool: [], pours: [] });
  }

  read(model, shown) {
    this.model = model;
    this.pours = shown.filter(m => m.stream && m.input);
    while (this.pool.length < this.pours.length) {
      const mesh = new Mesh(undefined, this.card);
      mesh.frustumCulled = false;
      mesh.matrixAutoUpdate = false;
      this.pool.push(mesh);
      this.group.add(mesh);
    }
    this.pool.forEach((mesh, k) => {
      mesh.visible = k < this.pours.length;
      if (mesh.visible) mesh.geometry = dripsFromTap(this.pours[k]) ? tap() : jug();
    });
  }

  update(time_s) {
    const { model, frame } = this;
    if (!this.pours.length) return;
    this.pours.forEach((m, k) => {
      const { at, forward, up, side, size } = vesselAt(model, m, frame, time_s);
      const { matrix } = this.pool[k];
      matrix.copy(turning.makeBasis(x.set(...forward), y.set(...up), z.set(...side))).setPosition(at.x, at.y, at.z);
      if (!dripsFromTap(m)) matrix.multiply(leaning.makeRotationZ(-tiltAt(m, time_s) * DEG));
      matrix.scale(x.set(size, size, size));
    });
  }
}

/** The lip of a pour at time t, the directions it pours and stands in, and how much larger than usual its vessel is. */
export function vesselAt(model, m, frame, time_s) {
  const { ground, radius_m } = model;
  const { along_m, height_m, axial_m } = m.release;
  const turn = turnAt(model, frame, time_s);
  const at = ground.at(along_m, height_m, axial_m, turn, {}, m.floor);
  const { spin, up, axial } = triad(ground.azimuth(along_m, m.floor) + turn, ground.level);
  const heading = (m.input.heading_deg ?? 0) * DEG;
  const [s, c] = [Math.sin(heading), Math.cos(heading)];
  const mix = (a, by, b, more) => a.map((part, k) => part * by + b[k] * more);
  const size = Math.min(Math.max(1, (m.input.lip_diameter_mm ?? 0) / 1000 / PLAIN_LIP_M), Math.max(0.05, (0.3 * radius_m) / HIGH_M));
  return { at, up, forward: mix(spin, c, axial, s), side: mix(axial, c, spin, -s), size };
}

/** How far a jug leans, degrees: with its lip while it pours, upright before and after. */
export function tiltAt({ input, stream }, time_s) {
  const since_s = time_s - stream.first_leaves_s;
  const left_s = stream.last_leaves_s - time_s;
  const share = Math.min(1, Math.max(0, 1 + Math.min(since_s, left_s) / SWING_S));
  const leans = Math.min(MOST_DEG, Math.max(UPRIGHT_DEG, LEVEL_DEG - elevationAt(input, since_s)));
  return UPRIGHT_DEG + (leans - UPRIGHT_DEG) * share;
}

// Straight between the points of the tilt, held after the last.
function elevationAt({ elevation_deg = 0, tilt = [] }, since_s) {
  let [from_s, from] = [0, elevation_deg];
  for (const { time_s, elevation_deg: to } of tilt) {
    if (since_s < time_s) return from + ((to - from) * Math.max(0, since_s - from_s)) / (time_s - from_s);
    [from_s, from] = [time_s, to];
  }
  return from;
}

let jugMade = null;
let tapMade = null;

// Its lip at the origin, pouring along x, standing along y.
function jug() {
  if (jugMade) return jugMade;
  const profile = [
    [0.001, 0], [0.056, 0], [0.064, 0.02], [0.075, 0.07], [0.07, 0.12], [0.052, 0.165], [0.05, 0.185], [0.06, HIGH_M],
  ]; // biome-ignore format: radius and height
  const body = new LatheGeometry(
    profile.map(([r, h]) => new Vector2(r, h)),
    24,
  ).translate(-BELLY_M, -HIGH_M, 0);
  const spout = new CylinderGeometry(0.03, 0.012, 0.06, 12, 1, true, -1.2, 2.4).rotateZ(-0.75).translate(-0.022, -0.02, 0);
  const handle = new TorusGeometry(0.055, 0.009, 8, 16, Math.PI).rotateZ(Math.PI / 2).translate(-BELLY_M - 0.058, -0.115, 0);
  return (jugMade = merged([body, spout, handle]));
}

// Its mouth at the origin, turned down; the pipe comes from behind.
function tap() {
  if (tapMade) return tapMade;
  return (tapMade = merged([
    new CylinderGeometry(0.012, 0.009, 0.05, 12).translate(0, 0.025, 0),
    new CylinderGeometry(0.012, 0.012, 0.14, 12).rotateZ(Math.PI / 2).translate(-0.06, 0.055, 0),
    new CylinderGeometry(0.018, 0.018, 0.02, 12).translate(-0.05, 0.075, 0),
    new CylinderGeometry(0.005, 0.005, 0.07, 8).rotateX(Math.PI / 2).translate(-0.05, 0.09, 0),
    new CylinderGeometry(0.02, 0.02, 0.012, 12).rotateZ(Math.PI / 2).translate(-0.13, 0.055, 0),
  ]));
}
