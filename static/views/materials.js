// Light and matter of the model box. Colours are written to the screen as they are (no tone mapping): the lamp on the axis
// shines "down" everywhere, cool starlight comes from the upper left.

import { DoubleSide, FrontSide, ShaderMaterial, Vector2, Vector3, Vector4, AdditiveBlending, NormalBlending } from '../vendor/three.module.js';
import { OPENNESS, contactUniforms } from './contact.js';

export const STARLIGHT = [-0.45, 0.5, 0.75];

// Set anew before each stage is drawn; all materials of one kind read the same ones.
// `fine`: what is solid darkens where it meets.
export function sharedUniforms(fine = false) {
  return {
    ...(fine ? contactUniforms() : {}),
    uAxis: { value: 1 }, // radius: the axis is at (0, uAxis)
    uOver: { value: new Vector4(0, 0, 1, 0) }, // where light falls from when its last part is 1 (a room), else from the axis
    uStar: { value: new Vector3(...STARLIGHT) }, // where starlight comes from
    uFog: { value: new Vector2(30, 95) },
    uNight: { value: new Vector3(...rgb('#0A1016')) },
    uLamp: { value: 1 },
    uCool: { value: 0 },
    uPool: { value: new Vector2(0, 11) }, // along, width of the pool of light
    uStep: { value: 1 }, // metres between thin grid lines
    uHalf: { value: new Vector2(1, 1) }, // half the viewport, px
    uPx: { value: 1 }, // px of one metre at one metre
    uNow: { value: 0 },
    uNear: { value: 0.1 },
    uDpr: { value: 1 }, // drawn px of one px on the page
  };
}

const opennessOf = shared => (shared.uContact ? OPENNESS : 'float openness() { return 1.; }');

export const FOGGED = `
uniform vec2 uFog; uniform vec3 uNight;
vec3 fogged(vec3 c, float d) { return mix(c, uNight, smoothstep(uFog.x, uFog.y, d) * .88); }`;

// What light does to the surface besides: metal brushed along the way it turns draws the starlight out into a streak, and mirrors more
// at a slant; the nap of cloth, or of turned wood, lights up where it is seen edge on.
const SHEEN = {
  card: '',
  metal: `
        vec3 eye = normalize(cameraPosition - vP), star = normalize(uStar);
        vec2 off = vP.xy - vec2(0., uAxis);
        float along = dot(vec3(-off.y, off.x, 0.) / max(length(off), 1e-3), normalize(star + eye));
        float streak = pow(max(1. - along * along, 0.), 18.) * max(dot(n, star), 0.);
        float slant = pow(1. - max(dot(n, eye), 0.), 4.);
        c = c * .88 + uColor * blue * (.34 * streak * (.4 + .6 * uCool) + .30 * slant * (.35 + .65 * cool));`,
  cloth: `
        float edge = 1. - max(dot(n, normalize(cameraPosition - vP)), 0.);
        c = c * (1. - .18 * (1. - edge)) + uColor * warm * .30 * edge * edge * edge * (.35 + .65 * wrap);`,
};

export function cardMaterial(shared, color, { side = FrontSide, alpha = 1, glow = 0, fill = 0, matter = 'card' } = {}) {
  return new ShaderMaterial({
    side: side === 'both' ? DoubleSide : side,
    transparent: alpha < 1,
    depthWrite: alpha === 1,
    uniforms: { ...shared, uColor: { value: new Vector3(...rgb(color)) }, uAlpha: { value: alpha }, uGlow: { value: glow }, uFill: { value: fill } },
    vertexShader: `
      varying vec3 vP, vN; varying float vD;
      void main() {
        vec4 w = modelMatrix * vec4(position, 1.);
        vec4 e = viewMatrix * w;
        vP = w.xyz; vN = mat3(modelMatrix) * normal; vD = -e.z;
        gl_Position = projectionMatrix * e;
      }`,
    fragmentShader: `${FOGGED}${alpha < 1 ? '' : opennessOf(shared)}
      uniform vec3 uColor, uStar; uniform vec4 uOver; uniform float uAlpha, uGlow, uLamp, uCool, uFill, uAxis;
      varying vec3 vP, vN; varying float vD;
      void main() {
        vec3 n = normalize(gl_FrontFacing ? vN : -vN);
        vec3 up = mix(vec3(vec2(0., uAxis) - vP.xy, 0.), uOver.xyz, uOver.w);
        float fall = dot(n, up / max(length(up), 1e-3));
        float lamp = max(fall, 0.), wrap = .5 + .5 * fall;
        float cool = max(dot(n, normalize(uStar)), 0.);
        float key = max(dot(n, normalize(vec3(.35, .55, .75))), 0.);
        vec3 warm = vec3(1., .90, .74), blue = vec3(.72, .85, 1.);
        vec3 c = uColor * (warm * uLamp * (.34 * wrap + .62 * lamp) + warm * uFill * (.30 + .62 * key)
                 + blue * (.13 + .5 * cool * (.3 + uCool) * (1. - uFill)));${SHEEN[matter]}${alpha < 1 ? '' : '\n        c *= openness();'}
        gl_FragColor = vec4(fogged(mix(c, uColor, uGlow), vD), uAlpha);
      }`,
  });
}

