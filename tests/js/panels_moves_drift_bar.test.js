// Why it drifts: steps of the bar follow one another in the stated order and end at the drift.

import assert from 'node:assert/strict';
import test from 'node:test';
import { downOf, NONE, partsOf } from '../../static/panels/moves/drift_bar.js';
import { GLOSSARY, glossaryOf } from '../../static/panels/glossary_words.js';

const landing = parts => ({ landing: { drift_parts_m: { order: ['centrifugal', 'coriolis', 'drag'], ...parts } } });

test('each part begins where the one before it ended', () => {
  const parts = partsOf(landing({ centrifugal: 5, coriolis: -2, drag: -0.5, other: 0.25 }));
  assert.deepEqual(
    parts.map(part => part.name),
    ['Centrifugal', 'Coriolis', 'Drag', 'The rest'],
  );
  assert.deepEqual(
    parts.map(part => part.from_m),
    [0, 5, 3, 2.5],
  );
  assert.equal(parts.at(-1).from_m + parts.at(-1).by_m, 2.75);
});

test('what ends in a cup or on its table has its causes and its way there', () => {
  const comes_down = { ...landing({ centrifugal: 0.35, coriolis: -0.16, other: 0 }).landing, way: { turns: 0, of_turn: 0.001 } };
  const poured = { landing: null, findings: { comes_down } };
  assert.equal(partsOf(poured).length, 2);
  assert.equal(downOf(poured).way.of_turn, 0.001);
});

test('the order is the answer’s, and a rest of nothing is left out', () => {
  const parts = partsOf({ landing: { drift_parts_m: { order: ['drag', 'coriolis'], drag: 1, coriolis: 2, other: 1e-12 } } });
  assert.deepEqual(
    parts.map(part => part.name),
    ['Drag', 'Coriolis'],
  );
});

test('what the words of a motion say already is not said again beside the bar', () => {
  assert.equal(NONE.far_round, undefined);
});

test('without parts there is no bar', () => {
  for (const motion of [undefined, { landing: null }, { landing: { drift_parts_m: null, drift_parts_none: 'bounced first' } }])
    assert.equal(partsOf(motion), null);
});

test('terms stand in the order of the alphabet, those of kinds among them', () => {
  const terms = glossaryOf({ walk: { terms: { Walk: 'Somebody walks.' } }, drop: { terms: { Drop: 'A thing falls.' } } }).map(([term]) => term.toLowerCase());
  assert.ok(terms.includes('walk') && terms.includes('drop') && terms.length === GLOSSARY.length + 2);
  assert.deepEqual(
    terms,
    [...terms].sort((a, b) => a.localeCompare(b, 'en')),
  );
  assert.equal(new Set(terms).size, terms.length);
  for (const [term, words] of GLOSSARY) assert.ok(words.endsWith('.') && words.split(/\.(?:\s|$)/).filter(Boolean).length <= 2, term);
});
