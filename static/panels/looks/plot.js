// The flat plot: height against distance along the deck, as drawn lines on paper; its table is one key away.

import { motionName } from '../../state/fields.js';
import { groundOf } from '../../state/shapes.js';
import { showQuantity, shownUnit } from '../../state/units.js';
import { at, pathPoints } from '../../time/track.js';
import { h, s, setChildren } from '../shared/dom.js';
import { endWords } from '../shared/ends.js';
import { marker, styleOf } from '../shared/path_key.js';
import { BOX, axes, fit, line } from './plot_frame.js';
import { createTable } from './plot_table.js';

const LETTER_PX = 7; // of a name's letter, about

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
    const ground = answer && groundOf(store.fields, answer.scene.habitat);
    heads = [];
    const shown = (answer?.motions ?? [])
      .map((motion, index) => ({ motion, index }))
      .filter(({ index }) => !view.hidden.includes(motionName(store, index)) && index < store.document.motions.length);
    if (!shown.length) return setChildren(picture, h('p', { class: 'small' }, 'Nothing to plot yet.'));
    const paths = shown
      .map(({ motion, index }) => ({ index, motion, path: pathPoints(motion, answer.grid) }))
      .filter(({ path }) => path.count > 0);
    const plain = view.companion ? paths.map(({ motion }) => motion.companion).filter(companion => companion?.along_m?.length) : [];
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
        {
          class: 'plot',
          width: BOX.width,
          height: BOX.height,
          viewBox: `0 0 ${BOX.width} ${BOX.height}`,
          role: 'img',
          'aria-label': describe(paths, store),
        },
        axes(frame, view.units),
        dots,
        lines,
        heads.map(head => head.element),
        names(paths, frame, store),
      ),
      h(
        'p',
        { class: 'small' },
        `Height above the ${ground.name} by distance ${ground.along}, ${shownUnit('m', view.units)}; spinward to the right.`,
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

// each name at the highest point of its own path, moved down where another already stands
function names(paths, frame, store) {
  const taken = [];
  return paths.map(({ path, index }) => {
    let peak = 0;
    path.height_m.forEach((height, i) => {
      if (height > path.height_m[peak]) peak = i;
    });
    const half = (motionName(store, index).length * LETTER_PX) / 2;
    const x = Math.max(BOX.left + half, Math.min(BOX.width - half, frame.x(path.along_m[peak])));
    let y = Math.max(BOX.top - 2, frame.y(path.height_m[peak]) - 7);
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
  const { along } = groundOf(store.fields, store.answer.scene.habitat);
  const said = paths.map(({ motion, index }) =>
    motion.landing
      ? `${motionName(store, index)} lands ${showQuantity(motion.landing.drift_m, 'm', store.view.units)} ${along}`
      : `${motionName(store, index)} ${endWords(motion, store.fields.kinds[motion.kind].stays)}`,
  );
  return `Height against distance ${along}. ${said.join('; ')}.`;
}
