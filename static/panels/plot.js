// The flat plot: height against distance along the deck, as drawn lines on paper; its table is one key away.

import { motionName } from '../state/fields.js';
import { roundTo } from '../state/scale.js';
import { showQuantity, shownUnit, toShown, formatFigure } from '../state/units.js';
import { at, pathPoints } from '../time/track.js';
import { h, s, setChildren } from './dom.js';
import { marker, styleOf } from './path_key.js';
import { createTable } from './plot_table.js';

const W = 320,
  H = 190,
  LEFT = 30,
  RIGHT = 8,
  TOP = 14,
  BOTTOM = 22,
  MOST = 240;

export function createPlot({ element, store, clock }) {
  let asTable = false,
    heads = [],
    drawn = null;
  const picture = h('div', {});
  const table = createTable({ store });
  const swap = h('button', { type: 'button', class: 'link', onclick: turn }, '');
  element.append(picture, table.element, h('p', { class: 'links' }, swap));

  function turn() {
    asTable = !asTable;
    update();
  }

  function update() {
    picture.hidden = asTable;
    table.element.hidden = !asTable;
    swap.textContent = asTable ? 'Show the plot' : 'Show the table';
    swap.title = 'T';
    if (asTable) return table.update();
    const key = [store.answer, store.view.hidden, store.view.companion, store.view.units];
    if (drawn && key.every((part, i) => part === drawn[i])) return;
    drawn = key;
    draw();
    move();
  }

  function draw() {
    const { answer, view } = store;
    heads = [];
    const shown = (answer?.motions ?? [])
      .map((motion, index) => ({ motion, index }))
      .filter(({ index }) => !view.hidden.includes(motionName(store, index)) && index < store.document.motions.length);
    if (!shown.length) return setChildren(picture, h('p', { class: 'small' }, 'Nothing to plot yet.'));
    const paths = shown.map(({ motion, index }) => ({ index, motion, path: pathPoints(motion, answer.grid) }));
    const plain = view.companion ? paths.map(({ motion }) => motion.companion).filter(companion => companion?.along_m) : [];
    const frame = fit([...paths.map(p => p.path), ...plain]);
    const lines = paths.map(({ path, index }) =>
      s('path', { d: line(path, frame), class: `paper-${styleOf(index).number} curve`, 'stroke-dasharray': styleOf(index).dash }),
    );
    const dots = plain.map(companion => s('path', { d: line(companion, frame), class: 'plain' }));
    heads = paths.map(({ path, index }) => ({ path, frame, element: s('g', {}, marker(index, 0, 0, 4.5, 'paper')) }));
    setChildren(
      picture,
      s(
        'svg',
        { class: 'plot', width: W, height: H, viewBox: `0 0 ${W} ${H}`, role: 'img', 'aria-label': describe(paths, store) },
        axes(frame, view.units),
        dots,
        lines,
        heads.map(head => head.element),
        names(paths, frame, store),
      ),
      h(
        'p',
        { class: 'small' },
        `Height above the deck by distance along it, ${shownUnit('m', view.units)}; spinward to the right.`,
      ),
    );
  }

  function move() {
    for (const { path, frame, element: head } of heads) {
      head.setAttribute(
        'transform',
        `translate(${frame.x(at(path, clock.time_s, 'along_m')).toFixed(1)} ${frame.y(at(path, clock.time_s, 'height_m')).toFixed(1)})`,
      );
    }
  }
  return { update, move, turn };
}

// both axes hold everything drawn, and zero
function fit(paths) {
  let left = 0,
    right = 0,
    top = 0;
  for (const { along_m: along, height_m: height } of paths) {
    for (let i = 0; i < along.length; i += 1) {
      left = Math.min(left, along[i]);
      right = Math.max(right, along[i]);
      top = Math.max(top, height[i]);
    }
  }
  const wide = Math.max(right - left, top * 0.5, 0.1) * 1.06,
    high = Math.max(top, 0.1) * 1.12,
    middle = (left + right) / 2;
  return {
    left: middle - wide / 2,
    right: middle + wide / 2,
    top: high,
    x: along => LEFT + ((along - middle) / wide + 0.5) * (W - LEFT - RIGHT),
    y: height => H - BOTTOM - (height / high) * (H - TOP - BOTTOM),
  };
}

function line({ along_m: along, height_m: height }, frame) {
  const skip = Math.max(1, Math.ceil(along.length / MOST)),
    points = [];
  for (let i = 0; i < along.length; i += 1) {
    if (i % skip === 0 || i === along.length - 1) points.push(`${frame.x(along[i]).toFixed(1)} ${frame.y(height[i]).toFixed(1)}`);
  }
  return `M${points.join('L')}`;
}

function axes(frame, units) {
  const lines = [];
  for (const value of rounds(0, toShown(frame.top, 'm', units), 3)) {
    const y = frame.y(value / toShown(1, 'm', units)).toFixed(1);
    lines.push(
      s('path', { d: `M${LEFT} ${y}H${W - RIGHT}`, class: value === 0 ? 'base' : 'grid' }),
      s('text', { x: LEFT - 6, y: Number(y) + 4, 'text-anchor': 'end' }, label(value)),
    );
  }
  for (const value of rounds(toShown(frame.left, 'm', units), toShown(frame.right, 'm', units), 5)) {
    const x = frame.x(value / toShown(1, 'm', units)).toFixed(1);
    lines.push(
      s('path', { d: `M${x} ${H - BOTTOM}v4`, class: 'base' }),
      s('text', { x, y: H - 5, 'text-anchor': 'middle' }, label(value)),
    );
  }
  return lines;
}

function rounds(low, high, about) {
  const raw = (high - low) / about,
    power = 10 ** Math.floor(Math.log10(raw)),
    step = [1, 2, 5, 10].find(k => k * power >= raw) * power;
  const out = [];
  for (let value = Math.ceil(low / step - 1e-9) * step; value <= high + step * 1e-9; value += step) out.push(roundTo(value, step));
  return out;
}

function label(value) {
  return formatFigure(value, Number.isInteger(value) ? 1 : 0.1);
}

// each name at the highest point of its own path, moved down where another already stands
function names(paths, frame, store) {
  const taken = [];
  return paths.map(({ path, index }) => {
    let peak = 0;
    path.height_m.forEach((height, i) => {
      if (height > path.height_m[peak]) peak = i;
    });
    const x = Math.min(W - 44, Math.max(LEFT + 30, frame.x(path.along_m[peak])));
    let y = Math.max(TOP - 2, frame.y(path.height_m[peak]) - 7);
    while (taken.some(other => Math.abs(other.x - x) < 64 && Math.abs(other.y - y) < 14)) y += 15;
    taken.push({ x, y });
    return s(
      'text',
      { x: x.toFixed(1), y: y.toFixed(1), 'text-anchor': 'middle', class: `paper-${styleOf(index).number} named` },
      motionName(store, index),
    );
  });
}

function describe(paths, store) {
  const said = paths.map(({ motion, index }) =>
    motion.landing
      ? `${motionName(store, index)} lands ${showQuantity(motion.landing.drift_m, 'm', store.view.units)} along the deck`
      : `${motionName(store, index)} does not land`,
  );
  return `Height against distance along the deck. ${said.join('; ')}.`;
}
