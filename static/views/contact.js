// Contact darkening and cast shadows, where there is a graphics processor. What stands close together takes the light from each other, so
// that a foot meets its deck and a rail its wall; what stands between a place and the lamp casts a soft shadow there. The depth of what is
// solid is drawn first, at half the size; how much of the sky above each point is open follows from the depths round it (after McGuire and
// others, "The Alchemy screen-space ambient obscurance algorithm", 2011), how much of the lamp from a walk toward it through those depths.
// Both are smoothed where that does not cross an edge, and the materials of what is solid take them up (OPENNESS). Only ever darker.

import {
  Mesh,
  OrthographicCamera,
  PlaneGeometry,
  RedFormat,
  Matrix4,
  Scene,
  ShaderMaterial,
  UnsignedByteType,
  Vector2,
  Vector4,
  WebGLRenderTarget,
} from '../vendor/three.module.js';
import { depthTarget } from './depth.js';

const SHARE = 0.5; // of the stage's pixels, each way
const REACH = { of_span: 0.04, least_m: 0.02 }; // how far off a thing still takes light away
const THROW = { of_span: 0.12, least_m: 2 }; // how far above a place a thing still casts a shadow on it: a person does everywhere
const STRENGTH = 0.9;

/** What shared uniforms hold beside the others where materials take it up. */
export function contactUniforms() {
  return { uOpenness: { value: null }, uOpennessAt: { value: new Vector4(0, 0, 1, 1) }, uOpennessEnd: { value: new Vector2(1, 1) }, uContact: { value: 0 } };
}

export const OPENNESS = `
uniform sampler2D uOpenness; uniform vec4 uOpennessAt; uniform vec2 uOpennessEnd; uniform float uContact;
float openness() {
  return uContact > 0. ? mix(1., texture2D(uOpenness, min((gl_FragCoord.xy - uOpennessAt.xy) * uOpennessAt.zw, uOpennessEnd)).r, uContact) : 1.;
}`;

const VERTEX = 'void main() { gl_Position = vec4(position.xy, 0., 1.); }';
const DEPTHS = `
uniform sampler2D uDepth; uniform vec2 uTexel, uSize, uTan; uniform float uNear, uFar;
float farOff(vec2 px) { float d = texture2D(uDepth, px * uTexel).r; return uNear * uFar / (uFar - d * (uFar - uNear)); }`;

// How much of the lamp is seen from `p`, whose surface looks along `n`. The lamp is as long as the axis (in a room it is a wide one overhead):
// each of 4 × 4 neighbours looks at another part of it and begins its steps elsewhere, always the same ones, and smoothing over 4 × 4 px
// makes a soft edge of that, which does not flicker. What lies before the walk by more than things are thick does not stand in it: who is
// seen before a deck casts nothing on what is far behind. Toward the edges of the picture, beyond which nothing is known, shadows end
// softly, as they do toward the end of the walk. None takes more than LIT's last line of the light: what is painted and written stays seen.
const LIT = `
uniform mat4 uSeen, uStands; uniform vec4 uOver; uniform float uAxis, uThrow;
vec2 pxOf(vec3 p) { return (p.xy / (uTan * -p.z) * .5 + .5) * uSize; }
float two(vec2 k) { return mod(2. * k.x + 3. * k.y, 4.); }
float nth(vec2 px) { vec2 k = mod(floor(px), 4.); return 4. * two(mod(k, 2.)) + two(floor(.5 * k)); } // of 4 × 4 px, near ones far apart
float lit(vec3 p, vec3 n, vec2 px) {
  vec2 stands = (uStands * vec4(p, 1.)).xy;
  vec3 up = mix(vec3(-stands.x, uAxis - stands.y, 0.), uOver.xyz, uOver.w);
  float off = length(up), reach = uOver.w > .5 ? uThrow : min(uThrow, .8 * off);
  if (off < 1e-3) return 1.;
  up /= off;
  float part = (nth(px) - 7.5) / 8., start = mod(7. * nth(px), 16.) / 16.;
  vec3 along = mix(vec3(0., 0., 1.), vec3(1., 0., 0.), uOver.w);
  vec3 way = (uSeen * vec4(normalize(up + .3 * part * along + (.2 * start - .1) * cross(up, along)), 0.)).xyz;
  float faces = smoothstep(.05, .4, dot(n, way));
  if (faces == 0.) return 1.;
  vec3 from = p + n * .003 * -p.z;
  reach = min(reach, way.z > 0. ? -.7 * from.z / way.z : reach);
  vec3 to = from + way * reach;
  vec2 a = pxOf(from), b = pxOf(to);
  float walk_px = length(b - a), share = min(1., .7 * uSize.y / max(walk_px, 1e-3));
  vec2 z = 1. / vec2(-from.z, -to.z);
  float thick = .18 * reach, taken = 0.;
  for (int i = 0; i < 32; i++) {
    float t = (float(i) + start) / 32.; t *= share * mix(t, 1., .4);
    vec2 q = mix(a, b, t), rim = min(q, uSize - q) / uSize;
    if (min(rim.x, rim.y) <= 0.) break;
    float at = 1. / mix(z.x, z.y, t), before = at - farOff(q), gone = t * z.y * at;
    float stands_in = smoothstep(.0015 * at, .004 * at, before) * (1. - smoothstep(.6 * thick, thick, before));
    taken = max(taken, stands_in * (1. - smoothstep(.5, 1., gone / share)) * smoothstep(0., .06, min(rim.x, rim.y)));
  }
  return 1. - .55 * faces * taken;
}`;

