// The card of a turntable: rings a metre apart (or a tenth), and a line every 15°, the one of along = 0 the strongest.

import { FrontSide, ShaderMaterial, Vector3 } from '../vendor/three.module.js';
import { FOGGED } from './materials.js';
import { rgb } from './styles.js';

export function platterMaterial(shared) {
  return new ShaderMaterial({
    side: FrontSide,
    uniforms: { ...shared, uBase: { value: new Vector3(...rgb('#51514D')) }, uEdge: { value: 1 } },
    vertexShader: `
      varying vec2 vFlat; varying float vD;
      void main() {
        vFlat = uv;
        vec4 e = modelViewMatrix * vec4(position, 1.);
        vD = -e.z;
        gl_Position = projectionMatrix * e;
      }`,
    fragmentShader: `${FOGGED}
      uniform float uLamp, uCool, uStep, uEdge; uniform vec3 uBase;
      varying vec2 vFlat; varying float vD;
      float line(float off, float px, float wide) { return (1. - smoothstep(wide, wide + 1.3 * px, off)) * clamp(wide * 2. / px + .35, 0., 1.); }
      float spaced(float x, float every) { return abs(fract(x / every - .5) - .5) * every; }
      void main() {
        float r = length(vFlat), px = max(length(fwidth(vFlat)) * .7, 1e-6), turn = atan(vFlat.x, -vFlat.y);
        float fine = clamp(1. - px / uStep * 2.4, 0., 1.);
        float lit = .62 + .38 * (1. - r / uEdge);
        vec3 c = uBase * vec3(1., .90, .73) * uLamp * lit * .9 + uBase * vec3(.6, .78, 1.) * .12 * (1. + 2. * uCool);
        vec3 chalk = vec3(.93, .90, .82) * (.30 + .55 * lit);
        float out_m = uEdge - r, inner = smoothstep(.04 * uEdge, .09 * uEdge, r);
        float thin = max(line(spaced(r, uStep), px, .012 * uStep) * fine, line(spaced(turn, .2617994) * r, px, .004 * uEdge) * inner);
        float strong = max(line(spaced(r, 5. * uStep), px, .025 * uStep), line(spaced(turn, .7853982) * r, px, .006 * uEdge) * inner);
        float first = line(abs(turn) * r, px, .01 * uEdge);
        c = mix(c, chalk, clamp(thin * .34 + strong * .4 + first * .5, 0., .85));
        c = mix(c, chalk * 1.08, line(abs(out_m - .03 * uEdge), px, .006 * uEdge) * .75);
        gl_FragColor = vec4(fogged(c, vD), 1.);
      }`,
  });
}
