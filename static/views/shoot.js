// Pictures of the stages at a size of their own, drawn aside: the same scene, camera presets and materials, other eyes, another canvas.
// What is on the page stays as it is. Sizes are drawn px; the layout's px are larger where the picture is, so that lines and
// letters keep their share of it.

import { tr } from '../state/language.js';
import { WebGLRenderTarget } from '../vendor/three.module.js';
import { Aboard } from './aboard.js';
import { DepthReader, depthTarget, NOTHING_M } from './depth.js';
import { spanOf } from './framing.js';
import { halvesOf } from './overlay.js';
import { Outside } from './outside.js';
import { seenThrough } from './own_camera.js';
import { Plate } from './plate.js';
import { nameHalf, standsAside, writeLabels } from './shoot_labels.js';

const LAYOUT_PX = 600; // the shorter side of a picture, as the layout sees it
const SMOOTHED = { samples: 4, most_px: 9e6 };
const LARGEST_CANVAS_PX = 16_384;
const SCENERY = 2; // of the picture's sceneries: the stages have the first two

/** null where the stages are flat plates, without WebGL. */
export function createStudio(stages) {
  if (!stages.picture) return null;
  const { picture, store } = stages;
  const gl = picture.renderer.getContext();
  const largest_px = Math.min(LARGEST_CANVAS_PX, gl.getParameter(gl.MAX_RENDERBUFFER_SIZE), gl.getParameter(gl.MAX_TEXTURE_SIZE));
  const reader = new DepthReader();
  let halves = null;

  function make() {
    const dom = standsAside();
    halves = { aboard: new Aboard(picture.shared, dom.aboard), outside: new Outside(picture.shared, dom.outside) };
    for (const half of Object.values(halves)) {
      picture.scene.add(half.group);
      half.plate = new Plate();
    }
  }

  // `frame` "aboard", "outside" or "both"; `bare`: on nothing; `labels`: written into the picture; `what`: "all", "paths" (what moves and its
  // paths) or "things" (what moves); `only`: the name of the one motion that is drawn; `deep`: with depth() → {width, height, values} in metres, the lowest row first.
  // Gives {canvas, depth, close(), draw(time_s, signal) → promise of it drawn}.
  function shoot({ frame, width, height, bare = false, labels = true, stride_s = null, what = 'all', only = null, deep = false }) {
    if (!halves) make();
    const ratio = Math.max(1, Math.min(width, height) / LAYOUT_PX);
    const rects = halvesOf(width / ratio, height / ratio, { split: 'auto', alone: frame === 'both' ? null : frame });
    const shown = ['aboard', 'outside'].filter(name => rects[name]).map(name => readHalf(halves[name], rects[name], { ratio, stride_s, only, deep }));
    const canvas = Object.assign(document.createElement('canvas'), { width, height });
    const context = canvas.getContext('2d', { willReadFrequently: true });
    const values = deep ? new Float32Array(width * height).fill(NOTHING_M) : null;
    const others = [...stages.every(), ...Object.values(halves)];

    // A picture that was being drawn as the context was lost is drawn again once it is back.
    async function draw(time_s, signal = null) {
      await Promise.all(shown.map(({ half }) => lay(half, time_s)));
      do {
        await stages.lost.over(signal);
        drawAll(time_s);
      } while (picture.lost);
    }
    function drawAll(time_s) {
      context.fillStyle = '#000';
      if (bare) context.clearRect(0, 0, width, height);
      else context.fillRect(0, 0, width, height);
      for (const one of shown) drawOne(one, time_s);
      for (const { half } of shown) half.group.visible = false;
    }
    function drawOne({ half, spot, target }, time_s) {
      half.update(time_s, performance.now(), { time_s });
      const unseen = what === 'all' ? [] : half.besidesWhatMoves(what === 'paths');
      picture.drawAside(half, others, { target, ratio, time_s, bare, unseen, deep });
      if (deep) return layDepth(values, { width, height }, spot, reader.read(picture.renderer, target, half.eye.camera));
      context.putImageData(readBack(picture.renderer, target, bare), spot.x, spot.y);
      if (labels && what === 'all') writeLabels(context, half, { ratio, bare, time_s });
    }
    const close = () => shown.forEach(({ target }) => target.dispose());
    return { canvas, draw, close, depth: () => ({ width, height, values }) };
  }

  // A half read and framed for its rectangle, looking from where the viewer turned the stage's own eye.
  // All that is shown frames it, also where only one motion is drawn: pictures of one scene lie on one another.
  function readHalf(half, rect, { ratio, stride_s, only, deep }) {
    const { model, models } = stages;
    const motions = model.motions.filter(m => !store.view.hidden.includes(m.name));
    const chosen = motions.find(m => m.i === store.view.chosen) ?? null;
    const over = (store.view.compare ?? 'over') === 'over' ? models.filter(one => one !== model) : [];
    nameHalf(half, stages.overlay.halves[half.frame].title);
    half.fitInto(rect);
    half.own = {
      at(time_s) {
        lay(half, time_s);
        return seenThrough(store, half, time_s)?.eye ?? null;
      },
    };
    stages.attend(half, { handles: false });
    half.eye.orbit = { ...stages.halves[half.frame].eye.orbit };
    half.read(model, motions, chosen, stages.seen, stride_s, over);
    half.aimed?.read();
    half.frameUp(stages.clock.time_s);
    if (only !== null) {
      const mine = motions.filter(m => m.name === only);
      half.read(model, mine, mine[0] ?? null, stages.seen, stride_s);
    }
    half.labels.forget(); // where they stood in an earlier picture
    readScenery(half, model);
    const spot = spotOf(rect, ratio);
    return { half, spot, target: deep ? depthTarget(spot.width, spot.height) : targetOf(spot) };
  }

  const lay = (half, time_s) => half.plate.lay(seenThrough(store, half, time_s), half.rect, time_s);

  function readScenery(half, model) {
    const scenery = picture.scenery(SCENERY);
    const span = spanOf(half.eye.rig, half.rect.width / half.rect.height);
    scenery.build(model, half.shown, half.lead, [span, span], half.framed.rigAt ? span : null, half.frame === 'aboard' ? half.middle() : null);
    const { half_m, open } = scenery.habitat;
    Object.assign(half, { scenery, half_m, frontEdge_m: open ? Infinity : half_m * 0.94 });
  }
  return { shoot, largest_px };
}

