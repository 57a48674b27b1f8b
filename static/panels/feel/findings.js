// Published findings, each with its source behind a link and how this habitat lies to it; what nobody published has no source. And
// what people got used to.

import { tr } from '../../state/language.js';
import { h, setText } from '../shared/dom.js';
import { behindWords } from './figure_words.js';
import { createFold } from '../shared/fold.js';

export function createFeelAdaptation({ element, store }) {
  const list = createFindings({ findings: () => store.feel.adaptation });
  const fold = createFold({ words: () => tr('What people got used to'), make: () => [list] });
  element.append(h('h3', { class: 'third' }, fold.button), fold.element);
  return { update: () => fold.update() };
}

/** findings() → [{claim, here, study, year, …}]; items are made anew only when others come. */
export function createFindings({ findings }) {
  const element = h('ul', { class: 'findings' });
  let builtFrom = '',
    positions = [];

  function update() {
    const now = findings(),
      key = now.map(({ claim }) => claim).join();
    if (key !== builtFrom) {
      builtFrom = key;
      positions = now.map(() => h('span', {}));
      element.replaceChildren(...now.map((one, i) => item(one, positions[i])));
    }
    now.forEach((one, i) => setText(positions[i], one.here));
  }
  return { element, update };
}

// `speaks`: which way it speaks, where that is asked
function item(finding, position) {
  const { claim, study, year, speaks } = finding;
  if (!study) return h('li', {}, h('p', { class: 'lead' }, claim, ' ', position));
  const source = createFold({
    words: () => `${study} ${year ?? ''}`.trim(),
    make: () => [{ element: h('p', { class: 'small' }, behindWords(finding).join(' ')), update() {} }],
  });
  source.update();
  const said = speaks && h('span', { class: 'small' }, speaks);
  return h('li', {}, h('p', { class: 'lead' }, claim, ' ', position), h('p', { class: 'links' }, source.button, said), source.element);
}
