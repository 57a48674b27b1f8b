// The posts of place 4 on a flat plate: beside everybody a slate line as tall as one g, its white core what they feel at the feet.

import { onDeck, postBreak, postTop, weighed, weightFigure, weightWords } from './weights.js';
import { PERSON_M } from '../figure.js';
import { svg } from '../overlay.js';
import { standing, turnAt } from '../model.js';
import { apart } from '../plate_names.js';
import { moved, standOf } from '../reach.js';

const INK = '#182024';
const SLATE = '#465157';
const ASIDE_PX = 12;
const OVER_PX = 8;
const LEAST_TICK_PX = 4;        // nearer to each other they would run together

/** Draws into the plate's moving part what everybody feels at time t; gives the words for it. `feel`: the answer, or null. */
export function drawWeights({ lines, model, shown, frame }, feel, time_s) {
  const people = weighed(model, standing(shown, model.ground).filter(({ floor }) => PERSON_M < model.ground.headroom(floor)), shown, feel, time_s);
  const taken = [...lines.taken];
  for (const one of people) {
    const { feet, up } = one.motion ? standOf(model, one.motion, frame, time_s) : onDeck(model, one.person, turnAt(model, frame, time_s));
    if (!model.ground.level) drawPost(lines, feet, up, one.weight_g);
    const [x, y] = lines.at(model.ground.level ? feet : moved(feet, up, PERSON_M * postTop(one.weight_g)));
    const words = `${one.name} ${weightFigure(one.weight_g)}\u00a0g`;
    taken.push(lines.text(lines.moving, [x, apart({ ...lines, taken }, x, y - OVER_PX, words)], words, INK));
  }
  return weightWords(people);
}

function drawPost(lines, feet, up, weight_g) {
  const [fx, fy] = lines.at(feet);
  const base = [fx + ASIDE_PX * up[1], fy + ASIDE_PX * up[0]];
  const at = (g, aside = 0) => { const far = lines.px * PERSON_M * g; return [base[0] + up[0] * far + aside * up[1], base[1] - up[1] * far + aside * up[0]].map((c) => c.toFixed(1)).join(' '); };
  const line = (d, look) => svg('path', { d, fill: 'none', ...look }, lines.moving);
  const top_g = postTop(weight_g);
  line(`M${at(0)}L${at(top_g)}`, { stroke: SLATE, 'stroke-width': 8, class: 'weight-post' });
  if (weight_g > 0) line(`M${at(0)}L${at(Math.min(weight_g, top_g))}`, { stroke: '#FFF', 'stroke-width': 5, class: 'weight-felt' });
  const parted = postBreak(weight_g);
  if (parted) line(`M${at(parted[0])}L${at(parted[1])}`, { stroke: SLATE, 'stroke-width': 8, class: 'weight-break' });
  const ticks = lines.px * PERSON_M > 10 * LEAST_TICK_PX ? Array.from({ length: Math.floor(10 * top_g) }, (_, k) => `M${at((k + 1) / 10, 4)}L${at((k + 1) / 10, 7)}`) : [];
  line([...ticks, `M${at(1, -7)}L${at(1, 7)}`].join(''), { stroke: INK, 'stroke-width': 1.2 });
}