// whole drawn px
function spotOf({ x, y, width, height }, ratio) {
  const [left, top, right, bottom] = [x, y, x + width, y + height].map(px => Math.round(px * ratio));
  return { x: left, y: top, width: right - left, height: bottom - top };
}

function targetOf({ width, height }) {
  const samples = width * height <= SMOOTHED.most_px ? SMOOTHED.samples : 0;
  return new WebGLRenderTarget(width, height, { samples });
}

// The depths of a half into those of the whole picture; rows go upward in both.
function layDepth(values, { width, height }, spot, depths) {
  for (let y = 0; y < spot.height; y += 1) {
    const to = (height - spot.y - spot.height + y) * width + spot.x;
    values.set(depths.subarray(y * spot.width, (y + 1) * spot.width), to);
  }
}

// The target's pixels as a picture: its lowest row comes first, and its colours are multiplied by their opacity.
function readBack(renderer, target, bare) {
  const { width, height } = target;
  const gl = renderer.getContext();
  const read = new Uint8Array(4 * width * height);
  renderer.readRenderTargetPixels(target, 0, 0, width, height, read);
  if (gl.getError() === gl.OUT_OF_MEMORY) throw new Error(tr('A picture of {width} × {height} has no room here; ask for a smaller one.', { width, height }));
  const image = new ImageData(width, height);
  for (let y = 0; y < height; y += 1) image.data.set(read.subarray(4 * width * (height - 1 - y), 4 * width * (height - y)), 4 * width * y);
  if (bare) divide(image.data);
  return image;
}

function divide(data) {
  for (let i = 0; i < data.length; i += 4) {
    const opacity = data[i + 3];
    if (opacity > 0 && opacity < 255) for (let c = i; c < i + 3; c += 1) data[c] = (data[c] * 255) / opacity;
  }
}
