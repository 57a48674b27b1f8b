// Everything small and round, or shaped like a marker, as one set of points: bodies, beads, drops, landing marks, footlights,
// stars. Balls are shaded in the fragment; sizes are pixels at least and true metres when that is more.

import {
  AdditiveBlending,
  BufferGeometry,
  InterleavedBuffer,
  InterleavedBufferAttribute,
  NormalBlending,
  Points,
  ShaderMaterial,
  DynamicDrawUsage,
} from '../vendor/three.module.js';
import { FirstPart } from './first_part.js';

export const KIND = { light: 0, disc: 1, square: 2, triangle: 3, diamond: 4, cross: 5, ring: 6, ball: 7, bead: 8, cup: 9 };
const WHITE = [1, 1, 1];
const FLOATS = 11; // position, size px, diameter m, kind, time, red, green, blue, alpha

const VERTEX = `
  attribute vec4 look; attribute vec4 tint;      // size px, diameter m, kind, time
  uniform float uDpr, uPx, uNow, uScale, uNear, uFogged; uniform vec2 uFog;
  uniform vec4 uOver;
  varying vec4 vTint; varying float vKind, vSize; varying vec2 vUp;
  void main() {
    vec4 e = modelViewMatrix * vec4(position, 1.);
    vec4 c = projectionMatrix * e;
    float past = step(look.w, uNow), bead = step(7.5, look.z) * step(look.z, 8.5);
    float size = max(look.x * uScale * uDpr, look.y * uPx / max(c.w, uNear)) * mix(1., mix(.7, 1., past), bead);
    float pull = 1.5 * size * max(c.w, uNear) / uPx + .02;      // toward the eye, so that a mark on the deck is not half sunk in it
    vec4 q = projectionMatrix * vec4(e.xyz * (1. - min(pull / max(length(e.xyz), 1e-6), .5)), 1.);
    c.z = q.z / q.w * c.w;
    vTint = tint;
    if (bead > .5) vTint = past > .5 ? vec4(1., 1., 1., .95) : vec4(tint.rgb, .6);
    vTint.a *= 1. - uFogged * smoothstep(uFog.x, uFog.y, c.w);
    vKind = look.z;
    vec3 up = mix(vec3(-sin(look.w), cos(look.w), 0.), uOver.xyz, uOver.w);      // of a cup, whose time is an angle about the axis
    vUp = look.z > 8.5 ? normalize((viewMatrix * vec4(up, 0.)).xy + vec2(0., 1e-4)) : vec2(0., 1.);
    vSize = size + 2.;
    gl_PointSize = vSize;
    gl_Position = c;
  }`;

// What glows, and nothing else: a shader for every kind takes long to be compiled, and drawing in software does the work of all kinds.
const LIGHT = `
  varying vec4 vTint; varying float vSize;
  void main() {
    float u = length(gl_PointCoord * 2. - 1.);
    float a = mix(.8 * (1. - u), 1., 1. - smoothstep(.2, .45, u)) * (1. - smoothstep(.6, 1., u)) * vTint.a;
    if (a < .01) discard;
    gl_FragColor = vec4(vTint.rgb, a);
  }`;

