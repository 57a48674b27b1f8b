// Balls that are seen to turn: quartered light and dark, with a spot at one pole, each turned by its own quaternion in the
// fragment. Made when the first one is wanted; a ball that does not turn stays a plain dot.

import { BufferGeometry, InterleavedBuffer, InterleavedBufferAttribute, Points, ShaderMaterial, DynamicDrawUsage } from '../vendor/three.module.js';

const FLOATS = 12; // position, size px, diameter m, red, green, blue, quaternion x y z w
const MOST = 100;
const LEAST_PX = 15;

const VERTEX = `
  attribute vec2 look; attribute vec3 tint; attribute vec4 spun;
  uniform float uDpr, uPx, uNear;
  varying vec3 vTint; varying float vSize; varying mat3 vInto;      // from the eye's axes into the ball's own
  vec3 turn(vec4 q, vec3 v) { return v + 2. * cross(q.xyz, cross(q.xyz, v) + q.w * v); }
  void main() {
    vec4 e = modelViewMatrix * vec4(position, 1.);
    vec4 c = projectionMatrix * e;
    vSize = max(look.x * uDpr, look.y * uPx / max(c.w, uNear)) + 2.;
    float pull = 1.5 * vSize * max(c.w, uNear) / uPx + .02;
    vec4 q = projectionMatrix * vec4(e.xyz * (1. - min(pull / max(length(e.xyz), 1e-6), .5)), 1.);
    c.z = q.z / q.w * c.w;
    mat3 seen = mat3(viewMatrix);
    vInto = transpose(mat3(seen * turn(spun, vec3(1., 0., 0.)), seen * turn(spun, vec3(0., 1., 0.)), seen * turn(spun, vec3(0., 0., 1.))));
    vTint = tint;
    gl_PointSize = vSize;
    gl_Position = c;
  }`;

const FRAGMENT = `
  uniform vec3 uNight;
  varying vec3 vTint; varying float vSize; varying mat3 vInto;
  void main() {
    vec2 q = (gl_PointCoord * 2. - 1.) * vSize * .5; q.y = -q.y;
    float r = vSize * .5 - 1., d = length(q) - r;
    vec2 n = q / max(r, 1.);
    vec3 seen = vec3(n, sqrt(max(0., 1. - dot(n, n))));
    vec3 b = vInto * seen;
    float soft = 1.2 / max(r, 1.);
    float quarter = mix(-1., 1., smoothstep(-soft, soft, b.x)) * mix(-1., 1., smoothstep(-soft, soft, b.y));
    float dark = .5 - .5 * quarter;
    dark = mix(dark, 0., smoothstep(.86 - soft, .86 + soft, b.z));
    vec3 c = mix(vTint, mix(uNight, vTint, .36), dark) * (.62 + .45 * max(0., dot(seen, vec3(-.25, .72, .64))));
    c = mix(c, vTint, smoothstep(-1.9, -.9, d) * .85);      // its outline keeps the path's colour
    float a = 1. - smoothstep(-.7, .5, d);
    if (a < .01) discard;
    gl_FragColor = vec4(c, a);
  }`;

export class Balls {
  constructor(shared, group) {
    Object.assign(this, { shared, group, points: null, count: 0 });
  }

  read(shown) {
    if (!this.points && shown.some(m => m.path.attitude_wxyz && m.stage.mover !== 'cup')) this.make();
  }

  make() {
    this.buffer = new InterleavedBuffer(new Float32Array(MOST * FLOATS), FLOATS).setUsage(DynamicDrawUsage);
    const geometry = new BufferGeometry();
    for (const [name, size, offset] of [
      ['position', 3, 0],
      ['look', 2, 3],
      ['tint', 3, 5],
      ['spun', 4, 8],
    ])
      geometry.setAttribute(name, new InterleavedBufferAttribute(this.buffer, size, offset));
    this.points = new Points(
      geometry,
      new ShaderMaterial({ transparent: true, depthWrite: false, vertexShader: VERTEX, fragmentShader: FRAGMENT, uniforms: { ...this.shared } }),
    );
    this.points.frustumCulled = false;
    this.points.renderOrder = 8;
    this.group.add(this.points);
  }

  begin() {
    this.count = 0;
  }

  // `attitude` (w, x, y, z) in the server's turning frame; drawn with the habitat turned by `turn_rad`.
  add(p, { size, diameter, tint }, [w, x, y, z], turn_rad) {
    if (this.count === MOST) return;
    const spun = turnedBy(turn_rad, [y, -x, z, w]);
    this.buffer.array.set([p.x, p.y, p.z, Math.max(size, LEAST_PX), diameter, ...tint, ...spun], this.count * FLOATS);
    this.count += 1;
  }

  end() {
    if (!this.points) return;
    this.buffer.needsUpdate = true;
    this.points.geometry.setDrawRange(0, this.count);
    this.points.visible = this.count > 0;
  }
}

// A turn about the axis put before a quaternion (x, y, z, w), made a unit one again.
function turnedBy(angle, [x, y, z, w]) {
  const [s, c] = [Math.sin(angle / 2), Math.cos(angle / 2)];
  const q = [c * x - s * y, c * y + s * x, c * z + s * w, c * w - s * z];
  const long = Math.hypot(...q) || 1;
  return q.map(v => v / long);
}
