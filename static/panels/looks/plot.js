// The flat plot: height against distance along the ground, as the server draws it, and over it where each motion is at the clock; its
// table is one key away.

import { tr, trAs, trLater } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { createNewest } from '../../state/newest.js';
import { clamp } from '../../state/scale.js';
import { groundKey, groundOf } from '../../state/shapes.js';
import { showQuantity, shownUnit } from '../../state/units.js';
import { whichWay } from '../../state/ways.js';
import { at, pathPoints } from '../../time/track.js';
import { h, s, setChildren, parseDrawing } from '../shared/dom.js';
import { drawnScale } from '../shared/large.js';
import { lastSeen, marker } from '../shared/path_key.js';

const REST_MS = 200; // after the last answer: while a dial is dragged the plot waits
const WIDTH_PX = { least: 240, first: 320, most: 1200 }; // that the server draws

export function createPlot({ element, store, clock, client, large }) {
  let asTable = false,
    heads = [],
    drawn = null,
    rest = null,
    request = null,
    width = WIDTH_PX.first;
  const picture = h('div', { class: 'plot-picture' });
  const table = createTable({ store });
  const swap = h('button', { type: 'button', class: 'link', onclick: turn }, '');
  const enlarge = large.button({ place: 3, title: () => tr('Height {along}', { along: groundOf(store.fields, store.document.habitat).along }), part: picture });
  element.append(picture, table.element, h('p', { class: 'links' }, swap, enlarge));
  new ResizeObserver(([entry]) => {
    const room = Math.round(entry.contentRect.width / drawnScale(picture));
    if (!room || room === width) return;
    width = clamp(room, WIDTH_PX.least, WIDTH_PX.most);
    if (drawn) update();
  }).observe(picture);

  const { want, drop } = createNewest({
    request: () => request,
    ask: ({ body, options }, signal) => client.plot(body, { ...options, signal }),
    answered: show,
    failed: problem => {
      drawn = null; // with the next answer it is asked again
      setChildren(picture, h('p', { class: 'small' }, tr('The plot could not be drawn: {problem}', { problem: problem.message })));
    },
  });

  function turn() {
    asTable = !asTable;
    update();
  }

  function update() {
    picture.hidden = enlarge.hidden = asTable;
    table.element.hidden = !asTable;
    swap.textContent = asTable ? tr('Show the plot') : tr('Show the table');
    swap.title = 'T';
    if (asTable) return table.update();
    const key = [store.answer, store.view.hidden, store.view.companion, store.view.units, width];
    if (drawn && key.every((part, i) => part === drawn[i])) return;
    drawn = key;
    clearTimeout(rest);
    if (shownMotions().length) rest = setTimeout(ask, REST_MS);
    else showNothing();
  }

  function shownMotions() {
    return (store.answer?.motions ?? [])
      .map((motion, index) => ({ motion, index }))
      .filter(({ index }) => !store.view.hidden.includes(motionName(store, index)) && index < store.document.motions.length);
  }

  function ask() {
    const { answer, view } = store,
      shown = shownMotions(),
      motions = shown.map(({ index }) => answer.scene.motions[index].name);
    request = {
      answer,
      shown,
      body: { scene: { ...answer.scene, compare: [] }, export: { motions } },
      options: { width, plain: view.companion, units: view.units },
    };
    if (!picture.hasChildNodes()) setChildren(picture, h('p', { class: 'small' }, tr('Drawing the plot…')));
    want();
  }

  function showNothing() {
    drop();
    heads = [];
    setChildren(picture, h('p', { class: 'small' }, tr('Nothing to plot yet.')));
  }

  function show(drawing, { answer, shown, options }) {
    const svg = parseDrawing(drawing.svg),
      ground = groundOf(store.fields, answer.scene.habitat),
      [x, y] = placesOf(drawing);
    heads = shown
      .map(({ motion, index }) => ({ index, path: pathPoints(motion, answer.grid) }))
      .filter(({ path }) => path.count > 0)
      .map(({ index, path }) => ({ path, x, y, element: s('g', {}, marker(index, 0, 0, 4.5, 'paper')) }));
    svg.append(...heads.map(head => head.element));
    for (const [name, value] of Object.entries({ class: 'plot', role: 'img', 'aria-label': describe(shown, ground, store) })) svg.setAttribute(name, value);
    const captions = {
      deck: trLater('Height above the deck by place {along}, {unit}; spinward to the right.'),
      floor: trLater('Height above the floor by place {along}, {unit}; spinward to the right.'),
      turntable: trLater('Height above the turntable by place {along}, {unit}; spinward to the right.'),
    };
    const caption = tr(captions[groundKey(ground)], { along: ground.along, unit: shownUnit('m', options.units) });
    setChildren(picture, svg, h('p', { class: 'small' }, caption));
    move();
  }

  function move() {
    for (const { path, x, y, element: head } of heads) {
      const [along, height] = ['along_m', 'height_m'].map(name => at(path, clock.time_s, name));
      head.setAttribute('transform', `translate(${x(along).toFixed(1)} ${y(height).toFixed(1)})`);
    }
  }
  return { update, move, turn };
}

// where a distance and a height stand in the drawing, px
function placesOf({ box_px: [left, top, right, bottom], along_m: [from, to], height_m: [low, high] }) {
  return [along => left + ((along - from) / (to - from)) * (right - left), height => bottom - ((height - low) / (high - low)) * (bottom - top)];
}

function describe(shown, { along }, store) {
  const said = shown.map(({ motion, index }) => `${motionName(store, index)} ${motion.in_short}`);
  return `${tr('Height against distance {along}.', { along })} ${said.join('; ')}.`;
}

// The same as the plot in figures: where each motion lands, when, how high it went, and plain gravity's answer.

function createTable({ store }) {
  const body = h('tbody', {});
  const element = h(
    'table',
    { hidden: true },
    h(
      'thead',
      {},
      h(
        'tr',
        {},
        h('th', { scope: 'col' }, tr('Motion')),
        ...[tr('lands'), trAs('so long', 'after'), trAs('column', 'highest'), tr('plain gravity')].map(word => h('th', { scope: 'col', class: 'r' }, word)),
      ),
    ),
    body,
  );
  const ended = (motion, show) => {
    const seen = lastSeen(motion);
    const where = motion.landing ? whichWay(seen.way, store.view.units) : (seen?.say ?? '');
    return [h('td', { class: 'r' }, where), h('td', { class: 'r' }, show(seen?.time_s, 's'))];
  };
  const plainly = ({ companion: { landing } }) => (landing ? whichWay(landing.way, store.view.units) : '');
  function update() {
    const show = (value, unit = 'm') => (typeof value === 'number' ? showQuantity(value, unit, store.view.units) : '');
    body.replaceChildren(
      ...(store.answer?.motions ?? []).map((motion, index) =>
        h(
          'tr',
          {},
          h('th', { scope: 'row' }, motionName(store, index)),
          ...ended(motion, show),
          h('td', { class: 'r' }, show(motion.apex?.height_m)),
          h('td', { class: 'r' }, plainly(motion)),
        ),
      ),
    );
  }
  return { element, update };
}
