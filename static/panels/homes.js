// At the dials: a second habitat for the asking; and where there are several, which of them the dials and the lanes serve.

import { tr } from '../state/language.js';
import { MOST_OTHERS, furtherHome, homeCount, homeFacts, homeName, homePath, servedHome } from '../state/homes.js';
import { NO_CAMERAS } from '../state/store.js';
import { getAt } from '../state/fields.js';
import { $, h, icon, setAttribute, setChildren, setText } from './shared/dom.js';

/** One more, which the dials then serve: both are seen from aboard, side by side and from the same seat. */
export function addHome(store) {
  store.edit(draft => {
    draft.compare = [...(draft.compare ?? []), furtherHome(store)];
  });
  const last = homeCount(store) - 1;
  const { aboard } = store.view.presets;
  store.look({ compare: 'beside', beside: last - 1, served: last, presets: { aboard, outside: aboard }, cameras: NO_CAMERAS });
}

/** The choice over the dials, and `add`, the button that offers a second. */
export function createHomes({ store }) {
  const choice = h('span', { class: 'choice', role: 'group', 'aria-label': tr('Dials and lanes of') });
  const more = h('button', { type: 'button', class: 'link', onclick: () => addHome(store) }, tr('Add another'));
  const element = h('div', { class: 'homes', hidden: true }, h('span', { class: 'homes-words' }, tr('Dials and lanes of')), choice, more);
  // a sign alone where there is no room for its words
  const words = h('span', {}, tr('Add a second habitat'));
  const add = h(
    'p',
    { class: 'add-home' },
    h('button', { type: 'button', class: 'link', title: tr('Add a second habitat'), onclick: () => addHome(store) }, icon('second'), words),
  );
  $('#dials').before(element);
  let buttons = [];

  // one whose inside is not in sight takes the place of Outside
  function serve(index) {
    const beside = index && store.view.compare === 'beside' ? { beside: index - 1 } : {};
    store.look({ served: index, ...beside });
  }
  function update() {
    const count = homeCount(store);
    setAttribute(element, 'hidden', count < 2);
    setAttribute(add, 'hidden', count > 1);
    setAttribute(more, 'hidden', count > MOST_OTHERS);
    if (count < 2) return;
    if (buttons.length !== count) {
      buttons = Array.from({ length: count }, (_, index) => h('button', { type: 'button', onclick: () => serve(index) }, h('b', {}), ' ', h('span', {})));
      setChildren(choice, buttons);
    }
    buttons.forEach((button, index) => {
      setText(button.firstElementChild, homeName(store, index));
      setText(button.lastElementChild, homeFacts(store, store.document.habitat, getAt(store.document, homePath(index))));
      setAttribute(button, 'aria-pressed', servedHome(store) === index);
    });
  }
  for (const topic of ['document', 'view']) store.on(topic, update);
  update();
  return { add };
}
