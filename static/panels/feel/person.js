// Who is aboard: how tall and how quick, and two runners to look at.

import { tr, trLater } from '../../state/language.js';
import { groundOf } from '../../state/shapes.js';
import { showQuantity } from '../../state/units.js';
import { freshName } from '../../state/words.js';
import { motionName } from '../../state/fields.js';
import { h, setAttribute } from '../shared/dom.js';
import { walkingPace } from './figure_words.js';
import { createField } from '../shared/field.js';
import { createFold } from '../shared/fold.js';

const ROWS = [
  ['height_m', trLater('Height')],
  ['walk_m_s', trLater('Walks')],
  ['run_m_s', trLater('Runs')],
  ['climb_m_s', trLater('Climbs')],
  ['lift_m_s', trLater('Lift')],
  ['head_turn_deg_s', trLater('Head turn')],
];
const RUNNERS = [
  [trLater('Runner spinward'), 0],
  [trLater('Runner antispinward'), 180],
];

export function createFeelPerson({ element, store }) {
  const fold = createFold({
    words: () => tr('Who is aboard: {person}', { person: personWords(store) }),
    make: () => [
      ...ROWS.map(([name, label]) => createField({ store, path: `person.${name}`, label: tr(label) })),
      { element: h('p', { class: 'small' }, tr('Climbs is the speed straight up, on stairs and ladders.')), update() {} },
    ],
  });
  const run = h('button', { type: 'button', class: 'btn', onclick: putRunners }, tr('Put two runners on the deck'));
  element.append(h('p', { class: 'links' }, fold.button), fold.element, h('p', { class: 'links' }, run));

  function putRunners() {
    const taken = store.document.motions.map((_, i) => motionName(store, i));
    const runners = RUNNERS.map(([name, heading]) => runner(store, freshName(tr(name), taken), heading));
    store.edit(draft => {
      draft.motions.push(...runners);
    });
    store.tell({ kind: 'told', say: tr('Two runners are on the deck: one spinward, one antispinward.'), undo: true });
  }
  return {
    update() {
      fold.update();
      setAttribute(run, 'hidden', !walks(store) || running(store));
    },
  };
}

// round the deck or along a floor, both ways; a turntable has no deck to run round
function walks({ fields, document }) {
  return Boolean(fields.kinds.walk) && !groundOf(fields, document.habitat).level;
}

// once is enough; and the key that plays must not press a button that was just used
function running({ document }) {
  return RUNNERS.every(([name]) => document.motions.some(motion => motion.name === name || motion.name === tr(name)));
}

function runner(store, name, heading) {
  return { ...structuredClone(store.fields.kinds.walk.new), name, speed_m_s: store.read('person.run_m_s'), heading_deg: heading };
}

/** '1.75 m, walks 1.4 m/s, runs 4.0 m/s' */
function personWords(store) {
  const { units } = store.view;
  const speed = path => walkingPace(store.read(path), units);
  return tr('{height}, walks {walk}, runs {run}', {
    height: showQuantity(store.read('person.height_m'), 'm', units),
    walk: speed('person.walk_m_s'),
    run: speed('person.run_m_s'),
  });
}
