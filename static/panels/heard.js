// What a change came to, for those who do not see it: 0.4 s after it comes to rest, one sentence of what changed for whom.

import { listed, tr, trMany } from '../state/language.js';
import { homeFacts } from '../state/homes.js';
import { isWithheld } from '../state/shown.js';
import { threeFigures } from '../state/units.js';
import { motionsWords } from '../state/words.js';

const REST_MS = 400;
const MOST_TOLD = 2; // motions of one sentence

/** write(sentence) puts it where it is read out. */
export function createHeard({ store, write, later = setTimeout, forget = clearTimeout }) {
  let timer = null,
    said = '', // by somebody else, to be written with the next sentence
    heard = null; // what was told last, or known from the start

  function rest() {
    forget(timer);
    timer = later(tell, REST_MS);
  }

  /** One sentence of somebody else's. */
  function say(text) {
    said = text;
    rest();
  }

  function tell() {
    if (store.answer && !store.stale && !store.answer.partial) {
      const now = outcomes(store);
      said = [said, heard ? changeWords(heard, now, store) : openingWords(now, store)].filter(Boolean).join(' ');
      heard = now;
    }
    if (said) write(said);
    said = '';
  }

  store.on('document', ({ replaced }) => {
    if (replaced) heard = null;
    rest();
  });
  for (const topic of ['answer', 'feel']) store.on(topic, rest);
  return { say };
}

// What can be told of a scene: its habitats, what became of each motion in each, and what its people would feel.
function outcomes({ answer, document, feel, view }) {
  const homes = [answer, ...(answer.compare ?? [])];
  return {
    units: view.units,
    gravity: homes.map(({ habitat }) => `${threeFigures(habitat.deck_gravity_g)}\u00a0g`),
    homes: [null, ...(document.compare ?? []).map(({ name }) => name)],
    motions: homes.map(({ motions }) =>
      motions.map(({ name, in_short: short }) => ({ name, short: view.hidden.includes(name) || isWithheld(view, name) ? null : short })),
    ),
    feel: view.place === 4 ? (feel?.says.short ?? null) : null,
  };
}

// 'The same lob, both ways, two throws: Lob out lands 5.21 m spinward after 1.06 s; Lob back lands …'
function openingWords({ motions: [own] }, { document, fields, view }) {
  const title = `${document.title || tr('Untitled scene')}, ${motionsWords(document.motions, fields.kinds)}`;
  return sentence([title, told(own, view.chosen)].filter(Boolean).join(': '));
}

function changeWords(before, now, store) {
  if (before.units !== now.units) return '';
  const [own, ...others] = now.motions.map((motions, home) => inHome(before, now, home, motions, store));
  const feel = now.feel && before.feel && now.feel !== before.feel && tr('people would feel this: {words}', { words: now.feel });
  const gone = store.notice?.undo ? '' : goneWords(before, now); // what can be undone is told with its notice
  return sentence([gone, own, ...others, feel].filter(Boolean).join('; '));
}

function inHome(before, now, home, motions, store) {
  const { document, view } = store;
  const name = now.homes[home];
  if (home >= before.homes.length)
    return tr('{name} added: {facts}, {gravity}', {
      name,
      facts: homeFacts(store, document.habitat, document.compare[home - 1].habitat),
      gravity: now.gravity[home],
    });
  const known = before.motions[home];
  const changed = motions.filter(({ name: of, short }) => short && short !== known.find(one => one.name === of)?.short);
  const fresh = changed.filter(({ name: of }) => !known.some(one => one.name === of));
  // one that was renamed is not a new one
  if (fresh.length && motions.length === known.length) return '';
  const says = told(changed, changed.indexOf(motions[view.chosen]), !fresh.length);
  const gravity = now.gravity[home] !== before.gravity[home] && now.gravity[home];
  const where = [name && (says || gravity) && tr('in {habitat}', { habitat: name }), gravity].filter(Boolean).join(', ');
  return [where, says].filter(Boolean).join(': ');
}

// the chosen one first, then those after it, and how many more
function told(motions, first, now = false) {
  const from = Math.max(0, first ?? 0);
  const order = [...motions.slice(from), ...motions.slice(0, from)].filter(({ short }) => short);
  const parts = order.slice(0, MOST_TOLD).map(({ name, short }) => (now ? tr('{name} now {does}', { name, does: short }) : `${name} ${short}`));
  const left = order.length - parts.length;
  if (left)
    parts.push(
      now ? trMany('and {count} more changed', 'and {count} more changed', left) : trMany('and {count} more motion', 'and {count} more motions', left),
    );
  return parts.join('; ');
}

function goneWords(before, now) {
  if (now.homes.length < before.homes.length) return tr('{name} is gone', { name: before.homes.find(name => name && !now.homes.includes(name)) });
  const gone = before.motions[0].filter(({ name }) => !now.motions[0].some(one => one.name === name));
  const names = listed(gone.map(({ name }) => name));
  return now.motions[0].length < before.motions[0].length && gone.length ? trMany('{names} is gone', '{names} are gone', gone.length, { names }) : '';
}

function sentence(words) {
  const text = words.trim();
  return text && `${text[0].toUpperCase()}${text.slice(1)}.`;
}