const FRAGMENT = `
  uniform vec3 uNight;
  varying vec4 vTint; varying float vKind, vSize; varying vec2 vUp;
  void main() {
    vec2 q = (gl_PointCoord * 2. - 1.) * vSize * .5; q.y = -q.y;      // px from the middle
    float r = vSize * .5 - 1., k = floor(vKind + .5), d = length(q) - r, a = 1.;
    vec3 c = vTint.rgb;
    if (k == 7.) {
      vec2 n = q / max(r, 1.);
      float z = sqrt(max(0., 1. - dot(n, n)));
      c *= .55 + .5 * max(0., dot(vec3(n, z), vec3(-.25, .72, .64)));
      a = 1. - smoothstep(-.7, .5, d);
    }
    else if (k == 8.) a = 1. - smoothstep(-.7, .5, d);
    else if (k == 9.) {                                          // a cup: wider at the lip
      q = vec2(q.x * vUp.y - q.y * vUp.x, dot(q, vUp));
      float s = r * .92, lean = .62 + .2 * (q.y / s);
      d = max(abs(q.x) - s * lean, abs(q.y) - s * .9);
      c *= (q.y > s * .62 ? 1.12 : .78 - .22 * q.x / s);
      a = 1. - smoothstep(-.7, .5, d);
    }
    else {
      float s = r - 1.6;
      if (k == 1.) d = length(q) - s;
      else if (k == 2.) d = max(abs(q.x), abs(q.y)) - s * .88;
      else if (k == 3.) d = max(abs(q.x) * .87 + q.y * .5, -q.y) - s * .62;
      else if (k == 4.) d = (abs(q.x) + abs(q.y)) * .71 - s * .78;
      else if (k == 5.) d = max(min(abs(q.x - q.y), abs(q.x + q.y)) * .71 - 1.4, max(abs(q.x), abs(q.y)) - s * .8);
      else d = abs(length(q) - s * .72) - 1.3;
      float rim = 1. - smoothstep(1.0, 2.2, d);
      float face = 1. - smoothstep(-.5, .6, d);
      if (vTint.a < .5) face = 1. - smoothstep(-.2, .9, abs(d + .9) - .4);   // open: outline only
      a = max(rim * .9, face);
      c = mix(uNight, c, face / max(a, 1e-3));
      gl_FragColor = vec4(c, a);
      if (a < .01) discard;
      return;
    }
    a *= vTint.a;
    if (a < .01) discard;
    gl_FragColor = vec4(c, a);
  }`;

export class Dots {
  // `additive`: of lights alone.
  constructor(shared, { capacity = 64, additive = false, depth = true, order = 6, scale = 1, fogged = 0 } = {}) {
    this.material = new ShaderMaterial({
      transparent: true,
      depthWrite: false,
      depthTest: depth,
      vertexShader: VERTEX,
      fragmentShader: additive ? LIGHT : FRAGMENT,
      blending: additive ? AdditiveBlending : NormalBlending,
      uniforms: { ...shared, uScale: { value: scale }, uFogged: { value: fogged } },
    });
    this.points = new Points(new BufferGeometry(), this.material);
    this.points.frustumCulled = false;
    this.points.renderOrder = order;
    this.count = 0;
    this.reserve(capacity);
  }

  reserve(count) {
    if (count <= this.capacity) return;
    const old = this.buffer?.array;
    this.capacity = count;
    this.buffer = new InterleavedBuffer(new Float32Array(count * FLOATS), FLOATS).setUsage(DynamicDrawUsage);
    if (old) this.buffer.array.set(old);
    const geometry = new BufferGeometry();
    for (const [name, size, offset] of [
      ['position', 3, 0],
      ['look', 4, 3],
      ['tint', 4, 7],
    ]) {
      geometry.setAttribute(name, new InterleavedBufferAttribute(this.buffer, size, offset));
    }
    this.sent = new FirstPart(this.buffer);
    this.points.geometry.dispose();
    this.points.geometry = geometry;
  }

  begin() {
    this.count = 0;
  }

  add(p, { size = 8, diameter = 0, kind = KIND.disc, time = 0, tint = WHITE, alpha = 1 }) {
    if (this.count === this.capacity) this.reserve(this.capacity * 2);
    const { array } = this.buffer,
      o = this.count * FLOATS;
    array[o] = p.x;
    array[o + 1] = p.y;
    array[o + 2] = p.z;
    array[o + 3] = size;
    array[o + 4] = diameter;
    array[o + 5] = kind;
    array[o + 6] = time;
    array[o + 7] = tint[0];
    array[o + 8] = tint[1];
    array[o + 9] = tint[2];
    array[o + 10] = alpha;
    this.count += 1;
  }

  end() {
    this.points.visible = this.count > 0;
    if (!this.count) return;
    this.sent.send(this.count * FLOATS);
    this.points.geometry.setDrawRange(0, this.count);
  }
}
