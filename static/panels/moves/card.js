// One motion: its key and name, Hide and more, the sentence of what goes in and what comes out; its rows when chosen.

import { isRightToLeft, tr } from '../../state/language.js';
import { motionName } from '../../state/fields.js';
import { otherWord } from '../../state/motions.js';
import { h, setAttribute, setChildren, setText, icon } from '../shared/dom.js';
import { createCardRows } from './card_rows.js';
import { createDriftBar } from './drift_bar.js';
import { createEditedName } from '../shared/figure.js';
import { pathKey } from '../shared/path_key.js';
import { createFieldError } from '../shared/field_error.js';
import { createProse } from './prose.js';
import { createSentence, outcome } from './sentence.js';

export function createCard({ store, index, kind, duplicate, mirror, remove, large, explain }) {
  const path = `motions.${index}.name`;
  const name = createEditedName({
    label: tr('Name'),
    kind: 'who-name',
    read: () => motionName(store, index),
    write: typed => store.set(path, typed),
  });
  const hide = h('button', { type: 'button', class: 'quiet', onclick: toggleHidden });
  const entry = (label, act) =>
    h(
      'button',
      {
        type: 'button',
        onclick: () => {
          menu.hidePopover();
          act(index);
        },
      },
      label,
    );
  const other = entry('', mirror);
  const menu = h('div', { popover: 'auto', class: 'menu', id: `menu-${index}` }, entry(tr('Duplicate'), duplicate), other, entry(tr('Remove'), remove));
  const more = h('button', { type: 'button', class: 'icon-button', popovertarget: menu.id, onclick: placeMenu }, icon('more'));
  const sentence = createSentence({ store, index, kind });
  const said = h('span', { class: 'said' });
  const drift = createDriftBar({ store, index, large, explain });
  const prose = createProse({
    store,
    words: tr('As prose'),
    prose: () => store.answer?.motions[index]?.prose ?? null,
    of: () => motionName(store, index),
  });
  const slot = createFieldError({ store, path });
  const unfold = h(
    'button',
    { type: 'button', class: 'unfold', onclick: () => store.look({ chosen: store.view.chosen === index ? null : index }) },
    pathKey(index),
  );
  const element = h(
    'article',
    { class: 'card' },
    h('header', {}, unfold, h('h3', {}, name.element), hide, more, menu),
    h('div', { 'data-row': path }, slot.element),
    h('p', {}, sentence.element, said),
    drift.element,
    prose.element,
  );
  let rows = null;
  // not by the header's buttons: unfolding moves the page from under the pointer before it is let go
  element.addEventListener('focusin', event => {
    if (!event.target.closest('header')) choose();
  });
  element.addEventListener('click', event => {
    if (!event.target.closest('button')) choose();
  });

  function choose() {
    if (store.view.chosen !== index && !unfold.matches(':focus, :active')) store.look({ chosen: index });
  }
  function toggleHidden() {
    const mine = motionName(store, index),
      { hidden } = store.view;
    store.look({ hidden: hidden.includes(mine) ? hidden.filter(other => other !== mine) : [...hidden, mine] });
  }
  function placeMenu() {
    const box = more.getBoundingClientRect();
    menu.style.top = `${box.bottom + 4}px`;
    menu.style.left = `${Math.max(8, isRightToLeft ? box.left : box.right - 208)}px`;
    const word = otherWord(store.fields, store.document.motions[index]);
    setText(other, word === null ? '' : tr('Duplicate, {way}', { way: word }));
    setAttribute(other, 'hidden', word === null);
  }

  function update() {
    const chosen = store.view.chosen === index,
      mine = motionName(store, index);
    const hidden = store.view.hidden.includes(mine);
    element.classList.toggle('chosen', chosen);
    element.classList.toggle('hidden-motion', hidden);
    name.update();
    setText(hide, hidden ? tr('Show') : tr('Hide'));
    setAttribute(hide, 'aria-label', hidden ? tr('Show {motion} on the stages', { motion: mine }) : tr('Hide {motion} on the stages', { motion: mine }));
    setAttribute(more, 'aria-label', tr('More for {motion}', { motion: mine }));
    setAttribute(unfold, 'aria-label', tr('{motion}: all its figures', { motion: mine }));
    setAttribute(unfold, 'aria-expanded', chosen);
    sentence.update();
    slot.update();
    tellOutcome();
    drift.update(chosen);
    prose.update();
    if (chosen && !rows) {
      rows = createCardRows({ store, index, kind });
      element.append(rows.element);
    }
    if (rows) {
      rows.element.hidden = !chosen;
      if (chosen) rows.update();
    }
  }
  function tellOutcome() {
    const pieces = store.answer?.motions[index]?.pieces ?? [];
    const chosen = store.view.chosen === index,
      key = `${chosen} ${pieces.join('')}`;
    if (said.dataset.words === key) return;
    said.dataset.words = key;
    setChildren(said, outcome(pieces, chosen ? explain : null)); // of the others nobody has to step past the terms
  }
  return { element, update };
}
