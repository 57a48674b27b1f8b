// What the wishes come to: in words, the smallest habitat to take over, or which wishes collide and what would let them meet.

import { tr } from '../../../state/language.js';
import { SPIN } from '../../../state/fields.js';
import { h, setChildren } from '../../shared/dom.js';
import { habitatWords } from '../map/ring.js';

/** alter(number, value): the wish of that number set to a value. */
export function createSizeAnswer({ store, alter }) {
  const element = h('div', { class: 'size-answer', role: 'status' });

  /** With what held is let go: the habitat is the wishes' now. */
  function use(radius_m, spin_rpm) {
    if (store.view.hold) store.look({ hold: null, held: null, follower: null });
    store.edit(draft => {
      draft.habitat.radius_m = radius_m;
      draft.habitat.spin_rpm = spin_rpm;
    });
  }

  // as the words have it; where nothing wished for bounds the spin above, the one nearest to that there is
  function spinOf({ smallest: { as_said: said, program_most_rpm: most }, spin_range_rpm: [low] }) {
    return said.spin_rpm ?? Math.max(Math.min(store.read(SPIN), most), low ?? 0);
  }

  function met(answer) {
    const { radius_m } = answer.smallest.as_said,
      says = habitatWords(store, radius_m, spinOf(answer));
    return [
      ...answer.words.map(say => h('p', { class: 'lead' }, say)),
      h(
        'p',
        { class: 'links' },
        h('button', { type: 'button', class: 'btn', onclick: () => use(radius_m, spinOf(answer)) }, tr('Use this habitat')),
        h('span', { class: 'small' }, says),
      ),
    ];
  }

  function collided({ collides, words, ways }) {
    return [
      h(
        'div',
        { class: 'refusal' },
        saidOnce(words, ways, collides).map((say, i) => h('p', {}, i === 0 ? h('b', {}, say) : say)),
      ),
      ...collides.map(one => h('div', { class: 'collides' }, h('p', { class: 'lead' }, one.say), instead(one))),
    ];
  }

  function instead({ wish, could_be_said: value, could_be_says: say }) {
    if (!hasFigure({ could_be: value })) return null;
    return h('button', { type: 'button', class: 'btn', onclick: () => alter(wish, value) }, tr('Make it {figure}', { figure: say }));
  }

  function show(answer) {
    setChildren(element, answer === null ? [] : answer.fits && answer.smallest ? met(answer) : collided(answer));
  }

  function fail(problem) {
    setChildren(element, h('p', { class: 'refusal' }, h('b', {}, problem.message)));
  }
  return { element, show, fail };
}

const hasFigure = ({ could_be: value }) => typeof value === 'number';

// without the sentence of the ways out where each of them is told again beside its button
function saidOnce(words, ways, collides) {
  return collides.some(hasFigure) ? words.filter(say => say !== ways) : words;
}
