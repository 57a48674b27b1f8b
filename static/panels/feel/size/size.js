// Size it for me: wishes in rows, the smallest habitat that meets them, and all others that do as a band on the map.

import { tr } from '../../../state/language.js';
import { createNewest } from '../../../state/newest.js';
import { h, setAttribute, setChildren } from '../../shared/dom.js';
import { createSizeAnswer } from './answer.js';
import { createWishRow, FIRST_WISHES, MOST_WISHES, asRequest, nextWish } from './wishes.js';
import { createFold } from '../../shared/fold.js';

const SETTLE_MS = 180; // a wish is asked about once its figure rests

/** shown(answer | null): what the map draws of it. */
export function createFeelSize({ element, store, client, shown }) {
  const fold = createFold({ words: () => tr('Size it for me'), make: () => [createWishes({ store, client, shown })] });
  element.append(h('h3', { class: 'third' }, fold.button), fold.element);
  return { update: fold.update };
}

function createWishes({ store, client, shown }) {
  let wishes = FIRST_WISHES,
    lastRequest = null,
    timer = null,
    rows = [],
    awaited = true; // the answer, by who has just opened this or changed a wish
  const list = h('div', { class: 'wishes' });
  const add = h('button', { type: 'button', class: 'btn', onclick: addOne }, tr('Add a wish'));
  const answer = createSizeAnswer({ store, alter: (number, value) => put(number, { ...wishes[number], value }) });
  const newest = createNewest({
    request,
    ask: ({ body, units }, signal) => client.size(body, { units, signal }),
    answered,
    failed,
  });
  const element = h(
    'div',
    {},
    h('p', { class: 'small' }, tr('The smallest habitat that meets every wish:')),
    list,
    h('p', { class: 'links' }, add),
    answer.element,
  );

  function request() {
    return { body: asRequest(wishes, store.document.person), units: store.view.units };
  }

  function answered(size) {
    rows.forEach(row => row.setError(null));
    answer.show(size);
    shown(size);
    bring();
  }

  function bring() {
    if (awaited) reveal(answer.element, element);
    awaited = false;
  }

  // an error stands at the wish it is about
  function failed(problem) {
    const field = problem.errors?.[0]?.field ?? '',
      row = rows[Number(/^wishes\.(\d+)/.exec(field)?.[1])];
    rows.forEach(other => other.setError(other === row ? problem.message : null));
    if (row) answer.show(null);
    else answer.fail(problem);
    shown(null);
    bring();
  }

  function change(next, focus = null) {
    const rebuilt = next.length !== wishes.length;
    wishes = next;
    awaited = true;
    if (rebuilt) build();
    update();
    if (focus !== null) rows[Math.min(focus, rows.length - 1)]?.element.querySelector('select').focus();
  }

  function addOne() {
    change([...wishes, nextWish(wishes)], wishes.length);
  }

  function put(number, wish) {
    change(wishes.map((other, i) => (i === number ? wish : other)));
  }

  function build() {
    rows = wishes.map((_, number) =>
      createWishRow({
        store,
        number,
        wish: () => wishes[number],
        change: wish => put(number, wish),
        remove: () =>
          change(
            wishes.filter((__, i) => i !== number),
            number,
          ),
      }),
    );
    setChildren(
      list,
      rows.map(row => row.element),
    );
  }

  function update() {
    if (rows.length !== wishes.length) build();
    rows.forEach(row => row.update());
    setAttribute(add, 'disabled', wishes.length >= MOST_WISHES);
    const key = JSON.stringify(request());
    if (key === lastRequest) return;
    lastRequest = key;
    newest.drop();
    clearTimeout(timer);
    if (wishes.length) {
      timer = setTimeout(newest.want, SETTLE_MS);
      return;
    }
    answer.show(null);
    shown(null);
  }
  return { element, update };
}

// An answer that somebody has just asked for is brought into view: only the place's own body is scrolled, and no further than needed.

const FADES_PX = 24; // at the foot of the place, where what goes on below pales

/** Not while something is typed elsewhere: what is looked at there must stay where it is. `home` holds the answer's questions. */
function reveal(answer, home) {
  const at = document.activeElement,
    asks = at?.matches('input, select, textarea');
  if (asks && !home.contains(at)) return;
  const body = answer.closest('.body'),
    held = asks ? at.getBoundingClientRect() : null;
  body.scrollTop += nearest(answer.getBoundingClientRect(), body.getBoundingClientRect(), held);
}

/** How far to scroll for `part` to lie within `whole`; one higher than that begins at its top. What is `held` stays in sight
 *  as well, where that leaves `part` the lower half. */
export function nearest(part, whole, held = null) {
  const over = part.top - whole.top,
    under = part.bottom - whole.bottom + FADES_PX,
    both = held ? held.top - whole.top - FADES_PX / 4 : over;
  if (over < 0) return over;
  const most = over - both < (whole.bottom - whole.top) / 2 ? both : over;
  return Math.max(0, Math.min(most, under));
}
