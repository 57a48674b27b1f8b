// What a stage says: words and figures, and its label for those who do not see it.

import { angleAt, at, leanAt } from '../time/track.js';
import { presetName } from './camera_presets.js';
import { shownUnit, toShown, withUnit, written } from '../state/units.js';

const EVERY_MS = 600;
const MOST_NAMED = 4;
const ENDED = { landed: ', landed', rest: ', at rest', edge: ', over the edge', arrived: ', arrived' };

/** `isHeld(name)`: where a motion is may be told, not what becomes of it. */
export function stageWords(model, shown, frame, preset, time_s, units, weights = '', isHeld = () => false) {
  const seen = frame === 'aboard' ? ['Aboard', model.name].filter(Boolean).join(' ') : 'Outside'; // a further habitat has a name
  const parts = [`${seen}, ${presetName(preset, model.facts).toLowerCase()}`];
  for (const m of shown.slice(0, MOST_NAMED)) {
    if (m.tumbles) parts.push(frame === 'aboard' ? `${m.name}: the craft stands still, the stars go round` : `${m.name}: the craft goes over`);
    else if (time_s < m.starts_s - 1e-6) parts.push(`${m.name} not yet released`);
    else
      parts.push(
        whereIs(m.name, at(m.path, time_s, 'height_m'), model.ground.spinward(m.release, placeOf(m.path, time_s)), units) +
          (time_s >= m.ends_s && !isHeld(m.name) ? (ENDED[m.motion.end] ?? '') : ''),
      );
  }
  if (shown.length > MOST_NAMED) parts.push(`and ${shown.length - MOST_NAMED} more`);
  if (weights) parts.push(weights);
  if (frame === 'outside') parts.push(turnedWords(model, time_s));
  return `${parts.join('; ')}; ${time_s.toFixed(2)}\u00a0s`;
}

const PLACE = ['along_m', 'height_m', 'axial_m'];
const placeOf = (path, time_s) => Object.fromEntries(PLACE.map(name => [name, at(path, time_s, name)]));

// Under the flat plate, and of Outside for those who do not see it.
export function turnedWords(model, time_s) {
  if (model.tumbling) return `the craft’s axis has gone ${degrees(leanAt(model.answer, time_s))} from where it pointed`;
  return `the ${model.ground.whole} has turned ${degrees(angleAt(model.answer, time_s))}`;
}

export class Spoken {
  constructor(dom) {
    this.dom = dom;
    this.at_ms = -EVERY_MS;
    dom.live.setAttribute('aria-live', 'polite');
  }

  // Whether it is time to say something.
  isDue(now_ms, playing) {
    return !playing || now_ms - this.at_ms >= EVERY_MS;
  }

  say(words, now_ms, playing) {
    this.at_ms = now_ms;
    if (words === this.words) return;
    this.words = words;
    this.dom.view.setAttribute('aria-label', words);
    const heard = !playing && this.dom.view === document.activeElement;
    this.dom.live.textContent = heard ? words : '';
  }
}

// Words and figures on the stages.

export function figure(value, unit, units, places = null) {
  const shown = toShown(value, unit, units);
  const size = Math.abs(shown);
  const digits = places ?? (size >= 1000 ? 0 : size >= 99.95 ? 1 : 2);
  const text = written(Number(shown.toFixed(digits)) === 0 ? 0 : shown, digits);
  return withUnit(text.replace('-', '−'), shownUnit(unit, units));
}

export const metres = (value, units) => figure(value, 'm', units);

export function degrees(radians) {
  return `${written((radians * 180) / Math.PI, 1).replace('-', '−')}°`;
}

export function direction(heading_deg) {
  const h = ((heading_deg % 360) + 360) % 360;
  const plain = { 0: 'spinward', 90: 'along the axis', 180: 'antispinward', 270: 'against the axis' }[h];
  return plain ?? `toward ${Math.round(h)}°`;
}

export function elevation(elevation_deg) {
  const e = Math.round(elevation_deg);
  if (Math.abs(e) === 90) return e > 0 ? 'straight up' : 'straight down';
  return e === 0 ? 'level' : e > 0 ? `${e}° up` : `${-e}° down`;
}

/** '35° up, spinward'; what goes straight up or down has no heading. */
export function launched(elevation_deg, heading_deg) {
  const steep = elevation(elevation_deg);
  return steep.startsWith('straight') ? steep : `${steep}, ${direction(heading_deg)}`;
}

export const spinward = way => (way > 0 ? 'spinward' : 'antispinward');

// 'Lob out, 1.3 m up, 4.3 m spinward, 0.80 s'
function whereIs(name, height_m, drift_m, units) {
  const way = Math.abs(drift_m) < 0.05 ? '' : `, ${figure(Math.abs(drift_m), 'm', units, 1)} ${spinward(drift_m)}`;
  return `${name}, ${figure(Math.max(0, height_m), 'm', units, 1)} up${way}`;
}
