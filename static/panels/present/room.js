// The room that follows, while presenting: what they are told, their marks, and on call the code by which they come in, large enough for a hall.

import { tr, trMany } from '../../state/language.js';
import { createDigests } from '../../state/digests.js';
import { nowOf } from '../../state/now.js';
import { askOf } from '../../state/room_ask.js';
import { createTeller } from '../../state/teller.js';
import { h, setText } from '../shared/dom.js';

const LOOK_MS = 250; // at what tells of no change: how far a hand has turned an eye

/** `share`: of api/share.js; `address`: where they come in; `turned()`: of the stages. → {begin(state, element), end(), toggle()}. */
export function createRoom({ store, clock, share, address, turned }) {
  const people = h('p', { class: 'room-count' }),
    marks = h('p', { class: 'room-count' }),
    trouble = h('p', { class: 'room-trouble', role: 'status' });
  const panel = h(
    'section',
    { class: 'room dark', 'aria-label': tr('Follow on your phone'), hidden: true },
    h('h2', {}, tr('Follow on your phone')),
    h('img', { class: 'room-code', src: share.code, alt: tr('QR code of the address below') }),
    h('p', { class: 'room-address' }, address.replace('http://', '')),
    h('div', { class: 'room-counts' }, people, marks),
    trouble,
    h('button', { type: 'button', class: 'room-close', onclick: () => toggle(false) }, tr('Hide (R)')),
  );
  const page = Array.from(crypto.getRandomValues(new Uint8Array(4)), byte => byte.toString(16).padStart(2, '0')).join('');
  const digests = createDigests({ post: share.scene, changed: () => teller?.look() });
  let state = null, // of presenting
    teller = null,
    offs = [],
    added = new Map(),
    room = { followers: 0, ask: null, count: 0, marks: [] };

  function read() {
    const { talk, dark, dot } = state,
      { units } = store.view,
      next = talk.steps[talk.at + 1]?.scene;
    const isWhole = store.answer && !store.stale && !store.answer.partial;
    return nowOf({
      store,
      clock,
      talk,
      turned: turned(),
      scene: isWhole ? digests.shown(store.document, units) : digests.last,
      next: next ? digests.of(next, units) : null,
      ask: askOf(store.guesses, store.answer, page),
      dark,
      dot,
    });
  }

  function begin(presenting, element) {
    state = presenting;
    element.append(panel);
    teller = createTeller({
      read,
      send: share.now,
      changed: problem => setText(trouble, problem ? tr('Those who follow are not told: {why}', { why: problem.message }) : ''),
    });
    const look = () => teller?.look(); // told of leaving too, after the end
    const stream = share.listen({ heard });
    const timer = setInterval(look, LOOK_MS);
    offs = [
      () => stream.stop(),
      () => clearInterval(timer),
      () => teller.end({ over: true, dark: false, ask: null, dot: null }),
      clock.on(look),
      state.on(look),
      ...['view', 'answer', 'document', 'guesses'].map(topic => store.on(topic, look)),
    ];
    heard(room);
    look();
  }

  function heard(told) {
    room = told;
    setText(people, trMany('{count} follows', '{count} follow', told.followers));
    setText(marks, told.ask ? trMany('{count} mark placed', '{count} marks placed', told.count) : '');
    if (told.ask === `${page}-${store.guesses.id}`) for (const [k, along_m] of told.marks.entries()) add(`phone ${k}`, along_m);
  }

  // told again and again: only what is new changes anything
  function add(phone, along_m) {
    const key = `${store.guesses.id} ${phone}`;
    if (added.get(key) === along_m || !store.guesses.add(along_m, phone)) return;
    added.set(key, along_m);
  }

  function end() {
    for (const off of offs) off();
    offs = [];
    teller = null;
    panel.remove();
    panel.hidden = true;
  }

  function toggle(on = panel.hidden) {
    panel.hidden = !on;
  }

  return { begin, end, toggle };
}
