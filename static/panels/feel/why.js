// Why spin at all: a verdict for a stay, what is not known, and the studies that bear on it, by topic.

import { tr, trLater } from '../../state/language.js';
import { h, setAttribute, setText } from '../shared/dom.js';
import { choiceRow, createChoice } from '../shared/choice.js';
import { createFindings } from './findings.js';
import { createFold } from '../shared/fold.js';

const STAYS = { hours: trLater('hours'), days: trLater('days'), months: trLater('months'), years: trLater('years') };

export function createFeelWhy({ element, store }) {
  let stay = 'months'; // the shortest that weighs on all of a body
  const why = () => store.feel.why_spin,
    chosen = () => why().stays.find(one => one.stay === stay);
  const lead = h('p', { class: 'small' }),
    verdict = h('p', { class: 'lead', role: 'status' }),
    unknown = h('ul', { class: 'small' });
  const choice = createChoice({
    label: tr('For a stay of'),
    options: Object.entries(STAYS).map(([value, say]) => ({ value, say: tr(say) })),
    chosen: () => stay,
    choose,
  });
  const studies = createFold({
    words: () => tr('The {count} studies that bear on {stay}', { count: Object.values(chosen().counts).reduce((a, b) => a + b), stay: tr(STAYS[stay]) }),
    make: () => [createTopics({ why, bearing: () => why().findings.filter(({ stays }) => stays.includes(stay)) })],
  });
  element.append(
    h('h3', { class: 'third' }, tr('Why spin at all?')),
    lead,
    choiceRow(tr('For a stay of'), choice),
    verdict,
    h('h4', { class: 'fourth' }, tr('Not known')),
    unknown,
    h('p', { class: 'links' }, studies.button),
    studies.element,
  );

  function choose(value) {
    stay = value;
    update();
  }
  let shown = '';
  function update() {
    setText(lead, why().lead);
    setText(verdict, chosen().verdict);
    const { not_known: notKnown } = chosen();
    if (notKnown.join() !== shown) {
      shown = notKnown.join();
      unknown.replaceChildren(...notKnown.map(one => h('li', {}, one)));
    }
    choice.update();
    studies.update();
  }
  return { update };
}

// topics without a study that bears on the stay are left out
function createTopics({ why, bearing }) {
  const parts = why().topics.map(({ name, title }) => {
    const list = createFindings({ findings: () => bearing().filter(({ topic }) => topic === name) });
    return { name, list, element: h('div', { 'data-topic': name }, h('h4', { class: 'fourth' }, title), list.element) };
  });
  return {
    element: h(
      'div',
      {},
      parts.map(part => part.element),
    ),
    update() {
      const topics = new Set(bearing().map(({ topic }) => topic));
      for (const { name, list, element } of parts) {
        setAttribute(element, 'hidden', !topics.has(name));
        list.update();
      }
    },
  };
}
