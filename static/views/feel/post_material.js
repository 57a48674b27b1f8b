// What a post is painted with: white up to the weight, slate with a pale edge above it, a tick each tenth of a g, and a collar at one g.
// Felt more than the post can show, the white is parted by a slanting break below the top.

import { ShaderMaterial, Vector3 } from '../../vendor/three.module.js';
import { POST_TOP_G, postBreak } from './weights.js';
import { FOGGED, rgb } from '../materials.js';

const [BREAK_FROM_G, BREAK_TO_G] = postBreak(Infinity).map(g => g.toFixed(3));

export function postMaterial(shared, { metres_a_g, wide_m }) {
  return new ShaderMaterial({
    uniforms: {
      ...shared,
      uMetres: { value: metres_a_g },
      uWiden: { value: 1 },
      uCollar: { value: 1 },
      uSlate: { value: new Vector3(...rgb('#56656E')) },
      uTick: { value: new Vector3(...rgb('#AAB4B7')) },
    },
    vertexShader: `
      attribute float collar; attribute vec2 weight;      // g: felt, and the top of the post
      uniform float uMetres, uWiden, uCollar;
      const float halfWide = ${(wide_m / 2).toFixed(4)};
      varying float vG, vFelt, vCollar, vFace, vD, vX;
      void main() {
        float g = mix(position.y * weight.y, 1., collar);
        vec3 p = vec3(position.x * uWiden, g * uMetres + collar * uCollar * position.y, position.z);
        vec4 e = viewMatrix * modelMatrix * instanceMatrix * vec4(p, 1.);
        vX = position.x / halfWide; vG = g; vFelt = weight.x; vCollar = collar; vFace = abs(normal.z) > .5 ? 1. : .78; vD = -e.z;
        gl_Position = projectionMatrix * e;
      }`,
    fragmentShader: `${FOGGED}
      uniform vec3 uSlate, uTick;
      varying float vG, vFelt, vCollar, vFace, vD, vX;
      void main() {
        float f = max(fwidth(vG), 1e-5);
        float above = smoothstep(-.5, .5, (vG - vFelt) / f);
        float off = abs(fract(10. * vG - .5) - .5) / 10.;
        float tick = step(0., vX) * (1. - smoothstep(.4, 1.2, off / max(f, .008))) * clamp(2.4 - 90. * f, 0., 1.);      // none where they would run together
        float parted = vG + .1 * vX;
        float gap = step(${POST_TOP_G.toFixed(1)}, vFelt) * smoothstep(-.5, .5, (parted - ${BREAK_FROM_G}) / f) * smoothstep(-.5, .5, (${BREAK_TO_G} - parted) / f);
        float edge = above * step(1. - 1.5 * fwidth(vX), abs(vX));
        vec3 c = mix(mix(vec3(1.), uSlate, above), uTick, edge);
        c = mix(c, mix(uSlate, uTick, above), tick);
        c = mix(c, uSlate * .5, gap);
        c = mix(c, vec3(.94, .92, .86), step(.5, vCollar));
        gl_FragColor = vec4(fogged(c * vFace, vD), 1.);
      }`,
  });
}
