// {fields, opened: [what opening each scene to start from gives], stages: [[width, height, type]…], shares} on standard input: both stages of
// each scene as the page sets them out, in stage areas of those sizes and types, at those shares of its time; elements that only count what is
// read of them stand in for the page's. On standard output, of each scene, stage, area and time, what the tests ask.

import { readFileSync } from 'node:fs';

let reads = 0;
let inks = []; // classes of what was drawn on a flat plate
let grown = 1;
const inked = () => new Proxy({ measureText: text => ({ width: 7.4 * grown * text.length }) }, { get: (of, key) => of[key] ?? (() => {}), set: () => true });

function element() {
  const own = { style: {}, dataset: {}, children: [], hidden: false, textContent: '' };
  const layout = () => {
    reads += 1;
    return 100;
  };
  return Object.defineProperties(own, {
    offsetWidth: { get: layout },
    offsetHeight: { get: layout },
    clientWidth: { get: layout },
    append: { value: (...parts) => own.children.push(...parts) },
    replaceChildren: { value: () => {} },
    setAttribute: {
      value: (name, value) => {
        if (name === 'class') inks.push(value);
      },
    },
    addEventListener: { value: () => {} },
    getContext: { value: inked },
    getBoundingClientRect: { value: () => (layout(), { left: 0, top: 0, width: 100, height: 20 }) },
    getAttribute: { value: () => null },
    classList: { value: { add: () => {}, toggle: () => {} } },
  });
}
globalThis.document = { createElement: element, createElementNS: element };
globalThis.window = { devicePixelRatio: 1 };
globalThis.getComputedStyle = () => ({ fontSize: `${14 * grown}px`, lineHeight: `${18 * grown}px`, fontFamily: 'sans-serif' });

const { decodeAnswer } = await import('../static/api/client.js');
const { Aboard } = await import('../static/views/aboard.js');
const { LinePlate } = await import('../static/views/line_plate.js');
const { readModel, readOthers, bodyAt, deckAt, standing } = await import('../static/views/model.js');
const { Outside } = await import('../static/views/outside.js');
const { halvesOf } = await import('../static/views/overlay.js');
const { sharedUniforms } = await import('../static/views/materials.js');
const { Spots } = await import('../static/views/spots.js');

const { fields, opened, stages, shares } = JSON.parse(readFileSync(0, 'utf8'));
const BUTTONS_PX = 262;
const VIEW = {
  place: 2, presets: { aboard: 'b', outside: 'd' }, arrows: { velocity: true, centrifugal: true, coriolis: true }, companion: true, beads_s: 0.25,
  measure: 'dimensions', compare: 'over', units: 'si', hidden: [], chosen: 0,
}; // biome-ignore format: a view
let weighed = 0;
const { weigh } = Spots.prototype;
Spots.prototype.weigh = function (...args) {
  weighed += 1;
  return weigh.apply(this, args);
};

function halfOf(Kind, frame) {
  const dom = { frame, box: element(), labels: element(), view: element(), title: element(), legend: element() };
  dom.corners = () => [
    { x: 22, y: 14, w: 190 * grown, h: 28 * grown },
    { x: dom.width - BUTTONS_PX * grown - 18, y: 14, w: BUTTONS_PX * grown, h: 28 * grown },
  ];
  return new Kind(sharedUniforms(), dom);
}
const halves = { aboard: halfOf(Aboard, 'aboard'), outside: halfOf(Outside, 'outside') };

const told = opened.map(({ trace, mesh }) => {
  const answer = { ...decodeAnswer(trace), drawn: mesh.habitats, craft: mesh.craft };
  const models = [readModel(answer, fields), ...readOthers(answer, fields)];
  const rows = stages.flatMap(([width, height, type]) => {
    grown = type;
    const rects = halvesOf(width, height, { split: 'auto', alone: null });
    return Object.values(halves).flatMap(half => seen(half, rects[half.frame], models, type));
  });
  return { rows, plates: ['aboard', 'outside'].map(frame => plate(frame, models[0])) };
});
process.stdout.write(JSON.stringify(told));

