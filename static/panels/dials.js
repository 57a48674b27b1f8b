// The desk: Radius and Spin always in reach, and what they give, each with its lock.

import { tr, trAs, trLater } from '../state/language.js';
import { NOTHING_HELD, heldHome, homeAnswer, homePath, servedHome } from '../state/homes.js';
import { groundKey, groundOf } from '../state/shapes.js';
import { showQuantity, threeFigures } from '../state/units.js';
import { $, h, setAttribute, setText, icon } from './shared/dom.js';
import { createField } from './shared/field.js';

// of the ground: what is nearest to a figure's name on the desk
const RIMS = { deck: trLater('rim'), floor: trLater('floor'), turntable: trLater('edge') };
const HOLDS = {
  gravity: { hold: trLater('Hold gravity'), none: trLater('There is no outward gravity to hold while nothing turns.'), held: h => h.deck_gravity_m_s2 }, // the spin's: thrust, which is added, stays as it is
  rim_speed: { hold: trLater('Hold rim speed'), none: trLater('There is no rim speed to hold while nothing turns.'), held: h => h.rim_speed_m_s },
  spin: { hold: trLater('Hold spin'), held: () => null },
};

/** Locks what the dials of a habitat give; the dial not moved follows (`spin`: the spin dial is only locked). One is held at a time. */
export function toggleHold(store, what, home = servedHome(store)) {
  if (what === null || holds(store, what, home)) store.look(NOTHING_HELD);
  else store.whenAnswered(() => hold(store, what, home));
}

function hold(store, what, home) {
  const answer = homeAnswer(store.answer, home);
  if (!answer) return;
  const held = HOLDS[what].held(answer.habitat);
  if (what !== 'spin' && !(held > 0)) return store.tell({ kind: 'told', say: tr(HOLDS[what].none) });
  store.look({ hold: what, held, follower: `${homePath(home)}.spin_rpm` });
}

const holds = (store, what, home) => store.view.hold === what && heldHome(store) === home;

/** `add`: what offers a second habitat. */
export function createDials({ store, solve, add }) {
  const pairs = []; // by habitat, made when it is first served
  const readouts = [
    createReadout(
      store,
      'gravity',
      'big',
      answer => [threeFigures(answer.habitat.felt_g), gravityWhere(store.fields, answer)],
      tr('hold gravity'),
      says => served().typeGravity(says),
    ),
    createReadout(
      store,
      'rim_speed',
      '',
      (answer, units) => [showQuantity(answer.habitat.rim_speed_m_s, 'm/s', units), tr(RIMS[groundKey(groundOf(store.fields, answer.scene.habitat))])],
      null,
    ),
    createReadout(
      store,
      'spin',
      '',
      answer =>
        answer.habitat.period_s ? [`${threeFigures(answer.habitat.period_s)}\u00a0s`, tr('a turn')] : [trAs('before turn', 'no'), trAs('after no', 'turn')],
      null,
    ),
  ];
  const shared = h(
    'div',
    { class: 'readouts' },
    readouts.map(r => r.element),
    add,
  );
  $('#dials').append(shared);

  function served() {
    const index = servedHome(store);
    if (!pairs[index]) {
      pairs[index] = createPair(store, solve, index);
      shared.before(pairs[index].element);
    }
    pairs.forEach((pair, i) => setAttribute(pair.element, 'hidden', i !== index));
    return pairs[index];
  }

  function update() {
    served().update();
    const index = servedHome(store);
    readouts.forEach(readout => readout.update(homeAnswer(store.answer, index), index));
  }
  for (const topic of ['document', 'answer', 'view', 'notice']) store.on(topic, update);
  update();
}

function createPair(store, solve, home) {
  const [RADIUS, SPIN] = ['radius_m', 'spin_rpm'].map(name => `${homePath(home)}.${name}`);
  const locks = { [RADIUS]: icon('locked'), [SPIN]: icon('locked') };
  const dial = path =>
    createField({
      store,
      path,
      label: path === SPIN ? tr('Spin') : tr('Radius'),
      ticks: true,
      inset: 8,
      solve,
      lockSign: locks[path],
      locked: () => holds(store, 'spin', home) && path === SPIN,
    });
  const radius = dial(RADIUS),
    spin = dial(SPIN);
  const why = { [RADIUS]: h('p', { class: 'why' }), [SPIN]: h('p', { class: 'why' }) };
  radius.element.append(why[RADIUS]);
  spin.element.append(why[SPIN]);

  // the dial in hand leads, so the other is the one that follows
  for (const [field, other] of [
    [radius, SPIN],
    [spin, RADIUS],
  ]) {
    field.element.addEventListener('focusin', () => {
      const { hold, follower } = store.view;
      if ((hold === 'gravity' || hold === 'rim_speed') && heldHome(store) === home && follower !== other) store.look({ follower: other });
    });
  }

  function update() {
    const { hold, follower, units } = store.view;
    for (const field of [radius, spin]) {
      const path = field.element.dataset.row,
        follows = hold !== null && follower === path;
      field.element.classList.toggle('follows', follows);
      setAttribute(locks[path], 'hidden', follows ? null : '');
      setText(why[path], follows && homeAnswer(store.answer, home) ? reason(hold, homeAnswer(store.answer, home), store, units) : '');
      field.update();
    }
  }
  /** Opens Spin's box with a gravity in it, g: the server finds the spin that gives what is typed. */
  const typeGravity = g => spin.figure.type(`${g} g`);
  return { element: h('div', { class: 'pair' }, radius.element, spin.element), update, typeGravity };
}

function gravityWhere(fields, { scene: { habitat } }) {
  if (habitat.spin_ramp.length) return tr('g at first');
  return { deck: tr('g on deck'), floor: tr('g on floor'), turntable: tr('g at edge') }[groundKey(groundOf(fields, habitat))];
}

function reason(hold, answer, store, units) {
  if (hold === 'spin') return tr('held: it stays');
  const { held } = store.view;
  return hold === 'gravity'
    ? tr('held: it follows, to keep gravity at {gravity}', { gravity: `${threeFigures(answer.habitat.felt_g)}\u00a0g` })
    : tr('held: it follows, to keep rim speed at {speed}', { speed: showQuantity(held, 'm/s', units) });
}

// `type`: where its figure can be pressed to type another
function createReadout(store, what, size, say, holdWords, type = null) {
  const figure = h('b', {}),
    unit = h('span', {});
  const lock = h('button', { type: 'button', class: `lock${holdWords ? ' worded' : ''}`, onclick: () => toggleHold(store, what) });
  const says = type
    ? h('button', { type: 'button', class: 'says', title: tr('Type another at Spin'), onclick: () => type(figure.textContent) }, figure, ' ', unit)
    : h('span', { class: 'says' }, figure, ' ', unit);
  const element = h('p', { class: `readout ${size} ${what}` }, says, lock);
  function update(answer, home) {
    if (!answer) return;
    const [number, words] = say(answer, store.view.units);
    setText(figure, number);
    setText(unit, words);
    const on = holds(store, what, home);
    setAttribute(lock, 'aria-pressed', on);
    if (!holdWords) setAttribute(lock, 'aria-label', tr(HOLDS[what].hold));
    setAttribute(lock, 'title', what === 'gravity' ? tr('Hold gravity (H)') : tr(HOLDS[what].hold));
    if (lock.dataset.on !== String(on)) {
      lock.dataset.on = String(on);
      lock.replaceChildren(icon(on ? 'locked' : 'open'), ...(holdWords ? [h('span', {}, on ? tr('gravity held') : holdWords)] : []));
    }
  }
  return { element, update };
}
