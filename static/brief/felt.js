// What people would feel, on the sheet: the first sentences, each quantity's limits with their sources, and a day in words.

import { tr, trAs } from '../state/language.js';
import { boundWords, quantityHeading, stateWords, premisesWords, rowsOf, studyWords } from '../panels/feel/figure_words.js';
import { h } from '../panels/shared/dom.js';

const HEAD_LINES = 3; // over the rows of a table: its heading and its sentence

/** `feel` the answer, `units` 'si' or 'us'. */
export function feltOf(feel, units) {
  const limited = feel.quantities.filter(({ name }) => rowsOf(feel, name).length);
  const open = feel.quantities.filter(({ name }) => !rowsOf(feel, name).length);
  return [
    h('p', { class: 'said' }, feel.says.lead, ' ', feel.says.summary),
    h('p', { class: 'note' }, premisesWords(feel, units)),
    h('h3', {}, tr('A day aboard')),
    h(
      'div',
      { class: 'day' },
      feel.words.map(({ title, text }) => h('p', {}, h('b', {}, `${title}. `), text)),
    ),
    h(
      'div',
      { class: 'limits' },
      sidesOf(feel, limited).map(side =>
        h(
          'div',
          {},
          side.map(quantity => tableOf(feel, quantity, units)),
        ),
      ),
    ),
    ...open.map(quantity => h('p', { class: 'note' }, `${quantityHeading(quantity, units)}. ${quantity.printed}`)),
    ...sourcesOf(feel),
    h('p', { class: 'note cited' }, feel.assumptions.join(' ')),
    h('p', { class: 'note' }, feel.caution),
  ];
}

const STAY = 'months'; // the shortest that weighs on all of a body

/** Why spin at all: what a stay of months comes to, and what nobody knows. */
export function whyOf({ why_spin: why }) {
  const { verdict, not_known: unknown } = why.stays.find(({ stay }) => stay === STAY);
  return [
    h('p', { class: 'said' }, why.lead, ' ', h('b', {}, tr('A stay of months. ')), verdict),
    h(
      'p',
      { class: 'note' },
      tr('Not known: {unknown} Each study, its source and what it found stand on the page, under “Why spin at all?”.', { unknown: unknown.join(' ') }),
    ),
  ];
}

// whole tables side by side: each goes where fewer lines stand so far
function sidesOf(feel, quantities) {
  const sides = [[], []],
    lines = [0, 0];
  for (const quantity of quantities) {
    const at = lines[0] <= lines[1] ? 0 : 1;
    sides[at].push(quantity);
    lines[at] += HEAD_LINES + together(rowsOf(feel, quantity.name)).length;
  }
  return sides;
}

function tableOf(feel, quantity, units) {
  const head = [tr('Published'), trAs('a study', 'says'), tr('here')].map((word, i) => h('th', { scope: 'col', class: i ? 'r' : null }, word));
  return h(
    'div',
    { class: 'limited' },
    h('h3', {}, quantityHeading(quantity, units)),
    h('p', { class: 'note' }, quantity.printed),
    h(
      'table',
      {},
      h('thead', {}, h('tr', {}, head)),
      h(
        'tbody',
        {},
        together(rowsOf(feel, quantity.name)).map(rows => lineOf(rows, units)),
      ),
    ),
  );
}

// what one publication says of a quantity stands on one line, where it lies alike to the value here
function together(rows) {
  const lines = new Map();
  for (const row of rows) {
    const key = row.mine ? row.id : JSON.stringify([studyWords(row), stateKey(row)]);
    lines.set(key, [...(lines.get(key) ?? []), row]);
  }
  return [...lines.values()];
}

const stateKey = ({ state, times }) => [state, times];

function lineOf(rows, units) {
  const [first] = rows;
  return h(
    'tr',
    { class: first.inside === false ? 'beyond' : null },
    h('th', { scope: 'row' }, studyWords(first)),
    h('td', { class: 'r' }, rows.map(row => boundWords(row, units)).join(', ')),
    h('td', { class: 'r' }, stateWords(first, units)),
  );
}

// each publication once, however many limits it sets; those known through the same survey name it together
function sourcesOf(feel) {
  const cited = new Map();
  for (const { source, via: through, mine, known_by: knownBy } of feel.limits) {
    const work = through ? source.slice(0, -`; ${through}`.length) : source;
    const key = JSON.stringify([through || work, knownBy]);
    if (!mine) cited.set(key, { through, knownBy, works: new Set([...(cited.get(key)?.works ?? []), work]) });
  }
  const items = [...cited.values()].map(({ works, through, knownBy }) => {
    const said = [...works, through && (works.size > 1 ? tr('all {through}', { through }) : through)].filter(Boolean);
    const mark = knownBy === 'memory' ? ' *' : '';
    // a work is kept whole where the sheet ends, a long list of them is not
    return h(
      'li',
      {},
      said.map((work, index) => h('span', { class: 'work' }, index < said.length - 1 ? `${work}; ` : `${work}${mark}`)),
    );
  });
  const recalled = [...cited.values()].some(({ knownBy }) => knownBy === 'memory') && h('em', {}, ` ${tr('* from memory: look it up before you cite it')}`);
  return items.length ? [h('h3', {}, tr('Sources of the limits'), recalled), h('ul', { class: 'cited' }, items)] : [];
}
