// The habitat that turns, and the room that does not: drawn from the parts that the server gives of it (`server/rimfall/shapes/drawn.py`),
// each in the material of its name; and the lamp on the axis.

import { BoxGeometry, BufferGeometry, CylinderGeometry, Group, Mesh, PlaneGeometry } from '../vendor/three.module.js';
import { Dots, KIND } from './dots.js';
import { figureGeometry } from './lay_figure.js';
import { arc, disc, evenly, merged, ring, ringAngles, sheet, straight, swept, tube, withStrength, xyz } from './geometry.js';
import { Levels } from './levels.js';
import { blobMaterial, cardMaterial, deckMaterial, turntableMaterial, rgb } from './materials.js';
import { drawnPoint } from './place.js';
import { Ribbon } from './ribbon.js';

const MOST_ROUND = 1200; // corners about the axis of what is straight across
const SHELL_ROUND = 220; // and of what bends across
const SHELL_ACROSS = 72;
const LIGHT = { size: 3, kind: KIND.light, tint: rgb('#FFC98A') };

const MATERIALS = {
  deck: shared => deckMaterial(shared),
  room: shared => deckMaterial(shared, { dim: 0.62 }),
  turntable: turntableMaterial,
  hull: shared => cardMaterial(shared, '#56636B', { matter: 'metal' }),
  tray: shared => cardMaterial(shared, '#56636B', { side: 'both' }),
  section: shared => cardMaterial(shared, '#7E8886', { side: 'both', matter: 'metal' }),
  cut: shared => cardMaterial(shared, '#3E4443', { side: 'both' }),
  rim: shared => cardMaterial(shared, '#7E8886', { matter: 'metal' }),
  ceiling: shared => cardMaterial(shared, '#A8ACA2', { side: 'both', alpha: 0.1, fill: 0.6 }),
  hub: shared => cardMaterial(shared, '#8A9290', { fill: 0.42, matter: 'metal' }),
  stand: shared => cardMaterial(shared, '#4A4C48'),
};
const SKIN = 'hull';
const OWN = new Set(['deck', 'room', 'turntable']); // a material of its own for every part: its border is painted on it
const LOOKS = {
  edge: { color: '#97A09D', width: 1.3, fogged: 1 },
  hoop: { color: '#97A09D', width: 1.3, alpha: 0.5, fogged: 1 },
  rail: { color: '#8E9693', width: 1.2, alpha: 0.9, fogged: 1 },
  joint: { color: '#A9B0AC', width: 1.2, alpha: 0.85, fogged: 1 },
  mark: { color: '#EFEADC', width: 2 },
};
const HIDDEN = {
  near: (side, { near }) => side === near,
  open: (side, { eye }) => side === eye,
  section: (side, { eye }) => side !== eye,
};

export class Habitat {
  constructor(shared) {
    this.shared = shared;
    this.drawn = new Map(); // what parts of one look, side and cut are drawn with, made once
    this.cut = { near: 0, eye: 1 };
    this.opened = false;
    this.pivot = new Group();
    this.group = new Group();
    this.still = new Group(); // does not turn with the habitat
    this.room = new Group();
    this.whole = new Group();
    this.pivot.add(this.group);
    this.still.add(this.room);
    this.whole.add(this.pivot, this.still);
    this.levels = new Levels(shared);
    this.group.add(this.levels.group);
    this.lantern();
  }

  lantern() {
    this.core = this.mesh(cardMaterial(this.shared, '#FFE3B0', { glow: 1 }));
    const sprite = look => new Mesh(withStrength(new PlaneGeometry(2, 2)), blobMaterial(this.shared, look.color, { core: 0, glow: true, ...look }));
    this.glow = sprite({ color: '#FFD69A', opacity: 0.62, power: 3.2 });
    this.haze = sprite({ color: '#D8B890', opacity: 0.2, power: 1.3 });
    this.lamp = [this.core, this.haze, this.glow];
    for (const one of [this.haze, this.glow]) {
      one.renderOrder = 1;
      one.frustumCulled = false;
    }
    this.group.add(...this.lamp);
  }

