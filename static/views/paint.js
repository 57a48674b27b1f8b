// What is painted on the deck: the spinward arrow with its word, and the metres. One picture, one mesh.

import { inSigns, tr } from '../state/language.js';
import { BufferAttribute, BufferGeometry, CanvasTexture, DoubleSide, Mesh, NoColorSpace, ShaderMaterial } from '../vendor/three.module.js';

const SIZE = 1024;
const ROW = 200; // px of the arrow's row
const CELL = [256, 96]; // px of a figure's cell, four a row
const ARROW_M = [6.4, 1.25];
const FIGURE_M = [1.8, 0.675];
const LONGEST = 0.3; // of the picture: the arrow is in it from end to end
const IN_FRONT = { near: [0.13, 0.18], far: [0.17, 0.24], from_m: 14 }; // of the picture, to the arrow and to the metres: of a narrow one less is seen before the flight
const CELLS = 4 * Math.floor((SIZE - ROW) / CELL[1]);

const VERTEX = `
  varying vec2 vUv; varying float vD;
  void main() {
    vec4 e = modelViewMatrix * vec4(position, 1.);
    vUv = uv; vD = -e.z;
    gl_Position = projectionMatrix * e;
    gl_Position.z -= 1e-4 * gl_Position.w;
  }`;
const FRAGMENT = `
  uniform sampler2D uMap; uniform vec2 uFog;
  varying vec2 vUv; varying float vD;
  void main() {
    float a = texture2D(uMap, vUv).a * .9;
    if (a < .01) discard;
    gl_FragColor = vec4(.94, .91, .84, a * (1. - smoothstep(uFog.x, uFog.y, vD)));
  }`;

export class Paint {
  constructor(shared) {
    this.canvas = document.createElement('canvas');
    this.canvas.width = SIZE;
    this.canvas.height = SIZE;
    this.texture = new CanvasTexture(this.canvas);
    this.texture.colorSpace = NoColorSpace;
    this.texture.anisotropy = 4;
    this.material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
      uniforms: { ...shared, uMap: { value: this.texture } },
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
    });
    this.mesh = new Mesh(new BufferGeometry(), this.material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 1;
  }

  // `step_m`: metres between thin grid lines; `at_m`: where people look; `span_m`: metres across the picture Aboard.
  build(ground, deck) {
    const key = JSON.stringify([ground.shape.key, deck]);
    if (key === this.key) return;
    this.key = key;
    const { radius_m } = ground;
    const { along_m } = ground.reach(deck.floor);
    const scale = Math.min(Math.max(1, deck.step_m), deck.half_m / 7, radius_m / 9, along_m / 4, (LONGEST * deck.span_m) / ARROW_M[0]);
    const [arrow, figures] = ground.level ? onPlatform(radius_m, deck, scale) : onDeck(along_m, deck, scale, ground.tube_m ? -0.62 : 1);
    const marks = figures.map(({ metres }) => metres);
    if (marks.join() !== this.lettered) this.letter(marks);
    const quads = [{ ...arrow, size: ARROW_M, uv: [0, 0, 1, ROW / SIZE] }];
    figures.forEach((figure, i) => quads.push({ ...figure, size: FIGURE_M, uv: cellOf(i) }));
    this.mesh.geometry.dispose();
    this.mesh.geometry = geometryOf(quads, ground, deck.floor, scale);
  }

  letter(marks) {
    const x = this.canvas.getContext('2d');
    x.clearRect(0, 0, SIZE, SIZE);
    x.fillStyle = '#fff';
    x.strokeStyle = '#fff';
    arrow(x, SIZE, ROW);
    x.font = '600 80px "Source Sans 3", sans-serif';
    x.textAlign = 'center';
    x.letterSpacing = '0px';
    marks.forEach((along, i) => {
      const [u, v] = cellOf(i);
      const text = `${along < 0 ? '−' : ''}${inSigns(String(Math.abs(Number(along.toPrecision(6)))))} m`;
      x.fillText(text, u * SIZE + CELL[0] / 2, v * SIZE + CELL[1] * 0.54, CELL[0]);
    });
    this.texture.needsUpdate = true;
    this.lettered = marks.join();
  }

  // The typeface may arrive after the first picture.
  repaint() {
    this.key = null;
    this.lettered = null;
  }
}

