// How far everything in a picture is from the eye, straight ahead, metres: read from the depth that a target was drawn with.

import {
  DepthTexture,
  FloatType,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  PlaneGeometry,
  RGBAFormat,
  Scene,
  ShaderMaterial,
  WebGLRenderTarget,
} from '../vendor/three.module.js';

export const NOTHING_M = 1e10; // where nothing is: a half float's largest is less, a whole one's more

/** A target that remembers the depth it was drawn with. Without smoothing: a depth is that of one thing. */
export function depthTarget(width, height) {
  const depthTexture = new DepthTexture(width, height, FloatType);
  return new WebGLRenderTarget(width, height, { samples: 0, depthTexture });
}

export class DepthReader {
  constructor() {
    this.material = new ShaderMaterial({
      uniforms: { depth: { value: null }, near: { value: 0 }, far: { value: 0 } },
      vertexShader: 'varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }',
      fragmentShader: `
        uniform sampler2D depth; uniform float near, far; varying vec2 at;
        void main() {
          float d = texture2D(depth, at).r;
          gl_FragColor = vec4(d >= 1.0 ? ${NOTHING_M.toExponential()} : near * far / (far - (far - near) * d), 0.0, 0.0, 1.0);
        }`,
      depthTest: false,
      depthWrite: false,
    });
    this.scene = new Scene().add(new Mesh(new PlaneGeometry(2, 2), this.material));
    this.scene.children[0].frustumCulled = false;
    this.eye = new OrthographicCamera();
  }

  // Metres from the camera (width × height), the lowest row first.
  read(renderer, target, camera) {
    const { width, height } = target;
    const measured = new WebGLRenderTarget(width, height, {
      type: FloatType,
      format: RGBAFormat,
      minFilter: NearestFilter,
      magFilter: NearestFilter,
      depthBuffer: false,
    });
    const { uniforms } = this.material;
    uniforms.depth.value = target.depthTexture;
    uniforms.near.value = camera.near;
    uniforms.far.value = camera.far;
    try {
      renderer.setRenderTarget(measured);
      renderer.render(this.scene, this.eye);
      const read = new Float32Array(4 * width * height);
      renderer.readRenderTargetPixels(measured, 0, 0, width, height, read);
      return read.filter((_, i) => i % 4 === 0);
    } finally {
      renderer.setRenderTarget(null);
      measured.dispose();
    }
  }
}
