// The scenes to start from: listed once, opened once for each, and in order round the list.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createExamples } from '../../static/api/examples.js';

const LIST = ['empty', 'lob', 'ring'].map(id => ({ id, title: id }));

function bench() {
  const asked = [];
  const client = {
    examples: async units => (asked.push(`list ${units}`), LIST),
    opened: (id, { units }) =>
      new Promise((answer, fail) => {
        asked.push(`${id} ${units}`);
        if (id === 'lob' && asked.length === 1) return fail(new Error('away'));
        return answer({ document: { title: id, motions: [] }, answer: { of: id } });
      }),
  };
  return { asked, examples: createExamples({ client }) };
}

test('what was foreseen is not asked for again, and each who opens it gets a document of their own', async () => {
  const { asked, examples } = bench();
  examples.foresee('ring', 'si');
  const [one, other] = [await examples.opened('ring', { units: 'si' }), await examples.opened('ring', { units: 'si' })];
  assert.deepEqual(asked, ['ring si']);
  assert.notEqual(one.document, other.document);
  assert.deepEqual([one, one.answer === other.answer], [other, true]);
  await examples.opened('ring', { units: 'us' });
  assert.deepEqual(asked, ['ring si', 'ring us']);
});

test('one that failed is asked for anew, and one who leaves takes nothing from the next', async () => {
  const { asked, examples } = bench();
  examples.foresee('lob', 'si');
  await new Promise(resolve => setTimeout(resolve));
  const leaves = new AbortController();
  const left = examples.opened('lob', { units: 'si', signal: leaves.signal });
  leaves.abort(new Error('gone'));
  await assert.rejects(left, /gone/);
  assert.equal((await examples.opened('lob', { units: 'si' })).answer.of, 'lob');
  assert.deepEqual(asked, ['lob si', 'lob si']);
});

test('next and previous go round the list, from another scene to its ends', async () => {
  const { asked, examples } = bench();
  const beside = async by => (await examples.beside(by, 'si')).id;
  assert.deepEqual([await beside(1), await beside(-1)], ['empty', 'ring']);
  examples.shown = 'lob';
  assert.deepEqual([await beside(1), await beside(-1)], ['ring', 'empty']);
  examples.shown = 'ring';
  assert.deepEqual([await beside(1), await beside(-1)], ['empty', 'lob']);
  assert.deepEqual(asked, ['list si']);
});
