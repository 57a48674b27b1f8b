// The plate of a camera of one's own, in a stage's picture: over the habitat, the night and the stars, at its opacity, and behind all that moves, its
// paths and people.

import {
  CanvasTexture,
  CustomBlending,
  Mesh,
  OneFactor,
  OneMinusSrcAlphaFactor,
  PlaneGeometry,
  Scene,
  ShaderMaterial,
  SrcAlphaFactor,
  Vector4,
} from '../vendor/three.module.js';

const MOST_PX = 4096; // a side, of what is kept of a frame
const RATE = 24; // of pictures that do not tell theirs

// colours as they are: nothing drawn here is made linear
const VERTEX = `uniform vec4 uRect; varying vec2 vUv;
void main() { vUv = uv; gl_Position = vec4(uRect.xy + uv * uRect.zw, 0.0, 1.0); }`;
const FRAGMENT = `uniform sampler2D uFrame; uniform float uOpacity; varying vec2 vUv;
void main() { gl_FragColor = vec4(texture2D(uFrame, vUv).rgb, uOpacity); }`;

/** Which frame of pictures belongs to a time, from 0; time 0 is the first. */
export function frameAt({ count, rate }, time_s) {
  return Math.max(0, Math.min((count ?? 1) - 1, Math.round(time_s * (rate ?? RATE))));
}

export class Plate {
  /** changed(): another frame is there to be drawn. */
  constructor(changed = () => {}) {
    Object.assign(this, { changed, shown: false, scene: null, wanted: null, ready: Promise.resolve() });
  }

  /** `seen`: the camera looked through and where its picture lies in the stage's `rect`, or null. Gives a promise of its frame. */
  lay(seen, rect, time_s) {
    const { plate: source, opacity } = seen?.camera ?? {};
    this.shown = Boolean(source) && opacity > 0;
    if (!this.shown) return this.ready;
    this.fill(source, frameAt(source, time_s));
    const { x, y, width, height } = seen.picture,
      { uRect, uOpacity } = this.material.uniforms;
    uRect.value.set((2 * x) / rect.width - 1, 1 - (2 * (y + height)) / rect.height, (2 * width) / rect.width, (2 * height) / rect.height);
    uOpacity.value = opacity;
    return this.ready;
  }

  fill(source, frame) {
    if (this.wanted?.source === source && this.wanted.frame === frame) return;
    this.wanted = { source, frame };
    if (this.size !== `${source.width} ${source.height}`) this.make(source);
    const { context, texture, wanted } = this;
    this.ready = this.ready.then(async () => {
      if (this.wanted !== wanted) return; // another one is wanted by now
      await source.draw(context, frame).catch(() => {}); // what cannot be read stays as it was
      texture.needsUpdate = true;
      this.changed();
    });
  }

  make({ width, height }) {
    const share = Math.min(1, MOST_PX / Math.max(width, height)),
      canvas = Object.assign(document.createElement('canvas'), { width: Math.round(width * share), height: Math.round(height * share) });
    this.texture?.dispose();
    this.size = `${width} ${height}`;
    this.context = canvas.getContext('2d');
    this.context.scale(share, share);
    this.texture = new CanvasTexture(canvas);
    this.texture.generateMipmaps = false;
    this.material ??= this.dress();
    this.material.uniforms.uFrame.value = this.texture;
  }

  dress() {
    const material = new ShaderMaterial({
      vertexShader: VERTEX,
      fragmentShader: FRAGMENT,
      uniforms: { uFrame: { value: null }, uOpacity: { value: 1 }, uRect: { value: new Vector4() } },
      depthTest: false,
      depthWrite: false,
      blending: CustomBlending,
      blendSrc: SrcAlphaFactor,
      blendDst: OneMinusSrcAlphaFactor,
      blendSrcAlpha: OneFactor,
      blendDstAlpha: OneMinusSrcAlphaFactor,
    });
    const mesh = new Mesh(new PlaneGeometry(), material);
    mesh.frustumCulled = false;
    mesh.layers.enableAll(); // whatever the eye looks for
    this.scene = new Scene();
    this.scene.add(mesh);
    return material;
  }
}
