// Place 3: how it is shown. Pace, beads, arrows, companion, measure, split, units, lights; and the flat plot.

import { ARROW_KINDS } from '../../state/arrow_kinds.js';
import { tr } from '../../state/language.js';
import { groundKey, groundOf } from '../../state/shapes.js';
import { paceWords, presetWords } from '../../state/words.js';
import { $, h, setText, icon } from '../shared/dom.js';
import { choiceRow, createChoice, createSwitch } from '../shared/choice.js';
import { createAtTheClock } from './at_the_clock.js';
import { createCompared } from './compared.js';
import { createLanguage } from './language.js';
import { createPlot } from './plot.js';

export const PACES = [1, 0.5, 0.25, 0.1];
const PACE_SIGNS = { 1: '1', 0.5: '½', 0.25: '¼', 0.1: '1/10' };

export function createLooks({ store, clock, client, explain, large }) {
  const of = (key, label, options) => createChoice({ label, options, chosen: () => store.view[key], choose: value => store.look({ [key]: value }) });
  const pace = createChoice({
    label: tr('Playback speed'),
    options: PACES.map(value => ({ value, say: PACE_SIGNS[value], label: paceWords(value), fraction: value === 0.1 })),
    chosen: () => clock.pace,
    choose: value => clock.setPace(value),
  });
  const spoken = createLanguage({
    languages: JSON.parse(document.body.dataset.languages),
    label: tr('Language'),
    speak: client.speak,
    tell: say => store.tell({ kind: 'failed', field: null, say }),
  });
  const choices = [
    [tr('Playback speed'), pace],
    [
      tr('Beads along the paths'),
      of('beads_s', tr('Beads'), [
        { value: 0, say: tr('off') },
        { value: 0.25, say: '¼\u00a0s' },
        { value: 1, say: '1\u00a0s' },
      ]),
    ],
    [
      tr('Measure'),
      of('measure', tr('Measure'), [
        { value: 'off', say: tr('off') },
        { value: 'dimensions', say: tr('dimensions') },
        { value: 'tape', say: tr('tape') },
      ]),
    ],
    [
      tr('Layout'),
      of('split', tr('Layout'), [
        { value: 'auto', say: tr('automatic') },
        { value: 'beside', say: tr('side by side') },
        { value: 'stacked', say: tr('stacked') },
      ]),
    ],
    [
      tr('Units'),
      of('units', tr('Units'), [
        { value: 'si', say: tr('SI') },
        { value: 'us', say: tr('US customary') },
      ]),
    ],
    [tr('Language'), spoken],
    [
      tr('Theme'),
      of('theme', tr('Theme'), [
        { value: 'auto', say: tr('system') },
        { value: 'up', say: tr('light') },
        { value: 'down', say: tr('dark') },
      ]),
    ],
    [
      tr('Type size'),
      of('type', tr('Type size of stages, timeline and map'), [
        { value: 'desk', say: tr('desk') },
        { value: 'room', say: tr('room') },
        { value: 'hall', say: tr('hall') },
      ]),
    ],
  ];
  const arrow = (key, label) =>
    createSwitch({
      label,
      on: () => store.view.arrows[key],
      turn: on => store.look({ arrows: { ...store.view.arrows, [key]: on } }),
    });
  const flag = (key, label) => createSwitch({ label, on: () => store.view[key], turn: on => store.look({ [key]: on }) });
  const arrows = [...ARROW_KINDS.map(({ show, word, color }) => arrow(show, swatched(tr(word), color))), arrow('alone', tr('of the chosen motion only'))];
  const companions = [flag('companion', tr('Aboard')), flag('companionOutside', tr('Outside'))];
  const group = (label, switches) =>
    h(
      'div',
      { class: 'between', role: 'group', 'aria-label': label },
      h('span', {}, label),
      h(
        'span',
        { class: 'switches' },
        switches.map(item => item.element),
      ),
    );

  const rows = choices.map(([label, choice]) => choiceRow(label, choice));
  $('#look-rows').append(...rows.slice(0, 2), group(tr('Arrows'), arrows), group(tr('Plain gravity'), companions), ...rows.slice(2));
  $('#look-caution').prepend(icon('caution'));
  const instant = createAtTheClock({ store, clock, explain });
  const compared = createCompared({ store });
  const plot = createPlot({ element: $('#plot'), store, clock, client, large });
  const all = [...choices.map(([, choice]) => choice), ...arrows, ...companions];

  function update() {
    if (store.view.place !== 3) return;
    setText($('#look-words'), lookWords(store));
    all.forEach(part => part.update());
    setText($('#plot-title'), tr('Height {along}', { along: groundOf(store.fields, store.document.habitat).along }));
    instant.update();
    compared.update();
    plot.update();
  }
  let before = clock.pace;
  clock.on(() => {
    if (clock.pace !== before) {
      before = clock.pace;
      update();
    }
    if (store.view.place !== 3) return;
    instant.move();
    plot.move();
  });
  for (const topic of ['document', 'answer', 'view']) store.on(topic, update);
  update();
  return { turnPlot: plot.turn };
}

function lookWords({ document: { air, habitat }, fields }) {
  const ground = groundOf(fields, habitat);
  if (ground.level) return tr('Aboard, the turntable stands still and what rolls on it curves. Outside is the room, in which the turntable turns.');
  const aboard =
    groundKey(ground) === 'floor' ? tr('Aboard, the floor stands still and free things curve.') : tr('Aboard, the deck stands still and free things curve.');
  return `${aboard} ${outsideWords(air !== null, Boolean(habitat.axial_thrust_m_s2))}`;
}

// what bends free flights, seen from outside
function outsideWords(air, thrust) {
  if (air && thrust) return tr('Outside, the stars stand still and the same things fly straight but for the air and the ship’s thrust.');
  if (air) return tr('Outside, the stars stand still and the same things fly straight but for the air.');
  if (thrust) return tr('Outside, the stars stand still and the same things fly straight but for the ship’s thrust.');
  return tr('Outside, the stars stand still and the same things fly straight.');
}

/** 'beside, ¼ speed' */
export function looksAnswer(store, clock) {
  return `${presetWords(store.view.presets.aboard)}, ${paceWords(clock.pace)}`;
}

// A word with the colour that it has on the stages, which are dark.
function swatched(word, color) {
  const swatch = h('span', { class: 'swatch', 'aria-hidden': true });
  swatch.style.color = color;
  return h('span', {}, word, swatch);
}