const OPEN = `${DEPTHS}
uniform float uReach;
vec3 placeAt(vec2 px) { float z = farOff(px); return vec3((px / uSize * 2. - 1.) * uTan * z, -z); }
vec3 alongIn(vec3 p, vec2 px, vec2 way) { // the surface from here on: toward the neighbour that is on it too
  vec3 on = placeAt(px + way) - p, back = p - placeAt(px - way);
  bool first = dot(px, way) < 1., last = dot(uSize - px, way) < 1.;
  return first || !last && abs(on.z) < abs(back.z) ? on : back;
}
${LIT}
void main() {
  vec2 px = gl_FragCoord.xy;
  vec3 p = placeAt(px);
  if (-p.z > .98 * uFar) { gl_FragColor = vec4(1.); return; }
  vec3 n = normalize(cross(alongIn(p, px, vec2(1., 0.)), alongIn(p, px, vec2(0., 1.))));
  float reach_px = min(uReach / (-p.z * uTan.y) * .5 * uSize.y, .12 * uSize.y);
  float turn = .3926991 * nth(px); // sixteenths
  float taken = 0.;
  for (int i = 0; i < 14; i++) {
    float r = (float(i) + .5) / 14., angle = turn + float(i) * 2.3999632;
    vec2 by = floor(clamp(px + reach_px * r * vec2(cos(angle), sin(angle)), vec2(0.), uSize - 1.)) + .5; // a depth is that of a pixel's middle
    vec3 v = placeAt(by) - p;
    // what bends up by a few degrees is a round deck in flat pieces, and takes nothing
    float off = dot(v, v), near = max(1. - off / (uReach * uReach), 0.);
    taken += near * near * max(dot(v, n) - .08 * sqrt(off) - .0015 * -p.z, 0.) / (off + .0004 * uReach * uReach) * uReach * .35;
  }
  gl_FragColor = vec4(clamp((1. - taken / 14. * 8.) * lit(p, n, px), .25, 1.));
}`;

const SMOOTH = `${DEPTHS}
uniform sampler2D uGiven; uniform float uWay;
void main() {
  float here = farOff(gl_FragCoord.xy), sum = 0., count = 0.;
  for (int x = -2; x < 2; x++) for (int y = -2; y < 2; y++) {
    vec2 px = clamp(gl_FragCoord.xy + vec2(x, y) * uWay, vec2(.5), uSize - .5);
    float same = step(abs(farOff(px) - here), .03 * here);
    sum += same * texture2D(uGiven, px * uTexel).r; count += same;
  }
  gl_FragColor = vec4(count > 0. ? sum / count : 1.);
}`;

