// Why it drifts: one bar along the deck, a step for each cause as the causes are switched on one after another; or the same as
// a table. In ink with words: colour belongs to the paths.

import { tr, trLater } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { groundOf } from '../../state/shapes.js';
import { showQuantity } from '../../state/units.js';
import { roundOf } from '../../state/ways.js';
import { h, s, setAttribute, setChildren, setText } from '../shared/dom.js';
import { worded } from '../shared/worded.js';

const NAMES = { centrifugal: trLater('Centrifugal'), coriolis: trLater('Coriolis'), drag: trLater('Drag'), other: trLater('The rest') };
// why a landing has no parts, where that is worth a word and the motion's own words do not say it
export const NONE = {
  no_landing_without_coriolis: trLater('Without Coriolis it would not land, so the causes are not told apart.'),
  no_landing_without_air: trLater('In vacuum it would not land, so the causes are not told apart.'),
  no_landing_without_the_rest: trLater('With drag alone it would not land, so the causes are not told apart.'),
  met_something_first: trLater('It meets something before it lands, so the causes are not told apart.'),
  spin_changes: trLater('The spin changes while it pours, so the causes are not told apart.'),
};
const WIDE = 320,
  ROW = 30, // a name is to be 24 high on the narrowest page too, where the drawing is 0.83 of its size
  FROM = 86, // px: right of the words, left of the figures
  TO = 244;
const NONE_M = 5e-7; // rounds to nothing in every unit shown

export function createDriftBar({ store, index, large, explain }) {
  const title = h('b', {}, tr('Why it drifts'));
  const turn = h('button', { type: 'button', class: 'link', title: tr('Drawing or table (T)'), onclick: () => turnDrift(store) });
  const inner = h('div', {});
  const enlarge = large.button({ place: 2, title: () => tr('Why it drifts: {motion}', { motion: motionName(store, index) }), part: inner });
  const element = h(
    'section',
    { class: 'causes', 'aria-label': tr('Why it drifts') },
    h('div', { class: 'between' }, title, h('span', { class: 'links' }, turn, enlarge)),
    inner,
  );
  let drawn = [];

  function update(chosen) {
    if (store.answer?.partial) return; // the causes are of the answer before: what is drawn of them is out of sight
    const motion = store.answer?.motions[index],
      parts = chosen ? partsOf(motion) : null,
      why = chosen && !parts ? NONE[downOf(motion)?.drift_parts_none] : null;
    setAttribute(element, 'hidden', !parts && !why);
    for (const button of [turn, enlarge]) setAttribute(button, 'hidden', !parts);
    if (why) {
      drawn = [];
      setChildren(inner, h('p', { class: 'small' }, tr(why)));
    }
    if (!parts) return;
    const key = [motion, store.view.units, store.view.driftTable];
    if (key.every((part, i) => part === drawn[i])) return;
    drawn = key;
    setText(turn, store.view.driftTable ? tr('As a drawing') : tr('As a table'));
    const show = value => showQuantity(value, 'm', store.view.units).replace(/^−(?=0[.,]0+\D)/, ''); // no minus before nothing
    const ground = groundOf(store.fields, store.document.habitat),
      round = roundOf(downOf(motion).way);
    setChildren(inner, store.view.driftTable ? table(parts, show, round, explain) : drawing(parts, show, ground, round, explain));
  }
  return { element, update };
}

export function turnDrift(store) {
  store.look({ driftTable: !store.view.driftTable });
}

/** [{name, from_m, by_m}] in the order the causes were switched on; null where the answer does not tell them apart. */
export function partsOf(motion) {
  const parts = downOf(motion)?.drift_parts_m;
  if (!parts) return null;
  let from_m = 0;
  return [...parts.order, 'other']
    .filter((name, i, all) => all.indexOf(name) === i && typeof parts[name] === 'number')
    .flatMap(name => {
      const part = { name: name in NAMES ? tr(NAMES[name]) : name, from_m, by_m: parts[name] };
      from_m += parts[name];
      return name === 'other' && Math.abs(part.by_m) < NONE_M ? [] : [part];
    });
}

/** Where it lands, or comes down in a cup or on its table. */
export function downOf(motion) {
  return motion?.landing ?? motion?.findings?.comes_down;
}

const sumOf = parts => parts.reduce((sum, part) => sum + part.by_m, 0);

function drawing(parts, show, { along, level }, round, explain) {
  const ends = parts.flatMap(({ from_m, by_m }) => [from_m, from_m + by_m]);
  const least = Math.min(0, ...ends),
    most = Math.max(0, ...ends);
  const x = metres => FROM + ((metres - least) / Math.max(most - least, 1e-12)) * (TO - FROM);
  const high = (parts.length + 1) * ROW;
  const rows = parts.map(({ name, from_m, by_m }, k) => step(label(name, k * ROW, explain), x(from_m), x(from_m + by_m), k * ROW, show(by_m)));
  const links = parts.map(({ from_m, by_m }, k) => s('path', { class: 'grid', d: `M${x(from_m + by_m)} ${k * ROW + 4}V${(k + 1) * ROW + 4}` }));
  const total = step(label(tr('In all'), parts.length * ROW, explain), x(0), x(sumOf(parts)), parts.length * ROW, show(sumOf(parts)), 'sum');
  const zero = s('path', { class: 'base', d: `M${x(0)} 0V${high}` });
  const said = parts.map(({ name, by_m }) => `${name} ${show(by_m)}`).join(', ');
  const all = tr('Drift {way}: {parts}; in all {sum}', { way: level ? tr('spinward') : along, parts: said, sum: show(sumOf(parts)) });
  return [
    s(
      'svg',
      { class: 'plot drift', viewBox: `0 0 ${WIDE} ${high}`, role: 'group', 'aria-label': round ? `${all}, ${round}` : all },
      links,
      zero,
      ...rows,
      total,
    ),
    h(
      'p',
      { class: 'small' },
      [tr('Each cause switched on after those above it; spinward to the right.'), round && tr('In all it goes {round}.', { round })].filter(Boolean).join(' '),
    ),
  ];
}

// its term can be pressed
function label(name, y, explain) {
  return s('foreignObject', { x: 0, y, width: FROM - 4, height: ROW }, h('p', { class: 'cause' }, worded(name, explain)));
}

function step(label, from, to, y, figure, kind = 'part') {
  const left = Math.min(from, to),
    wide = Math.max(Math.abs(to - from), 1.5);
  return s(
    'g',
    { class: kind },
    label,
    s('rect', { x: left, y: y + 5, width: wide, height: ROW - 9 }),
    s('text', { x: WIDE, y: y + 19, 'text-anchor': 'end' }, figure),
  );
}

function table(parts, show, round, explain) {
  const row = (name, value) => h('tr', {}, h('th', { scope: 'row' }, worded(name, explain)), h('td', { class: 'r' }, show(value)));
  const head = h('tr', {}, h('th', { scope: 'col' }, tr('Cause, in the order switched on')), h('th', { scope: 'col', class: 'r' }, tr('spinward')));
  return [
    h(
      'table',
      {},
      h('thead', {}, head),
      h(
        'tbody',
        {},
        parts.map(({ name, by_m }) => row(name, by_m)),
        row(tr('In all'), sumOf(parts)),
      ),
    ),
    round && h('p', { class: 'small' }, tr('In all it goes {round}.', { round })),
  ].filter(Boolean);
}
