// Words of a page by a catalogue: what is found, filled and counted, and what somebody typed, which stays as it is.

import assert from 'node:assert/strict';
import { test } from 'node:test';

let loaded = 0;

/** The module as a page loads it whose catalogue is this. */
async function withCatalogue(catalogue) {
  if (catalogue)
    globalThis.rimfallLanguage = { language: 'de', direction: 'ltr', decimal: ',', group: '.', categories: ['one', 'other'], messages: {}, ...catalogue };
  loaded += 1;
  const module = await import(`../../static/state/language.js?${loaded}`);
  delete globalThis.rimfallLanguage;
  return module;
}

test('texts, contexts and counts are found and filled', async () => {
  const messages = { 'A {thing} falls.': '{thing} fällt.', 'on\u0004the deck': 'dem Deck', '{count} ball': ['{count} Ball', '{count} Bälle'] };
  const { tr, trAs, trMany, trParts } = await withCatalogue({ messages });
  assert.equal(tr('A {thing} falls.', { thing: 'Der Ball' }), 'Der Ball fällt.');
  assert.deepEqual([trAs('on', 'the deck'), tr('the deck')], ['dem Deck', 'the deck']);
  assert.deepEqual(
    [1, 2, 1.5].map(count => trMany('{count} ball', '{count} balls', count)),
    ['1 Ball', '2 Bälle', '1,5 Bälle'],
  );
  assert.deepEqual(trParts('A {thing} falls.', { thing: 7 }), [7, ' fällt.']);
});

test('without a catalogue all is English', async () => {
  const { tr, trMany, inSigns, fromSigns } = await withCatalogue(null);
  assert.equal(tr('A {thing} falls.', { thing: 'ball' }), 'A ball falls.');
  assert.deepEqual(
    [1, 2].map(count => trMany('{count} ball', '{count} balls', count)),
    ['1 ball', '2 balls'],
  );
  assert.deepEqual([inSigns('1,234.5'), fromSigns('1,234.5')], ['1,234.5', '1,234.5']);
});

test('what is put into a place stays as it is', async () => {
  const { tr, trParts } = await withCatalogue({ messages: { 'Take {a} and {b}': '{b} und {a} mitnehmen', Ball: 'Kugel' } });
  const typed = ['{b}', '{a}', '$&', '$1', '{', '}{', 'Ball', '{constructor}', '\u0004'];
  for (const a of typed)
    for (const b of typed) {
      assert.equal(tr('Take {a} and {b}', { a, b }), `${b} und ${a} mitnehmen`);
      assert.deepEqual(trParts('Take {a} and {b}', { a, b }), [b, ' und ', a, ' mitnehmen']);
    }
});

test('no word is found that is no message', async () => {
  const { tr, trAs, trMany } = await withCatalogue({});
  for (const word of ['constructor', 'toString', '__proto__', 'hasOwnProperty', '']) {
    assert.equal(tr(word), word);
    assert.equal(tr(word, { of: 1 }), word);
    assert.equal(trAs('', word), word);
    assert.equal(trMany(word, 'many', 1), word);
  }
});

test('a catalogue of another version is told where it fits, else English', async () => {
  const messages = { text: ['ein', 'viele'], '{count} ball': 'Ball', '{count} throw': ['{count} Wurf'], '{missing} place': '{other} Ort' };
  const { tr, trMany } = await withCatalogue({ messages });
  assert.equal(tr('text', { of: 1 }), 'text');
  assert.equal(trMany('{count} ball', '{count} balls', 2), '2 balls');
  assert.equal(trMany('{count} throw', '{count} throws', 2), '2 throws');
  assert.equal(tr('{missing} place', { missing: 1 }), '{other} Ort');
});

test('numbers are written and read in the signs of the language', async () => {
  const { inSigns, fromSigns } = await withCatalogue({});
  for (const text of ['1,234.5', '0.5', '-1,000,000.25', '12', '']) assert.equal(fromSigns(inSigns(text)), text);
  assert.equal(inSigns('1,234.5'), '1.234,5');
});
