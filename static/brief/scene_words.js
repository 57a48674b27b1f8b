// The scene in words: what goes into each motion, what comes out, and what its answer leaves out; whose laws and figures these are;
// and where it can be opened again.

import { tr, trLater } from '../state/language.js';
import { motionName } from '../state/fields.js';
import { showFinding } from '../state/motions.js';
import { findingRange } from '../time/findings.js';
import { bodyName } from '../panels/moves/body.js';
import { liquidName } from '../panels/moves/pour.js';
import { createSentence, outcome } from '../panels/moves/sentence.js';
import { h } from '../panels/shared/dom.js';
import { pathKey } from '../panels/shared/path_key.js';
import { LONGEST_LINK, toHash } from '../state/persistence.js';
import { shownIndexes, withShown } from '../state/shown.js';

export function movesOf(store) {
  const { motions } = store.document,
    shown = shownIndexes(store);
  if (!motions.length) return [h('p', {}, tr('Nothing moves in this scene yet.'))];
  if (!shown.length) return [h('p', {}, tr('Every motion of this scene is hidden.'))];
  return shown.map(index =>
    h(
      'div',
      { class: 'move' },
      h('h3', {}, pathKey(index), motionName(store, index)),
      h('p', {}, `${given(store, motions[index], index)} `, ...outcome(store.answer.motions[index].pieces)),
      findingsOf(store, index),
      leftOut(store.answer.motions[index].assumptions),
    ),
  );
}

// the workbench's own sentence, without its fields
function given(store, motion, index) {
  const sentence = createSentence({ store, index, kind: motion.kind });
  sentence.update();
  return sentence.element.textContent.trim();
}

// what its kind tells besides, least and greatest where it changes
function findingsOf(store, index) {
  const motion = store.answer.motions[index];
  const findings = store.fields.kinds[motion.kind].findings.flatMap(finding => {
    const [least, most] = findingRange(motion, finding.name) ?? [];
    if (least === undefined) return [];
    const [from, to] = [least, most].map(value => showFinding(finding, value, store.view.units));
    return [`${finding.say} ${from === to ? from : tr('{from} to {to}', { from, to })}`];
  });
  return (
    findings.length > 0 &&
    h(
      'p',
      { class: 'note found' },
      `${findings.join('; ')}.`.replace(/^./, first => first.toUpperCase()),
    )
  );
}

function leftOut(assumptions) {
  return assumptions.length > 0 && h('p', { class: 'note' }, assumptions.join(' '));
}

// Where the laws and figures of a scene come from: only of what it uses.

// biome-ignore format: a row is a law
const LAWS = [
  [() => true, trLater('Motion: a free body goes straight in the room that does not turn; carried into the turning one, any mechanics text, such as Taylor, Classical Mechanics (2005), chapter 9. One g is 9.80665 m/s² (CGPM 1901).')],
  [({ air }) => air, trLater('Air: gas constant and viscosity of ISO 2533:1975; turning with the habitat, thinner toward the axis.')],
  [({ air, spheres }) => air && spheres, trLater('Drag of a sphere: Clift, Grace and Weber, Bubbles, Drops and Particles (1978), table {table}, made smooth.')],
  [({ air, spun }) => air && spun, trLater('Lift of a spinning ball: the fit of Cross and Nathan to measured flights of baseballs.')],
  [({ regimes }) => regimes.has('stream'), trLater('Streams: Grant and Middleman, AIChE J. 12, 669 (1966), for where they break; Rayleigh (1878) for the drops.')],
  [({ regimes }) => regimes.has('drips'), trLater('Dripping: the law of Tate, corrected by Lando and Oakley, J. Colloid Interface Sci. 25, 526 (1967).')],
  [({ touches }) => touches, trLater('Bouncing, rolling and sliding: the balance of a rigid ball, any mechanics text; on a turntable it gives the circles of Weltner, Am. J. Phys. 47, 984 (1979).')],
];

export function sourcesOf(store) {
  const { answer, fields } = store,
    { air } = answer.scene,
    shown = shownIndexes(store);
  const [motions, answers] = [answer.scene.motions, answer.motions].map(all => shown.map(index => all[index]));
  const bodies = named(
      fields.bodies,
      motions.map(m => m.body),
    ),
    liquids = named(
      fields.liquids,
      motions.map(m => m.liquid),
    );
  const used = {
    air,
    spheres: motions.some(m => m.liquid || (bodyOf(fields, m)?.drag ?? 'sphere') === 'sphere'),
    spun: motions.some(m => m.ball_spin_rpm),
    regimes: new Set(answers.map(m => m.stream?.regime)),
    touches: answers.some(m => m.surface || m.events.some(event => event.velocity_after_m_s?.some(Boolean))),
  };
  const laws = LAWS.filter(([when]) => when(used)).map(([, say]) => tr(say, { table: '5.2' }));
  const things = [...bodies, ...liquids].map(({ name, source }) => {
    const called = liquidName(bodyName(name));
    return `${called[0].toUpperCase()}${called.slice(1)}: ${source}.`;
  });
  return [h('ul', {}, ...[...laws, ...things].map(say => h('li', {}, say)))];
}

function named(list, names) {
  return list.filter(({ name }) => names.includes(name));
}

function bodyOf(fields, { body }) {
  return typeof body === 'string' ? fields.bodies.find(({ name }) => name === body) : body;
}

// Where the scene of a printed page can be opened again.

const LONGEST_READ = 300; // of an address that somebody may still type from paper

/** {url, rows}: the workbench's address with the scene, and what the page says of it. */
export async function linkOf(store) {
  const url = new URL('./', location.href).href + withShown(await toHash(store.document, store.fields), store);
  if (url.length > LONGEST_LINK) return { url: './', rows: [h('p', {}, tr('The scene is too long for a link: keep its file with this page.'))] };
  return { url, rows: url.length > LONGEST_READ ? [] : [h('p', { class: 'address' }, url)] };
}