  // Made anew only when what it is made from changes. `eye` {near_m, far_m, at_m, everywhere}: spans seen Aboard and Outside, and where; `floor`: that
  // of the leading motion; `ended`: an open cylinder with ends.
  build({ shape, ground }, eye, floor, ended) {
    const key = JSON.stringify([shape.key, eye, floor, ended]);
    if (key === this.key) return;
    this.key = key;
    const R = shape.radius_m;
    for (const group of [this.pivot, this.still]) group.position.set(0, R, 0);
    for (const group of [this.group, this.room]) group.position.set(0, -R, 0);
    const { parts, half_m } = (ended && shape.drawn.ended) || shape.drawn;
    this.radius_m = R;
    this.open = half_m === null;
    this.half_m = this.open ? asWideAsSeen(R, eye) : shape.floors.length ? ground.reach(floor).axial_m : half_m;
    this.levels.build(ground, shape.floors);
    this.sampling = {
      eye,
      stretch: this.open ? this.half_m : 1,
      round: ringAngles(R, eye, shape.section_m ? SHELL_ROUND : MOST_ROUND),
      across: shape.section_m ? ringAngles(shape.section_m, { ...eye, at_m: 0 }, SHELL_ACROSS) : [],
      reach_m: eye.everywhere ? Math.PI * R : Math.min(Math.PI * R, 3 * Math.max(eye.near_m, eye.far_m)),
    };
    this.put(parts);
  }

  put(parts) {
    const given = new Map();
    for (const one of [...this.lamp, ...(this.person ? [this.person] : [])]) one.visible = false;
    this.inRoom = false;
    parts.forEach((part, i) => {
      if (part.form === 'lantern') return this.light(part);
      if (part.form === 'figure') return this.stand(part);
      const { material = '', look = '', form, side = 0, cut = '', from_afar = false, still = false } = part;
      const key = [material, look, form === 'lights', side, cut, from_afar, still, OWN.has(material) ? i : ''].join();
      if (!given.has(key)) given.set(key, []);
      given.get(key).push(part);
    });
    for (const [key, one] of this.drawn) one.used = given.has(key);
    for (const [key, some] of given) this.fill(this.drawnWith(key, some[0]), some);
    this.show();
  }

  drawnWith(key, { material, look, form, side = 0, cut = null, from_afar = false, still = false }) {
    if (!this.drawn.has(key)) {
      const group = still ? this.room : this.group;
      const one = material
        ? { mesh: this.mesh(MATERIALS[material](this.shared), group) }
        : form === 'lights'
          ? { dots: this.footlights(group) }
          : { ribbon: this.ribbon(LOOKS[look], group) };
      this.drawn.set(key, { ...one, object: one.mesh ?? one.dots?.points ?? one.ribbon.mesh, side, cut, from_afar, skin: material === SKIN, used: true });
    }
    return this.drawn.get(key);
  }

  fill({ mesh, ribbon, dots }, parts) {
    if (ribbon) return ribbon.set(parts.flatMap(part => this.strokes(part)));
    if (dots) return this.kindle(dots, parts);
    const geometries = parts.map(part => this.geometry(part));
    mesh.geometry.dispose();
    mesh.geometry = geometries.length > 1 ? merged(geometries) : geometries[0];
    const { uEdge, uOpen } = mesh.material.uniforms;
    const [{ form, edge_m, material }] = parts;
    if (uEdge) uEdge.value = edge_m ?? (form === 'disc' ? this.radius_m : this.half_m);
    if (uOpen) uOpen.value = this.open || material === 'room' ? 1 : 0;
  }

  geometry(part) {
    const {
      radius_m: R,
      sampling: { round, across, stretch },
    } = this;
    if (part.form === 'band') return swept(R, round, straight(part.profile, stretch));
    if (part.form === 'shell') return swept(R, round, arc(part.arc, across));
    if (part.form === 'sheet')
      return sheet(
        part.corners.map(corner => this.point(corner)),
        part.half_m,
      );
    if (part.form === 'disc') return disc(part.radius_m);
    if (part.form === 'tube')
      return tube(
        part.ends.map(end => this.point(end)),
        part.radii_m,
        part.sides,
        part.closed,
      );
    return new BoxGeometry(...part.size_m).rotateZ(part.azimuth_rad).translate(...this.point(part.middle));
  }

  // Lines as a ribbon takes them.
  strokes(part) {
    const {
      radius_m: R,
      sampling: { round, stretch, reach_m, eye },
    } = this;
    const thick = count => (part.diameter_m ? { diameter: Array(count).fill(part.diameter_m) } : {});
    if (part.form === 'rings') return part.profile.map(([height, axial]) => ({ points: ring(R, round, height, axial * stretch), ...thick(round.length) }));
    if (part.form === 'posts')
      return evenly(R, reach_m, part.every_m, eye.at_m).map(along => ({
        points: part.profile.flatMap(([height, axial]) => xyz(R, along, height, axial)),
        ...thick(2),
      }));
    if (part.form === 'sections') return sections(R, part);
    return part.points.map(points => ({ points: this.points(points), ...thick(points.length / 3) }));
  }

