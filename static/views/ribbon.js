// A path as a ribbon: two triangles a segment, widened to screen pixels in the vertex shader, its edges faded in the fragment
// shader so that it is clean without antialiasing. One mesh and one material a ribbon, made once; the buffer is rewritten.

import { BufferGeometry, InterleavedBuffer, InterleavedBufferAttribute, Mesh, ShaderMaterial, Vector3, DynamicDrawUsage } from '../vendor/three.module.js';
import { FirstPart } from './first_part.js';
import { rgb } from './materials.js';

const FLOATS = 13; // position, previous, next, side, time, distance, diameter
const DASHES = 3; // at most, in a period
const NEVER = 1e9;

const VERTEX = `
  attribute vec3 prev, next; attribute vec4 aux;
  uniform vec2 uHalf; uniform float uDpr, uWidth, uCasing, uPx, uNear, uPull;
  varying vec4 vLine;     // px from the middle, time, distance, full width in px
  varying float vD;
  vec4 ahead(vec4 p, vec4 q) { return p.w < uNear && q.w > uNear ? mix(q, p, (q.w - uNear) / (q.w - p.w)) : p; }
  vec2 toward(vec4 p, vec4 q) { vec2 d = (q.xy / q.w - p.xy / p.w) * uHalf; float l = length(d); return l > 1e-4 ? d / l : vec2(0.); }
  void main() {
    mat4 m = projectionMatrix * modelViewMatrix;
    vec4 c = m * vec4(position, 1.), a = m * vec4(prev, 1.), b = m * vec4(next, 1.);
    c = c.w < uNear ? (b.w > uNear ? ahead(c, b) : ahead(c, a)) : c;
    vec2 before = toward(ahead(a, c), c), after = toward(c, ahead(b, c));
    if (before == vec2(0.)) before = after;
    if (after == vec2(0.)) after = before;
    vec2 along = before + after;
    along = length(along) > .1 ? normalize(along) : before;
    vec2 across = vec2(-along.y, along.x);
    float miter = 1. / max(dot(across, vec2(-before.y, before.x)), .55);
    float wide = max(uWidth * uDpr, aux.w * uPx / max(c.w, uNear));
    float half_px = (wide * .5 * uCasing + 1.) * aux.x;
    c.xy += across * (half_px * miter / uHalf * c.w);
    c.z -= uPull * c.w;
    vLine = vec4(half_px, aux.y, aux.z, wide);
    vD = c.w;
    gl_Position = c;
  }`;

const FRAGMENT = `
  uniform vec3 uColor, uNight; uniform float uAlpha, uNow, uFrom, uTo, uCasing, uAhead, uUnit, uRound, uPeriod, uFogged;
  uniform vec3 uFirst, uLast;               // where dashes begin and end
  uniform vec2 uFog;
  varying vec4 vLine; varying float vD;
  float outside(float d) {                  // how far to the nearest dash, negative inside one
    vec3 here = max(uFirst - d, d - uLast), next = max(uFirst + uPeriod - d, d - uPeriod - uLast), off = min(here, next);
    return min(off.x, min(off.y, off.z));
  }
  void main() {
    float t = vLine.y;
    if (t < uFrom || t > uTo) discard;
    float flown = step(t, uNow);
    float wide = vLine.w * mix(uAhead, 1., flown), x = abs(vLine.x);
    float q = uPeriod > 0. ? outside(mod(vLine.z / uUnit, uPeriod)) * uUnit / max(fwidth(vLine.z), 1e-9) : -1e3;
    float r = uRound > .5 ? length(vec2(max(q, 0.), x)) : x;
    float dash = uRound > .5 ? 1. : 1. - smoothstep(-.5, .5, q);
    float line = (1. - smoothstep(wide * .5 - .6, wide * .5 + .6, r)) * dash * mix(.6, 1., flown) * uAlpha;
    float rim = uCasing > 1.01 ? mix(.4, .72, flown) * (1. - smoothstep(wide * .5 * uCasing - .6, wide * .5 * uCasing + .6, x)) * (1. - smoothstep(0., wide * .45, q)) : 0.;
    float a = line + rim * (1. - line);
    if (a < .004) discard;
    vec3 c = mix(uNight, uColor, line / a);
    float f = uFogged * smoothstep(uFog.x, uFog.y, vD);
    gl_FragColor = vec4(mix(c, uNight, f * .6), a * (1. - f * .55));
  }`;