// The deck: matte card under a pool of lamplight, with a metre grid that fades where a line would be finer than a pixel.
export function deckMaterial(shared, { dim = 1, side = FrontSide } = {}) {
  return new ShaderMaterial({
    side,
    uniforms: { ...shared, uBase: { value: new Vector3(...rgb('#51514D')) }, uEdge: { value: 7 }, uOpen: { value: 0 }, uDim: { value: dim } },
    vertexShader: `
      attribute vec2 deck;
      varying vec2 vDeck; varying float vD;
      void main() {
        vDeck = deck;
        vec4 e = modelViewMatrix * vec4(position, 1.);
        vD = -e.z;
        gl_Position = projectionMatrix * e;
      }`,
    fragmentShader: `${FOGGED}${opennessOf(shared)}
      uniform float uLamp, uCool, uStep, uEdge, uOpen, uDim; uniform vec2 uPool; uniform vec3 uBase;
      varying vec2 vDeck; varying float vD;
      float ruled(float x, float f, float wide) {
        float d = abs(fract(x - .5) - .5);
        f = min(f, .5);
        return (1. - smoothstep(wide, wide + 1.2 * f, d)) * clamp(1.53 - f * 5.9, 0., 1.) * clamp(wide * 2. / max(f, 1e-4) + .35, 0., 1.);
      }
      void main() {
        vec2 p = vDeck / uStep, f = fwidth(p);
        float lit = .34 + .66 * exp(-pow((vDeck.x - uPool.x) / uPool.y, 2.));
        float inward = uEdge - abs(vDeck.y);
        float edge = mix(smoothstep(-.05, .4, inward / uEdge), 1., uOpen);
        lit *= mix(.62, 1., edge);
        vec3 c = uBase * vec3(1., .90, .73) * uLamp * lit * .86 + uBase * vec3(.6, .78, 1.) * .12 * (1. + 2. * uCool);
        float deep = 1. - .62 * min(vD / (.6 * uFog.y), 1.);         // lines far off are fainter
        vec3 chalk = vec3(.93, .90, .82) * (.30 + .55 * lit);
        float thin = max(ruled(p.x, f.x, .012), ruled(p.y, f.y, .012));
        float strong = max(ruled(p.x / 5., f.x / 5., .005), uOpen * ruled(p.y / 5., f.y / 5., .005));
        c = mix(c * openness(), chalk, clamp(thin * .34 * deep * deep + strong * .55 * deep, 0., .8) * max(step(0., inward), uOpen));
        float fz = fwidth(vDeck.y);
        float border = 1. - smoothstep(.05, .05 + fz, abs(inward - uEdge * .15));
        c = mix(c, chalk * 1.08, border * .75 * clamp(1. - fz * 3., 0., 1.) * (1. - uOpen));
        gl_FragColor = vec4(fogged(c * uDim, vD), 1.);
      }`,
  });
}

// A soft round patch: a shadow lying on the deck (shape in its own plane), or a glow turned to the eye.
export function blobMaterial(shared, color, { opacity = 1, core = 0.3, glow = false, power = 1 } = {}) {
  return new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    depthTest: true,
    side: DoubleSide,
    blending: glow ? AdditiveBlending : NormalBlending,
    uniforms: { ...shared, uColor: { value: new Vector3(...rgb(color)) }, uOpacity: { value: opacity }, uCore: { value: core }, uPower: { value: power } },
    vertexShader: `
      attribute float strength;
      varying vec2 vUv; varying float vD, vStrength;
      void main() {
        vUv = uv * 2. - 1.; vStrength = strength;
        ${
          glow
            ? `vec4 e = modelViewMatrix * vec4(0., 0., 0., 1.);
        e.xy += position.xy * length(modelMatrix[0].xyz);`
            : 'vec4 e = modelViewMatrix * vec4(position, 1.);'
        }
        vD = -e.z;
        gl_Position = projectionMatrix * e;
      }`,
    fragmentShader: `
      uniform vec3 uColor; uniform float uOpacity, uCore, uPower; uniform vec2 uFog;
      varying vec2 vUv; varying float vD, vStrength;
      void main() {
        float r = length(vUv);
        if (r > 1.) discard;
        float a = pow(1. - smoothstep(uCore, 1., r), uPower) * uOpacity * vStrength;
        gl_FragColor = vec4(uColor, a${glow ? '' : ' * (1. - .8 * smoothstep(uFog.x, uFog.y, vD))'});
      }`,
  });
}

// The card of a turntable: rings a metre apart (or a tenth), and a line every 15°, the one of along = 0 the strongest.

export function turntableMaterial(shared) {
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
    fragmentShader: `${FOGGED}${opennessOf(shared)}
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
        gl_FragColor = vec4(fogged(c * openness(), vD), 1.);
      }`,
  });
}

// What all stages share: the colour of what is written and measured.

export const BONE = '#EFEADC';

export function rgb(hex) {
  const c = parseInt(hex.slice(1), 16);
  return [(c >> 16) / 255, ((c >> 8) & 255) / 255, (c & 255) / 255];
}