// The arrow before the flight, and along the edge the metres from the reference line. `side` less than 0 puts both behind the
// flight: a tube is cut open in front of it.
function onDeck(reach_m, { half_m, step_m, at_m, span_m }, scale, side) {
  const gap = 5 * step_m;
  const marks = [];
  const [arrow_m, metres_m] = (span_m < IN_FRONT.from_m ? IN_FRONT.near : IN_FRONT.far).map(share => share * span_m);
  for (let k = Math.round(at_m / gap) - CELLS / 2; marks.length < CELLS && k * gap < reach_m; k += 1) {
    if (k !== 0 && k * gap > -reach_m) marks.push(k * gap);
  }
  return [
    { along: at_m - 0.6 * scale, axial: side * Math.min(0.7 * half_m, arrow_m) },
    marks.map(metres => ({ along: metres, axial: side * Math.min(0.925 * half_m, metres_m), metres })),
  ];
}

// On a turntable the arrow goes round, and the metres are those of the rings.
function onPlatform(radius_m, { step_m, at_m }, scale) {
  const gap = radius_m / step_m > 8 ? 5 * step_m : step_m;
  const along = at_m + 0.32 * radius_m;
  const marks = [];
  for (let k = 1; k * gap < 0.93 * radius_m && marks.length < CELLS; k += 1) marks.push({ along, axial: k * gap - 0.34 * scale, metres: k * gap });
  return [{ along: at_m - 0.5 * radius_m, axial: 0.86 * radius_m }, marks];
}

function arrow(x, w, h) {
  x.lineWidth = h * 0.07;
  x.beginPath();
  for (const [from, to] of [
    [0.01, 0.1],
    [0.66, 0.985],
  ]) {
    x.moveTo(w * from, h * 0.5);
    x.lineTo(w * to, h * 0.5);
  }
  x.moveTo(w * 0.93, h * 0.22);
  x.lineTo(w * 0.985, h * 0.5);
  x.lineTo(w * 0.93, h * 0.78);
  x.stroke();
  x.font = `600 ${h * 0.62}px "Source Sans 3", sans-serif`;
  x.textBaseline = 'middle';
  x.textAlign = 'left';
  x.letterSpacing = `${h * 0.06}px`;
  x.fillText(tr('SPINWARD'), w * 0.125, h * 0.53, w * 0.52);
}

function cellOf(i) {
  return [((i % 4) * CELL[0]) / SIZE, (ROW + Math.floor(i / 4) * CELL[1]) / SIZE, CELL[0] / SIZE, CELL[1] / SIZE];
}

// Quads bent along the deck, a hand's breadth of nothing above it.
function geometryOf(quads, ground, floor, scale) {
  const position = [];
  const uv = [];
  const index = [];
  const p = { x: 0, y: 0, z: 0 };
  for (const {
    along,
    axial,
    size,
    uv: [u, v, du, dv],
  } of quads) {
    const parts = size === ARROW_M ? 24 : 4;
    const base = position.length / 3;
    for (let i = 0; i <= parts; i += 1)
      for (const k of [0, 1]) {
        const [s, z] = [(i / parts - 0.5) * size[0] * scale, axial + (k - 0.5) * size[1] * scale];
        ground.on(along + (ground.level ? (s * ground.radius_m) / axial : s), Math.min(0.02, 0.003 * ground.radius_m), z, 0, p, floor);
        position.push(p.x, p.y, p.z);
        uv.push(u + (du * i) / parts, 1 - v - dv * k);
      }
    for (let i = 0; i < parts; i += 1) index.push(...[0, 1, 2, 2, 1, 3].map(c => base + 2 * i + c));
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(position), 3));
  geometry.setAttribute('uv', new BufferAttribute(new Float32Array(uv), 2));
  geometry.setIndex(index);
  return geometry;
}
