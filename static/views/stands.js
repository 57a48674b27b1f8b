// What a motion brings along: the ramp it rolls on, the table it stands on. Strips of card that turn with the habitat.

import { BufferAttribute, BufferGeometry, DoubleSide, Group, Mesh } from '../vendor/three.module.js';
import { cardMaterial, deckMaterial } from './materials.js';
import { drawnPoint } from './place.js';
import { Ribbon } from './ribbon.js';

const MOST = 12;
const TABLE_M = 0.3; // of table on each side of where the thing goes
const TOP_M = 0.05; // how thick; a table as low as that is not worth drawing
const LEG_M = 0.035;
const LEGS_M = 3; // from one pair to the next
const MOST_ROWS = 64;

export class Stands {
  constructor(shared) {
    this.shared = shared;
    this.group = new Group();
    this.stands = [];
    this.key = '';
  }

  read(model, shown) {
    const strips = shown.flatMap(m => (m.motion.ramp ? [rampOf(model, m)] : m.stage.beside === 'table' ? tableOf(model, m) : [])).slice(0, MOST);
    const key = JSON.stringify(strips);
    if (key === this.key) return;
    this.key = key;
    strips.forEach((strip, i) => this.lay(this.stand(i), strip));
    this.stands.forEach((stand, i) => {
      stand.group.visible = i < strips.length;
    });
  }

  stand(i) {
    if (!this.stands[i]) {
      const stand = {
        group: new Group(),
        top: new Mesh(new BufferGeometry(), deckMaterial(this.shared, { side: DoubleSide })),
        sides: new Mesh(new BufferGeometry(), cardMaterial(this.shared, '#7E8886', { side: 'both' })),
        edge: new Ribbon(this.shared, { color: '#B9BDB6', width: 1.3, order: 2 }),
      };
      stand.top.material.uniforms.uOpen.value = 1;
      for (const mesh of [stand.top, stand.sides]) mesh.frustumCulled = false;
      stand.edge.material.uniforms.uNow = { value: 1e9 };
      stand.group.add(stand.top, stand.sides, stand.edge.mesh);
      this.group.add(stand.group);
      this.stands[i] = stand;
    }
    return this.stands[i];
  }

  // `rows` [left, right] from one end to the other, `feet` what is under each, `legs` pairs of points.
  lay({ top, sides, edge }, { rows, feet, legs }) {
    const quads = rows.slice(1).map(([left, right], k) => [rows[k][0], rows[k][1], right, left]);
    replace(top, quads, metresOf(rows));
    const rim = [...rows.map(([left]) => left), ...rows.map(([, right]) => right).reverse()];
    const under = [...feet.map(([left]) => left), ...feet.map(([, right]) => right).reverse()];
    replace(
      sides,
      rim.map((_, k) => [rim[k], under[k], under[(k + 1) % rim.length], rim[(k + 1) % rim.length]]),
    );
    const corners = [0, rows.length - 1, rows.length, 2 * rows.length - 1];
    edge.set([
      { points: [...rim, rim[0]].flat() },
      ...corners.map(k => ({ points: [...rim[k], ...under[k]] })),
      ...legs.map(leg => ({ points: leg.flat(), diameter: [LEG_M, LEG_M] })),
    ]);
  }
}

// A wedge: under each corner its foot on the ground. Corners come foot left, foot right, top right, top left.
function rampOf(model, m) {
  const [a, b, c, d] = m.motion.ramp.corners_m.map(corner => xyz(drawnPoint(corner, 0, model.radius_m, {})));
  const rows = [
    [a, b],
    [d, c],
  ];
  return { rows, feet: rows.map(row => row.map(corner => footOf(model, m, corner))), legs: [] };
}

function footOf(model, m, [x, y, z]) {
  const under = model.ground.under({ x, y, z }, 0, m.floor);
  return under && under.height_m > 0 ? xyz(model.ground.on(under.along_m, 0, under.axial_m, 0, {}, m.floor)) : [x, y, z];
}

// A level top under wherever the thing slides: level is at one height, so it bends with the deck.
function tableOf(model, m) {
  const { ground } = model;
  const top_m = m.release.height_m - m.diameter_m / 2;
  if (top_m - ground.surface(m.release.axial_m) < 2 * TOP_M) return [];
  const [from, to] = endsOf(m.path.along_m);
  const [back, front] = endsOf(m.path.axial_m);
  const count = Math.max(2, Math.min(MOST_ROWS, Math.ceil(to - from) + 1));
  const at = (along, height, axial) => xyz(ground.at(along, height, axial, 0, {}, m.floor));
  const across = height =>
    Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1)).map(along => [at(along, height, back), at(along, height, front)]);
  const feet = across(top_m - TOP_M);
  const every = Math.max(1, Math.ceil((LEGS_M * (count - 1)) / (to - from)));
  const legs = feet.filter((_, k) => k === count - 1 || k % every === 0).flatMap(pair => pair.map(top => [top, footOf(model, m, top)]));
  return [{ rows: across(top_m), feet, legs }];
}

function endsOf(values) {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return [least - TABLE_M, most + TABLE_M];
}

// Metres along and across the strip at each corner of its quads.
function metresOf(rows) {
  const wide = apart(rows[0][0], rows[0][1]);
  let gone = 0;
  return rows.slice(1).flatMap((row, k) => {
    const before = gone;
    gone += apart(row[0], rows[k][0]);
    return [before, 0, before, wide, gone, wide, gone, 0];
  });
}

function replace(mesh, faces, deck = null) {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(faces.flat(2)), 3));
  geometry.setIndex(faces.flatMap((_, k) => [0, 1, 2, 0, 2, 3].map(c => 4 * k + c)));
  if (deck) geometry.setAttribute('deck', new BufferAttribute(new Float32Array(deck), 2));
  else geometry.computeVertexNormals();
  mesh.geometry.dispose();
  mesh.geometry = geometry;
}

function apart(a, b) {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function xyz({ x, y, z }) {
  return [x, y, z];
}
