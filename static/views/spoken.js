// What a stage says: words and figures, and its label for those who do not see it.

import { inSigns, tr, trLater } from '../state/language.js';
import { angleAt, at, leanAt } from '../time/track.js';
import { lowered, presetName } from './camera_presets.js';
import { shownUnit, toShown, withUnit, written } from '../state/units.js';

const EVERY_MS = 600;
const MOST_NAMED = 4;
const ENDED = { landed: trLater('landed'), rest: trLater('at rest'), edge: trLater('over the edge'), arrived: trLater('arrived') };

/** `isHeld(name)`: where a motion is may be told, not what becomes of it. */
export function stageWords(model, shown, frame, preset, time_s, units, weights = '', isHeld = () => false) {
  const seen = frame === 'aboard' ? [tr('Aboard'), model.name].filter(Boolean).join(' ') : tr('Outside'); // a further habitat has a name
  const parts = [`${seen}, ${lowered(presetName(preset, model.facts))}`];
  for (const m of shown.slice(0, MOST_NAMED)) {
    const motion = m.name;
    if (m.tumbles)
      parts.push(frame === 'aboard' ? tr('{motion}: the craft stands still, the stars go round', { motion }) : tr('{motion}: the craft goes over', { motion }));
    else if (time_s < m.starts_s - 1e-6) parts.push(tr('{motion} not yet released', { motion }));
    else
      parts.push(
        whereIs(m.name, at(m.path, time_s, 'height_m'), model.ground.spinward(m.release, placeOf(m.path, time_s)), units) +
          (time_s >= m.ends_s && !isHeld(m.name) ? endedWords(m.motion.end) : ''),
      );
  }
  if (shown.length > MOST_NAMED) parts.push(tr('and {count} more', { count: shown.length - MOST_NAMED }));
  if (weights) parts.push(weights);
  if (frame === 'outside') parts.push(turnedWords(model, time_s));
  return `${parts.join('; ')}; ${inSigns(time_s.toFixed(2))}\u00a0s`;
}

const endedWords = end => (ENDED[end] ? `, ${tr(ENDED[end])}` : '');

const TURNED = {
  habitat: trLater('the habitat has turned {angle}'),
  craft: trLater('the craft has turned {angle}'),
  turntable: trLater('the turntable has turned {angle}'),
};
const PLACE = ['along_m', 'height_m', 'axial_m'];
const placeOf = (path, time_s) => Object.fromEntries(PLACE.map(name => [name, at(path, time_s, name)]));

// Under the flat plate, and of Outside for those who do not see it.
export function turnedWords(model, time_s) {
  if (model.tumbling) return tr('the craft’s axis has gone {angle} from where it pointed', { angle: degrees(leanAt(model.answer, time_s)) });
  return tr(TURNED[model.ground.whole], { angle: degrees(angleAt(model.answer, time_s)) });
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
  const plain = { 0: tr('spinward'), 90: tr('along the axis'), 180: tr('antispinward'), 270: tr('against the axis') }[h];
  return plain ?? tr('toward {angle}', { angle: `${Math.round(h)}°` });
}

export function elevation(elevation_deg) {
  const e = Math.round(elevation_deg);
  if (isUpright(e)) return e > 0 ? tr('straight up') : tr('straight down');
  if (e === 0) return tr('level');
  return e > 0 ? tr('{angle} up', { angle: `${e}°` }) : tr('{angle} down', { angle: `${-e}°` });
}

const isUpright = elevation_deg => Math.abs(Math.round(elevation_deg)) === 90;

/** '35° up, spinward'; what goes straight up or down has no heading. */
export function launched(elevation_deg, heading_deg) {
  const steep = elevation(elevation_deg);
  return isUpright(elevation_deg) ? steep : `${steep}, ${direction(heading_deg)}`;
}

/** '4.3 m spinward': the side by the sign of `way`.
 *  @param {string} length @param {number} way */
export const sided = (length, way) => (way > 0 ? tr('{length} spinward', { length }) : tr('{length} antispinward', { length }));

// 'Lob out, 1.3 m up, 4.3 m spinward, 0.80 s'
function whereIs(name, height_m, drift_m, units) {
  const way = Math.abs(drift_m) < 0.05 ? '' : `, ${sided(figure(Math.abs(drift_m), 'm', units, 1), drift_m)}`;
  return `${name}, ${tr('{height} up', { height: figure(Math.max(0, height_m), 'm', units, 1) })}${way}`;
}
