// A rule: the limits of one quantity as ticks on a line, our value as a notch. In ink: a foot points to what a limit forbids.

import { s, setAttribute, setChildren } from '../shared/dom.js';
import { boundWords, headingWords, studyWords } from './say.js';
import { notchOf, ruleOf } from './rule_layout.js';

const HIGH = 46, // with one line of letters
  LINE = 13,
  BASE = 24,
  TICK = 10,
  FOOT = 6,
  TEXT = 40;

/** update(quantity, rows, width_px, units); only the notch moves while the limits and the scale stay. */
export function createRule() {
  const limits = s('g', {}),
    notch = s('g', { class: 'notch' }, s('path', { d: `M0 ${BASE + 6}V8`, class: 'stem' }), s('path', { d: 'M-6 0H6L0 8Z', class: 'full-ink' }));
  const element = s('svg', { class: 'rule', height: HIGH, role: 'img' }, limits, notch);
  let drawn = '';

  function update(quantity, rows, wide, units) {
    setAttribute(element, 'hidden', !rows.length || !(wide > 0));
    if (!rows.length || !(wide > 0)) return;
    const rule = ruleOf(rows, quantity.value, wide);
    const key = JSON.stringify([wide, rule.ticks, rule.labels]);
    if (key !== drawn) {
      drawn = key;
      setAttribute(element, 'width', wide);
      const high = HIGH + LINE * Math.max(...rule.labels.map(({ line: at }) => at));
      setAttribute(element, 'height', high);
      setAttribute(element, 'viewBox', `0 0 ${wide} ${high}`);
      setChildren(limits, line(wide), rule.ticks.map(tick), rule.labels.map(label));
    }
    const at = notchOf(rule, quantity.value);
    setAttribute(notch, 'visibility', at === null ? 'hidden' : null);
    if (at !== null) setAttribute(notch, 'transform', `translate(${at.toFixed(1)} 0)`);
    setAttribute(element, 'aria-label', spoken(quantity, rows, units));
  }
  return { element, update };
}

const line = wide => s('path', { d: `M0 ${BASE}H${wide}`, class: 'base' });

function tick({ x, sign }) {
  const top = BASE - TICK;
  if (sign === 'ring') return mark(`M${x} ${BASE}V${top}`, s('circle', { cx: x, cy: top - 3, r: 3 }));
  if (sign === 'diamond') return mark(`M${x} ${BASE}V${top}`, s('path', { class: 'full-ink', d: `M${x} ${top - 8}l4 4l-4 4l-4 -4z` }));
  return mark(`M${x} ${BASE}V${top}h${sign === 'right' ? FOOT : -FOOT}`);
}

const mark = (d, sign = null) => s('g', { class: 'tick' }, s('path', { d }), sign);

function label({ x, line: at, say }) {
  return s('text', { x, y: TEXT + LINE * at, 'text-anchor': 'middle' }, say);
}

function spoken(quantity, rows, units) {
  const said = rows.map(row => `${row.letter}, ${studyWords(row)}, ${boundWords(row, units)}`).join('; ');
  return `${headingWords(quantity, units)}. On the rule: ${said}.`;
}

/** The signs of the rule, explained once. */
export function ruleKey() {
  const sign = (kind, words) =>
    [s('svg', { width: 20, height: 28, viewBox: '0 0 20 28', 'aria-hidden': true, class: 'rule' }, line(20), tick({ x: 10, sign: kind })), words];
  return [
    'A letter is a row of the table below its rule. The signs: ',
    ...sign('right', 'a limit, its foot toward what it forbids; '),
    ...sign('ring', 'a rate reached or observed; '),
    ...sign('diamond', 'an optimum; '),
    'the notch is this design.',
  ];
}