  kindle(dots, parts) {
    const {
      radius_m: R,
      sampling: { reach_m, eye },
    } = this;
    dots.begin();
    for (const { points, profile, every_m, diameter_m, alpha } of parts) {
      const places = points?.map(point => this.point(point)) ?? evenly(R, reach_m, every_m, eye.at_m, 0.5).map(along => xyz(R, along, ...profile[0]));
      for (const [x, y, z] of places) dots.add({ x, y, z }, { ...LIGHT, diameter: diameter_m, alpha });
    }
    dots.end();
  }

  // The lamp: a column along the axis.
  light({ radius_m: r, length_m }) {
    const { radius_m: R } = this;
    for (const one of this.lamp) one.visible = true;
    for (const one of [this.glow, this.haze]) one.position.set(0, R, 0);
    this.glow.scale.setScalar(Math.min(0.57 * R, 60 + 0.1 * R));
    this.haze.scale.setScalar(R);
    this.core.geometry.dispose();
    this.core.geometry = new CylinderGeometry(r, r, length_m ?? 2 * this.half_m, 32, 1).rotateX(Math.PI / 2).translate(0, R, 0);
  }

  showPerson(whole) {
    this.person.visible = this.inRoom && whole;
  }

  // Somebody in the room.
  stand({ at }) {
    if (!this.person) {
      this.person = new Mesh(figureGeometry(), cardMaterial(this.shared, '#D9D2BF', { fill: 0.85, matter: 'cloth' }));
      this.person.rotation.set(Math.PI / 2, 0, 0);
      this.room.add(this.person);
    }
    this.person.visible = this.inRoom = true;
    this.person.position.set(...this.point(at));
  }

  point(position) {
    const { x, y, z } = drawnPoint(position, 0, this.radius_m, {});
    return [x, y, z];
  }

  points(flat) {
    return Array.from({ length: flat.length / 3 }, (_, i) => this.point(flat.slice(3 * i, 3 * i + 3))).flat();
  }

  mesh(material, group = this.group) {
    const mesh = new Mesh(new BufferGeometry(), material);
    mesh.frustumCulled = false;
    group.add(mesh);
    return mesh;
  }

  ribbon(look, group) {
    const ribbon = new Ribbon(this.shared, { order: 2, ...look });
    ribbon.material.uniforms.uNow = { value: 1e9 };
    group.add(ribbon.mesh);
    return ribbon;
  }

  footlights(group) {
    const dots = new Dots(this.shared, { additive: true, order: 2, fogged: 1 });
    group.add(dots.points);
    return dots;
  }

  // `room_rad`: how far the room has turned on this stage.
  turn(angle_rad, room_rad = 0) {
    this.pivot.rotation.z = angle_rad;
    this.still.rotation.z = room_rad;
    this.hull?.turn(angle_rad, room_rad);
    this.whole.updateMatrixWorld(true);
  }

  // `near`: side of the axis where rails and posts would stand before the scene, 0 for none; `eye`: where the eye is.
  cutAway(near, eye) {
    const { cut } = this;
    if (cut.near === near && cut.eye === eye) return;
    cut.near = near;
    cut.eye = eye;
    this.show();
  }

  // What is drawn only of a whole wheel would sweep across a flight that is seen from nearby.
  seen(span_m) {
    const far = span_m > 1.1 * this.radius_m;
    this.levels.seen(span_m);
    if (far === this.far) return;
    this.far = far;
    this.show();
  }

  // Without its outer skin what moves inside is seen through its nearer side: a deck shows on its inside alone.
  openUp(open) {
    if (open === this.opened) return;
    this.opened = open;
    this.show();
  }

  show() {
    for (const { object, side, cut, from_afar, skin, used } of this.drawn.values())
      object.visible = used && !(cut && HIDDEN[cut](side, this.cut)) && (this.far || !from_afar) && !(skin && this.opened);
  }
}

// Half the width of a cylinder without ends.
function asWideAsSeen(R, eye) {
  return 2 ** Math.ceil(Math.log2(2.5 * Math.max(eye.near_m, Math.min(eye.far_m, R), 4)));
}

// Arcs across, evenly round the axis.
function sections(R, { count, arc: [centre, radius, from, to] }) {
  const angles = Array.from({ length: 49 }, (_, k) => from + ((to - from) * k) / 48);
  return Array.from({ length: count }, (_, k) => {
    const along = ((k + 0.5) / count) * 2 * Math.PI * R;
    return { points: angles.flatMap(a => xyz(R, along, centre - radius * Math.cos(a), radius * Math.sin(a))) };
  });
}