export class Ribbon {
  constructor(
    shared,
    { color, width = 2, alpha = 1, casing = 1, ahead = 1, dash = [], round = false, fogged = 0, depth = true, pull = 2e-4, order = 3, capacity = 164 },
  ) {
    this.width = width;
    this.material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      depthTest: depth,
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      side: 2,
      uniforms: {
        ...shared,
        uColor: { value: new Vector3(...rgb(color)) },
        uAlpha: { value: alpha },
        uWidth: { value: width },
        uCasing: { value: casing },
        uAhead: { value: ahead },
        uUnit: { value: 1 },
        uRound: { value: round ? 1 : 0 },
        ...dashes(dash),
        uFogged: { value: fogged },
        uPull: { value: pull },
        uNow: shared.uNow,
        uFrom: { value: -1e9 },
        uTo: { value: 1e9 },
      },
    });
    this.mesh = new Mesh(new BufferGeometry(), this.material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = order;
    this.reserve(capacity);
  }

  // Room for `points` points; the buffer only ever grows.
  reserve(points) {
    if (points <= this.capacity) return;
    this.capacity = points;
    this.buffer = new InterleavedBuffer(new Float32Array(points * 2 * FLOATS), FLOATS).setUsage(DynamicDrawUsage);
    this.index = new Uint32Array(points * 6);
    const geometry = new BufferGeometry();
    for (const [name, size, offset] of [
      ['position', 3, 0],
      ['prev', 3, 3],
      ['next', 3, 6],
      ['aux', 4, 9],
    ]) {
      geometry.setAttribute(name, new InterleavedBufferAttribute(this.buffer, size, offset));
    }
    geometry.setIndex([]);
    geometry.index.array = this.index;
    geometry.index.count = this.index.length;
    this.sent = [new FirstPart(this.buffer), new FirstPart(geometry.index)];
    this.mesh.geometry.dispose();
    this.mesh.geometry = geometry;
  }

  // Polylines: [{points: [x, y, z, …], time?: [], diameter?: []}].
  set(lines) {
    let points = 0;
    for (const line of lines) points += line.points.length / 3;
    this.reserve(points);
    this.begin();
    for (const line of lines) this.line(line.points, line.points.length / 3, line.time, line.diameter);
    this.end();
  }

  // The same one by one, for what is drawn anew every frame: the first `count` of points, for which there is room.
  begin() {
    this.vertex = this.corner = 0;
  }

  line(points, count, time = null, diameter = null) {
    const { index } = this;
    let distance = 0;
    for (let i = 0; i < count; i += 1) {
      if (i > 0) distance += far(points, 3 * i);
      this.write(points, time, diameter, i, count, distance);
      if (i > 0) {
        const a = this.vertex - 2,
          k = this.corner;
        index[k] = a;
        index[k + 1] = index[k + 4] = a + 1;
        index[k + 2] = index[k + 3] = a + 2;
        index[k + 5] = a + 3;
        this.corner += 6;
      }
      this.vertex += 2;
    }
  }

  end() {
    const { vertex, corner, mesh } = this;
    mesh.visible = corner > 0;
    if (!corner) return;
    this.sent[0].send(vertex * FLOATS);
    this.sent[1].send(corner);
    mesh.geometry.setDrawRange(0, corner);
  }

  write(points, time, diameter, i, count, distance) {
    const a = this.buffer.array;
    const before = 3 * Math.max(0, i - 1);
    const after = 3 * Math.min(count - 1, i + 1);
    for (let side = 0; side < 2; side += 1) {
      const o = (this.vertex + side) * FLOATS;
      for (let c = 0; c < 3; c += 1) {
        a[o + c] = points[3 * i + c];
        a[o + 3 + c] = points[before + c];
        a[o + 6 + c] = points[after + c];
      }
      a[o + 9] = side ? 1 : -1;
      a[o + 10] = time ? time[i] : 0;
      a[o + 11] = distance;
      a[o + 12] = diameter ? diameter[i] : 0;
    }
  }

  get uniforms() {
    return this.material.uniforms;
  }
}

// From the point before the one at `k`.
function far(points, k) {
  const x = points[k] - points[k - 3],
    y = points[k + 1] - points[k - 2],
    z = points[k + 2] - points[k - 1];
  return Math.sqrt(x * x + y * y + z * z);
}

// Of lengths of dashes and gaps by turns: where each dash begins and ends, and after how much they come again; 0 for a line without gaps.
function dashes(lengths) {
  const first = Array(DASHES).fill(NEVER),
    last = Array(DASHES).fill(NEVER);
  let at = 0;
  lengths.forEach((length, i) => {
    if (i % 2 === 0) [first[i / 2], last[i / 2]] = [at, at + length];
    at += length;
  });
  return { uFirst: { value: new Vector3(...first) }, uLast: { value: new Vector3(...last) }, uPeriod: { value: at } };
}
