// The scene in words: what goes into each motion, what comes out, and what its answer leaves out.

import { motionName } from '../state/fields.js';
import { showFinding } from '../state/motions.js';
import { foundRange } from '../time/findings.js';
import { createSentence, outcome } from '../panels/moves/sentence.js';
import { h } from '../panels/shared/dom.js';
import { pathKey } from '../panels/shared/path_key.js';

export function movesOf(store) {
  const { motions } = store.document;
  if (!motions.length) return [h('p', {}, 'Nothing moves in this scene yet.')];
  return motions.map((motion, index) =>
    h(
      'div',
      { class: 'move' },
      h('h3', {}, pathKey(index), motionName(store, index)),
      h('p', {}, `${given(store, motion, index)} `, ...outcome(store.answer.motions[index].pieces)),
      found(store, index),
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
function found(store, index) {
  const motion = store.answer.motions[index];
  const told = store.fields.kinds[motion.kind].findings.flatMap(finding => {
    const [least, most] = foundRange(motion, finding.name) ?? [];
    if (least === undefined) return [];
    const [from, to] = [least, most].map(value => showFinding(finding, value, store.view.units));
    return [`${finding.say} ${from === to ? from : `${from} to ${to}`}`];
  });
  return told.length > 0 && h('p', { class: 'note found' }, `${told.join('; ')}.`.replace(/^./, first => first.toUpperCase()));
}

function leftOut(assumptions) {
  return assumptions.length > 0 && h('p', { class: 'note' }, assumptions.join(' '));
}