function seen(half, rect, [model, ...others], type) {
  const shown = model.motions;
  half.dom.width = rect.width;
  half.fitInto(rect);
  half.labels.forget();
  half.read(model, shown, shown[0] ?? null, VIEW, null, others);
  Object.assign(half, { half_m: model.shape.half_m ?? 20, frontEdge_m: 20 });
  half.frameUp(0);
  const over_s = Math.max(0.1, ...shown.map(m => m.over_s));
  return shares.map(share => {
    const time_s = share * over_s;
    [reads, weighed] = [0, 0];
    half.update(time_s, 0, { time_s });
    half.placeLabels();
    const labels = [...half.labels.pool].filter(([, label]) => !label.hidden);
    const rectOf = label => ({ x: label.x, y: label.y, w: label.size[0], h: label.size[1] });
    const fixed = [...half.taken, ...half.alsoTaken()];
    const rects = [...labels.map(([key, label]) => [key, rectOf(label)]), ...fixed.map((one, k) => [`fixed ${k}`, one])];
    return {
      frame: half.frame, width: rect.width, height: rect.height, type, time_s, reads, weighed,
      overlaps: rects.flatMap(([a, r], i) => rects.slice(i + 1).flatMap(([b, s], k) => (meet(r, s) && (i < labels.length || k < 0) ? [`${a} × ${b}`] : []))),
      off: labels.filter(([, label]) => !inside(rectOf(label), rect)).map(([key]) => key),
      labels: labels.map(([key]) => key),
      follows: Boolean(half.framed.rigAt), inset: Boolean(half.around?.spot), covered: half.around?.spot ? coveredBy(half.around.spot, half, time_s) : 0, tall: 1.75 / half.eye.metresPerPx,
      unseen: shown.filter(m => m.path.count && time_s >= m.starts_s && !onPicture(half, bodyAt(model, m, half.frame, time_s, {}), rect)).map(m => m.i),
      unframed: half.frame === 'aboard' ? shown.filter(m => !framed(half, m.lines.aboard.points, rect)).map(m => m.i) : [],
    }; // biome-ignore format: one row
  });
}

// How many people and bodies lie under it.
function coveredBy({ x, y, w, h }, half, time_s) {
  const { model, shown } = half;
  const people = standing(shown, model.ground).map(({ along_m, axial_m, floor }) => deckAt(model, half.frame, along_m, 0.9, axial_m, time_s, {}, floor));
  const bodies = shown.filter(m => m.path.count && time_s >= m.starts_s).map(m => bodyAt(model, m, half.frame, time_s, {}));
  const under = px => px && px[0] > x && px[0] < x + w && px[1] > y && px[1] < y + h;
  return [...people, ...bodies].filter(point => under(half.project(point))).length;
}

// The classes of what is drawn with the motions on a flat plate, half way.
function plate(frame, model) {
  const flat = new LinePlate(element(), frame, { top: 50, side: 36, foot: 44, arrow: 68, highest: 16, text: 14, paper: '#EEEFE9', named: true });
  flat.fitInto({ width: 1016, height: 370 });
  flat.read(model, model.motions, VIEW);
  inks = [];
  flat.draw(0.5 * Math.max(0.1, ...model.motions.map(m => m.over_s)));
  return inks;
}

function meet(a, b) {
  return a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h;
}

function inside({ x, y, w, h }, { width, height }) {
  return x >= 0 && y >= 0 && x + w <= width && y + h <= height;
}

function onPicture(half, point, { width, height }) {
  const px = half.project(point);
  return Boolean(px) && px[0] >= 0 && px[1] >= 0 && px[0] <= width && px[1] <= height;
}

function framed(half, points, rect) {
  for (let i = 0; i < points.length; i += 3) if (!onPicture(half, { x: points[i], y: points[i + 1], z: points[i + 2] }, rect)) return false;
  return true;
}
