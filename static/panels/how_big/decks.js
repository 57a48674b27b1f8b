// The decks of place 1: named levels, their radius typed, their gravity and speed from the answer.

import { listed, tr, trMany } from '../../state/language.js';
import { showQuantity, threeFigures } from '../../state/units.js';
import { $, h, setAttribute, setText, icon } from '../shared/dom.js';
import { createFigure } from '../shared/figure.js';

export function createDecks({ store }) {
  const table = $('#decks'),
    body = $('tbody', table);
  const beyond = h('p', { class: 'small' });
  let rows = [];
  table.after(beyond);
  $('#deck-links').append(h('button', { type: 'button', class: 'link', onclick: add }, tr('Add a deck')));

  const decks = () => store.read('habitat.decks') ?? [];

  function add() {
    store.edit(draft => {
      draft.habitat.decks = [...decks(), { name: tr('Deck {number}', { number: decks().length + 1 }), radius_m: draft.habitat.radius_m }];
    });
  }
  function remove(index) {
    store.edit(draft => {
      draft.habitat.decks.splice(index, 1);
    });
  }

  function createRow(index) {
    const path = `habitat.decks.${index}`;
    const name = h('span', {
      contenteditable: 'plaintext-only',
      role: 'textbox',
      'aria-label': tr('Name of deck {number}', { number: index + 1 }),
      spellcheck: 'false',
      onblur: rename,
      onkeydown(event) {
        if (event.key === 'Enter') {
          event.preventDefault();
          name.blur();
        }
      },
    });
    const radius = createFigure({ store, path: `${path}.radius_m`, label: tr('Radius of deck {number}', { number: index + 1 }), step: () => 0.1 });
    const gravity = h('td', { class: 'r' }),
      speed = h('td', { class: 'r' });
    const element = h(
      'tr',
      {},
      h('th', { scope: 'row' }, name),
      h('td', { class: 'r' }, radius.element),
      gravity,
      speed,
      h(
        'td',
        { class: 'r' },
        h(
          'button',
          { type: 'button', class: 'icon-button', 'aria-label': tr('Remove deck {number}', { number: index + 1 }), onclick: () => remove(index) },
          icon('close'),
        ),
      ),
    );
    function rename() {
      const typed = name.textContent.trim();
      if (typed && typed !== decks()[index].name) store.set(`${path}.name`, typed);
      setText(name, decks()[index]?.name ?? '');
    }
    function update() {
      if (document.activeElement !== name) setText(name, decks()[index].name ?? '');
      radius.update();
      const answered = store.answer?.habitat.decks?.[index];
      setText(gravity, answered ? `${threeFigures(answered.felt_g)}\u00a0g` : '');
      setText(speed, answered ? showQuantity(answered.rim_speed_m_s, 'm/s', store.view.units) : '');
    }
    return { element, update };
  }

  function update() {
    if (rows.length !== decks().length) {
      rows = decks().map((_, index) => createRow(index));
      body.replaceChildren(...rows.map(row => row.element));
    }
    setAttribute(table, 'hidden', rows.length === 0);
    setText(beyond, beyondWords(decks(), store.read('habitat.radius_m')));
    setAttribute(beyond, 'hidden', !beyond.textContent);
    rows.forEach(row => row.update());
  }
  return { update };
}

/** 'Galley is beyond the deck: no level of this habitat.'; '' where none is. */
function beyondWords(decks, radius_m) {
  const names = decks.filter(deck => deck.radius_m > radius_m).map(({ name }) => name);
  return names.length
    ? trMany('{names} is beyond the deck: no level of this habitat.', '{names} are beyond the deck: no level of this habitat.', names.length, {
        names: listed(names),
      })
    : '';
}