export class Contact {
  constructor(shared) {
    this.shared = shared;
    const depth = {
      uDepth: { value: null },
      uTexel: { value: new Vector2() },
      uSize: { value: new Vector2() },
      uTan: { value: new Vector2() },
      uNear: { value: 1 },
      uFar: { value: 2 },
    };
    this.depth = depth;
    this.open = pass(OPEN, {
      ...depth,
      uReach: { value: 1 },
      uThrow: { value: 1 },
      uSeen: { value: new Matrix4() },
      uStands: { value: new Matrix4() },
      uAxis: shared.uAxis,
      uOver: shared.uOver,
    });
    this.smooth = pass(SMOOTH, { ...depth, uGiven: { value: null }, uWay: { value: 1 } });
    this.camera = new OrthographicCamera(-1, 1, 1, -1, 0, 1);
    this.wide = this.high = 0;
  }

  // Room for so many px; it only grows, or two stages would make it anew at every frame.
  reserve(width, height) {
    if (width <= this.wide && height <= this.high) return;
    this.wide = Math.max(width, this.wide);
    this.high = Math.max(height, this.high);
    this.dispose();
    const size = [this.wide, this.high];
    this.solid = depthTarget(...size);
    const grey = () => new WebGLRenderTarget(...size, { format: RedFormat, type: UnsignedByteType, depthBuffer: false });
    this.grey = [grey(), grey()];
    this.depth.uDepth.value = this.solid.depthTexture;
    this.depth.uTexel.value.set(1 / this.wide, 1 / this.high);
    this.shared.uOpenness.value = this.grey[0].texture;
  }

  dispose() {
    this.solid?.depthTexture.dispose();
    for (const target of [this.solid, ...(this.grey ?? [])]) target?.dispose();
  }

  /** Works it out for a scene seen by a camera, to be drawn at (x, y) of its target in so many px; the target set before is set again. */
  prepare(renderer, scene, camera, span_m, { x, y, width, height }) {
    const { shared, depth } = this,
      wide = Math.ceil(width * SHARE),
      high = Math.ceil(height * SHARE),
      target = renderer.getRenderTarget();
    this.reserve(wide, high);
    shared.uContact.value = 0;
    const tan = Math.tan((camera.fov * Math.PI) / 360);
    depth.uSize.value.set(wide, high);
    depth.uTan.value.set(tan * camera.aspect, tan);
    depth.uNear.value = camera.near;
    depth.uFar.value = camera.far;
    const { uReach, uThrow, uSeen, uStands } = this.open.material.uniforms;
    uReach.value = Math.max(REACH.least_m, REACH.of_span * span_m);
    uThrow.value = Math.max(THROW.least_m, THROW.of_span * span_m);
    uSeen.value = camera.matrixWorldInverse;
    uStands.value = camera.matrixWorld;
    this.onto(renderer, this.solid, wide, high, scene, camera);
    this.onto(renderer, this.grey[0], wide, high, this.open.scene, this.camera);
    const { uGiven, uWay } = this.smooth.material.uniforms;
    for (const k of [0, 1]) {
      uGiven.value = this.grey[k].texture;
      uWay.value = 1 - 2 * k; // four are not as many on both sides of one: the second time the other way round
      this.onto(renderer, this.grey[1 - k], wide, high, this.smooth.scene, this.camera);
    }
    renderer.setRenderTarget(target);
    shared.uOpennessAt.value.set(x, y, (wide / width) * (1 / this.wide), (high / height) * (1 / this.high));
    shared.uOpennessEnd.value.set((wide - 0.5) / this.wide, (high - 0.5) / this.high); // beyond lies another stage's
    shared.uContact.value = STRENGTH;
  }

  onto(renderer, target, width, height, scene, camera) {
    target.viewport.set(0, 0, width, height);
    renderer.setRenderTarget(target);
    renderer.clear();
    renderer.render(scene, camera);
  }
}

function pass(fragmentShader, uniforms) {
  const scene = new Scene(),
    material = new ShaderMaterial({ vertexShader: VERTEX, fragmentShader, uniforms, depthTest: false, depthWrite: false });
  const sheet = new Mesh(new PlaneGeometry(2, 2), material);
  sheet.frustumCulled = false;
  scene.add(sheet);
  return { scene, material };
}
