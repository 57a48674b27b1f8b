// The craft's tumble as a motion of the scene: both stages show it, and files of the scene hold it.

import { tr } from '../../state/language.js';
import { TUMBLE_PRESETS, asMotion, isAsAsked, tumbler } from '../../state/ship.js';
import { NO_CAMERAS } from '../../state/store.js';
import { threeFigures } from '../../state/units.js';
import { h, setAttribute, setText } from '../shared/dom.js';

export function createShowing({ store, clock, heard }) {
  const button = h('button', { type: 'button', class: 'btn', onclick: show }),
    note = h('p', { class: 'small', hidden: true }, tr('The motion in the scene has other figures than these.')),
    element = h('div', {}, note, h('p', { class: 'links' }, button));
  let hid = []; // for it to be seen alone
  const tumble = () => store.ship.answer?.tumble ?? null;

  const asked_s = ({ craft }) => (craft.tumble.dissipation ? store.read('craft.tumble.dissipation.time_s') : null);

  function show() {
    let done = null;
    store.edit(draft => {
      done = asMotion(draft, tumble(), asked_s(draft));
    });
    const others = store.document.motions.slice(1).map(motion => motion.name);
    hid = others.filter(name => !store.view.hidden.includes(name));
    store.look({ chosen: 0, hidden: others, presets: { ...TUMBLE_PRESETS }, cameras: NO_CAMERAS });
    clock.seek(0);
    const words = [
      tr('The craft tumbles in the scene now; Play shows it.'),
      done.times > 1.01 && tr('So that it is flat while one watches, it loses its energy {times} times as fast as asked.', { times: threeFigures(done.times) }),
      others.length && tr('Hidden: {names}.', { names: others.join(', ') }),
      done.gone.length && tr('Taken out, for only drops and throws are worked out in a craft that tumbles: {names}.', { names: done.gone.join(', ') }),
    ].filter(Boolean);
    if (words.length > 1) store.tell({ kind: 'told', say: words.join(' '), undo: true });
    else heard.say(words[0]);
  }

  function update() {
    if (hid.length && tumbler(store.document) < 0) showAgain();
    setAttribute(element, 'hidden', !tumble());
    const other =
      !store.shipBehind &&
      Boolean(tumble() && store.document.craft?.tumble) &&
      tumbler(store.document) >= 0 &&
      !isAsAsked(store.document, tumble(), asked_s(store.document));
    setAttribute(note, 'hidden', !other);
    setText(button, tumbler(store.document) < 0 ? tr('Show it as a motion') : tr('Show it again as a motion, with these figures'));
  }
  // undone
  function showAgain() {
    const hidden = store.view.hidden.filter(name => !hid.includes(name));
    hid = [];
    store.look({ hidden });
  }
  return { element, update };
}
