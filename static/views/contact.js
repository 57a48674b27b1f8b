// Contact darkening, where there is a graphics processor: what stands close together takes the light from each other, so that a foot
// meets its deck and a rail its wall. The depth of what is solid is drawn first, at half the size; how much of the sky above each point
// is open follows from the depths round it (after McGuire and others, "The Alchemy screen-space ambient obscurance algorithm", 2011),
// is smoothed where it does not cross an edge, and the materials of what is solid take it up (OPENNESS). Only ever darker.

import {
  DepthTexture,
  FloatType,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  PlaneGeometry,
  RedFormat,
  Scene,
  ShaderMaterial,
  UnsignedByteType,
  Vector2,
  Vector4,
  WebGLRenderTarget,
} from '../vendor/three.module.js';

const SHARE = 0.5; // of the stage's pixels, each way
const REACH = { of_span: 0.04, least_m: 0.02 }; // how far off a thing still takes light away
const STRENGTH = 0.9;

/** What shared uniforms hold beside the others where materials take it up. */
export function contactUniforms() {
  return { uOpenness: { value: null }, uOpennessAt: { value: new Vector4(0, 0, 1, 1) }, uContact: { value: 0 } };
}

export const OPENNESS = `
uniform sampler2D uOpenness; uniform vec4 uOpennessAt; uniform float uContact;
float openness() { return uContact > 0. ? mix(1., texture2D(uOpenness, (gl_FragCoord.xy - uOpennessAt.xy) * uOpennessAt.zw).r, uContact) : 1.; }`;

const VERTEX = 'void main() { gl_Position = vec4(position.xy, 0., 1.); }';
const DEPTHS = `
uniform sampler2D uDepth; uniform vec2 uTexel, uSize, uTan; uniform float uNear, uFar;
float farOff(vec2 px) { float d = texture2D(uDepth, px * uTexel).r; return uNear * uFar / (uFar - d * (uFar - uNear)); }`;

const OPEN = `${DEPTHS}
uniform float uReach;
vec3 placeAt(vec2 px) { float z = farOff(px); return vec3((px / uSize * 2. - 1.) * uTan * z, -z); }
void main() {
  vec2 px = gl_FragCoord.xy;
  vec3 p = placeAt(px);
  if (-p.z > .98 * uFar) { gl_FragColor = vec4(1.); return; }
  vec3 n = normalize(cross(dFdx(p), dFdy(p)));
  float reach_px = min(uReach / (-p.z * uTan.y) * .5 * uSize.y, .12 * uSize.y);
  float turn = 6.2831853 * fract(52.9829189 * fract(dot(floor(px), vec2(.06711056, .00583715))));
  float taken = 0.;
  for (int i = 0; i < 14; i++) {
    float r = (float(i) + .5) / 14., angle = turn + float(i) * 2.3999632;
    vec3 v = placeAt(clamp(px + reach_px * r * vec2(cos(angle), sin(angle)), vec2(.5), uSize - .5)) - p;
    float off = dot(v, v), near = max(1. - off / (uReach * uReach), 0.);
    taken += near * near * max(dot(v, n) - .0015 * -p.z, 0.) / (off + .0004 * uReach * uReach) * uReach * .35;
  }
  gl_FragColor = vec4(clamp(1. - taken / 14. * 8., .25, 1.));
}`;

const SMOOTH = `${DEPTHS}
uniform sampler2D uGiven;
void main() {
  float here = farOff(gl_FragCoord.xy), sum = 0., count = 0.;
  for (int x = -2; x < 2; x++) for (int y = -2; y < 2; y++) {
    vec2 px = clamp(gl_FragCoord.xy + vec2(x, y) + .5, vec2(.5), uSize - .5);
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
    this.open = pass(OPEN, { ...depth, uReach: { value: 1 } });
    this.smooth = pass(SMOOTH, { ...depth, uGiven: { value: null } });
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
    this.solid = new WebGLRenderTarget(...size, { depthTexture: new DepthTexture(...size, FloatType) });
    const grey = filters => new WebGLRenderTarget(...size, { format: RedFormat, type: UnsignedByteType, depthBuffer: false, ...filters });
    this.rough = grey({ minFilter: NearestFilter, magFilter: NearestFilter });
    this.done = grey();
    this.depth.uDepth.value = this.solid.depthTexture;
    this.depth.uTexel.value.set(1 / this.wide, 1 / this.high);
    this.smooth.material.uniforms.uGiven.value = this.rough.texture;
    this.shared.uOpenness.value = this.done.texture;
  }

  dispose() {
    this.solid?.depthTexture.dispose();
    for (const target of [this.solid, this.rough, this.done]) target?.dispose();
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
    this.open.material.uniforms.uReach.value = Math.max(REACH.least_m, REACH.of_span * span_m);
    this.onto(renderer, this.solid, wide, high, scene, camera);
    this.onto(renderer, this.rough, wide, high, this.open.scene, this.camera);
    this.onto(renderer, this.done, wide, high, this.smooth.scene, this.camera);
    renderer.setRenderTarget(target);
    shared.uOpennessAt.value.set(x, y, (wide / width) * (1 / this.wide), (high / height) * (1 / this.high));
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
