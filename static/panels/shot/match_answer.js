// What came of it: the verdict, the reasons with the numbers they have over the picture, what would make it possible, the habitat and the throw that fit,
// and the free path nearest to it as a motion of the scene.

import { inSigns, tr } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { fliesHere } from '../../state/match_answer.js';
import { showQuantity } from '../../state/units.js';
import { freshName } from '../../state/words.js';
import { h, setAttribute, setChildren, setText } from '../shared/dom.js';
import { setWorded } from '../shared/worded.js';
import { createFold } from '../shared/fold.js';

/** get() → {answer, says: what is wanting or refused, or null, busy}; choose(row) shows a row; open(document) opens another scene. */
export function createMatchAnswer({ store, get, choose, open, heard, explain }) {
  const says = h('p', { class: 'lead match-says' }),
    reasons = h('ol', { class: 'match-reasons', 'aria-label': tr('Why, by the numbers over the path') }),
    changes = h('div', { class: 'instead' }),
    keep = h('p', { class: 'links' }),
    keepSays = h('p', { class: 'small' }),
    more = h('p', { class: 'small' });
  const rows = h('tbody', {}),
    fit = h(
      'table',
      { class: 'match-fit' },
      h(
        'thead',
        {},
        h('tr', {}, h('th', { scope: 'col' }, tr('Nearest free path')), h('th', { scope: 'col' }, tr('Best')), h('th', { scope: 'col' }, tr('95 % certain'))),
      ),
      rows,
    );
  const assumed = h('ul', { class: 'small match-assumed' }),
    fold = createFold({ words: () => tr('What is assumed'), make: () => [{ element: assumed, update: () => {} }] });
  const told = h('div', { class: 'match-told' }, reasons, changes, fit, more, keep, keepSays, fold.button, fold.element);
  const element = h('div', { class: 'aim-answer match-answer' }, says, told);
  let shown = null;

  function keepIt(motion) {
    const taken = store.document.motions.map((_, i) => motionName(store, i)),
      [throwIt] = motion.motions,
      name = freshName(throwIt.name, taken);
    store.edit(draft => {
      draft.motions.push({ ...structuredClone(throwIt), name });
    });
    store.look({ chosen: store.document.motions.length - 1 });
    const say = tr('{name} is kept as a motion.', { name });
    store.tell({ kind: 'told', field: null, say, undo: true });
    heard.say(say);
  }

  const figure = (value, unit) =>
    value === null ? '' : unit === 'fps' ? `${inSigns(String(Number(value.toFixed(1))))}\u00a0fps` : showQuantity(value, unit, store.view.units);

  function interval({ low, high, decided, known, unit }) {
    if (known) return tr('known');
    if (!decided) return tr('the track does not decide it');
    const [from, to] = [low, high].map(value => figure(value, unit));
    if (low === null) return tr('up to {to}', { to });
    return high === null ? tr('from {from}', { from }) : tr('{from} to {to}', { from, to });
  }

  function fitRow(name, one) {
    return h('tr', { 'data-quantity': name }, h('th', { scope: 'row' }, one.label), h('td', {}, figure(one.value, one.unit)), h('td', {}, interval(one)));
  }

  function build(answer) {
    setChildren(
      reasons,
      answer.reasons.map(({ says: why, at }, n) =>
        h(
          'li',
          {},
          h(
            'button',
            { type: 'button', class: 'match-reason', onclick: () => choose(at) },
            h('span', { class: 'match-dot', 'aria-hidden': true }, `${n + 1}`),
            why,
          ),
        ),
      ),
    );
    setAttribute(reasons, 'hidden', !answer.reasons.length);
    setChildren(
      changes,
      answer.changes.length
        ? [
            h('p', { class: 'small' }, tr('It is possible')),
            h(
              'p',
              { class: 'links' },
              answer.changes.map(({ says: change, motion }) =>
                h('button', { type: 'button', class: 'btn match-change', disabled: motion === null, onclick: () => open(motion) }, change),
              ),
            ),
          ]
        : [],
    );
    setChildren(
      rows,
      Object.entries(answer.fit).map(([name, one]) => fitRow(name, one)),
    );
    setWorded(more, answer.words.slice(1).join(' '), explain);
    setChildren(
      assumed,
      answer.assumptions.map(one => h('li', {}, one)),
    );
    buildKeep(answer.motion);
  }

  function buildKeep(motion) {
    const here = motion && fliesHere(motion, store.read);
    setChildren(
      keep,
      motion && h('button', { type: 'button', class: here ? 'btn strong' : 'btn', onclick: () => keepIt(motion) }, tr('Keep as a motion')),
      motion && !here && h('button', { type: 'button', class: 'btn', onclick: () => open(motion) }, tr('Open its habitat as a scene')),
    );
    setText(keepSays, motion && !here ? tr('This scene has another habitat or other air: here the same throw flies otherwise.') : '');
  }

  function update() {
    const { answer, says: instead, busy } = get();
    setWorded(says, instead ?? answer?.says ?? '', explain);
    element.classList.toggle('busy', Boolean(busy));
    setAttribute(told, 'hidden', !answer || Boolean(instead));
    const key = [answer, store.view.units, store.document.habitat, store.document.air];
    if (answer && !shown?.every((part, i) => part === key[i])) {
      shown = key;
      build(answer);
    }
    fold.update();
  }
  return { element, update };
}
