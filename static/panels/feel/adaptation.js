// What people got used to: each finding with its source, how this spin lies to it, and what nobody published.

import { h, setText } from '../shared/dom.js';
import { behindWords } from './say.js';
import { createFold } from '../shared/fold.js';

export function createFeelAdaptation({ element, store }) {
  const list = createFindings({ store });
  const fold = createFold({ words: () => 'What people got used to', make: () => [list] });
  element.append(h('h3', { class: 'third' }, fold.button), fold.element);
  return { update: () => fold.update() };
}

function createFindings({ store }) {
  const element = h('ul', { class: 'findings' });
  let made = '',
    here = [];

  function update() {
    const found = store.feel.adaptation,
      key = found.map(({ claim }) => claim).join();
    if (key !== made) {
      made = key;
      here = found.map(() => h('span', {}));
      element.replaceChildren(...found.map((one, i) => item(one, here[i])));
    }
    found.forEach((one, i) => setText(here[i], one.here));
  }
  return { element, update };
}

// what nothing published tells has no study
function item(finding, here) {
  const { claim, study, year } = finding;
  if (!study) return h('li', {}, h('p', { class: 'lead' }, claim, ' ', here));
  const source = createFold({
    words: () => `${study} ${year ?? ''}`.trim(),
    make: () => [{ element: h('p', { class: 'small' }, behindWords(finding).join(' ')), update() {} }],
  });
  source.update();
  return h('li', {}, h('p', { class: 'lead' }, claim, ' ', here), h('p', { class: 'links' }, source.button), source.element);
}
