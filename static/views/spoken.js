// What a stage shows, in words: its label for those who do not see it, kept live without chattering while the clock plays.

import { angleAt, at } from '../time/track.js';
import { seatName } from './camera_presets.js';
import { degrees, whereIs } from './say.js';

const EVERY_MS = 600;
const MOST_NAMED = 4;
const ENDED = { landed: ', landed', rest: ', at rest', edge: ', over the edge', arrived: ', arrived' };

export function stageWords(model, shown, frame, seat, time_s, units, weights = '') {
  const parts = [`${frame === 'aboard' ? 'Aboard' : 'Outside'}, ${seatName(seat, model.facts).toLowerCase()}`];
  for (const m of shown.slice(0, MOST_NAMED)) {
    if (time_s < m.starts_s - 1e-6) parts.push(`${m.name} not yet released`);
    else parts.push(whereIs(m.name, at(m.path, time_s, 'height_m'), at(m.path, time_s, 'along_m') - m.release.along_m, units) + (time_s >= m.ends_s ? ENDED[m.motion.end] ?? '' : ''));
  }
  if (shown.length > MOST_NAMED) parts.push(`and ${shown.length - MOST_NAMED} more`);
  if (weights) parts.push(weights);
  if (frame === 'outside') parts.push(turnedWords(model, time_s));
  return `${parts.join('; ')}; ${time_s.toFixed(2)}\u00a0s`;
}

export function turnedWords(model, time_s) {
  return `the ${model.ground.whole} has turned ${degrees(angleAt(model.answer, time_s))}`;
}

export class Spoken {
  constructor(dom) {
    this.dom = dom;
    this.at_ms = -EVERY_MS;
    dom.live.setAttribute('aria-live', 'polite');
  }

  say(words, now_ms, playing) {
    if (playing && now_ms - this.at_ms < EVERY_MS) return;
    this.at_ms = now_ms;
    if (words === this.words) return;
    this.words = words;
    this.dom.view.setAttribute('aria-label', words);
    const heard = !playing && this.dom.view === document.activeElement;
    this.dom.live.textContent = heard ? words : '';
  }
}
