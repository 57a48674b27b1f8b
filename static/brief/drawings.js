// The drawings of the sheet: both views as line plates at three instants (the first release, half way, when the last has landed), and
// the server's three plots.

import { inSigns, tr } from '../state/language.js';
import { h, s, parseDrawing } from '../panels/shared/dom.js';
import { motionName } from '../state/fields.js';
import { groundKey, groundOf } from '../state/shapes.js';
import { shownIndexes } from '../state/shown.js';
import { LinePlate } from '../views/line_plate.js';
import { readModel } from '../views/model.js';
import { stageWords, turnedWords } from '../views/spoken.js';

const SIZE = { width: 320, height: 160 }; // px of the drawing, a third of the page wide
const ROOM = { top: 42, side: 22, foot: 30, arrow: 34, highest: 44, text: 18, paper: '#FFFFFF' };

export function platesOf(store) {
  const model = readModel(store.answer, store.fields);
  const shown = shownIndexes(store).map(index => model.motions[index]);
  const times = instantsOf(shown);
  const ground = groundKey(groundOf(store.fields, store.answer.scene.habitat));
  const views = {
    aboard: [tr('Aboard'), { deck: tr('The deck stands still.'), floor: tr('The floor stands still.'), turntable: tr('The turntable stands still.') }[ground]],
    outside: [tr('Outside'), tr('The stars stand still.')],
  };
  return Object.entries(views).map(([frame, [name, aside]]) =>
    h(
      'div',
      { class: 'view' },
      h('h3', {}, name, ' ', h('em', {}, aside)),
      h('div', { class: 'plates' }, ...times.map((time_s, k) => plateOf(store, model, shown, frame, time_s, k === 0))),
    ),
  );
}

// the paths are named once, on the first of a row
function plateOf(store, model, shown, frame, time_s, named) {
  const { view } = store;
  const sheet = s('svg', { role: 'img', class: 'plate', 'aria-label': stageWords(model, shown, frame, 'd', time_s, view.units) });
  const plate = new LinePlate(sheet, frame, { ...ROOM, named });
  plate.fitInto(SIZE);
  plate.read(model, shown, { ...view, companion: true, chosen: 0 });
  plate.draw(time_s);
  const turned = frame === 'outside' ? `, ${turnedWords(model, time_s)}` : '';
  return h('figure', {}, sheet, h('figcaption', {}, `${inSigns(time_s.toFixed(2))}\u00a0s${turned}`));
}

function instantsOf(motions) {
  const flown = motions.filter(m => m.path.count);
  if (!flown.length) return [0];
  const first = Math.min(...flown.map(m => m.starts_s)),
    last = Math.max(...flown.map(m => m.landing?.time_s ?? m.ends_s));
  return last > first ? [first, (first + last) / 2, last] : [first];
}

// The three plots, as the server draws them for any file.

const FORMATS = ['plot-path-svg', 'plot-height-svg', 'plot-felt-svg'];
const FOOT_MM = 5; // the caution under each: the page has its own

/** Their figures; none where the scene has nothing to plot. */
export async function plotsOf(client, store) {
  const scene = store.document,
    shown = shownIndexes(store);
  if (!shown.length) return [];
  const choices = shown.length < scene.motions.length ? { motions: shown.map(index => motionName(store, index)) } : {};
  const files = await Promise.all(FORMATS.map(format => client.exported(format, { scene, export: choices })));
  return Promise.all(files.map(async file => h('figure', { class: 'plot' }, drawn(await file.text()))));
}

function drawn(text) {
  const svg = parseDrawing(text);
  const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
  svg.setAttribute('viewBox', `0 0 ${width} ${height - FOOT_MM}`);
  svg.setAttribute('aria-label', svg.querySelector('title').textContent);
  for (const side of ['width', 'height']) svg.removeAttribute(side);
  for (const text of svg.querySelectorAll('text')) if (Number(text.getAttribute('y')) > height - FOOT_MM) text.remove(); // a line that reaches over the cut
  return svg;
}
