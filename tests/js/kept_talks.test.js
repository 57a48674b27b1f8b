// The talk a tab works on: kept in a record of its own, found again, and never in another's.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createRecords } from '../../static/kept/records.js';
import { createTalkKeeping } from '../../static/kept/talks.js';
import { createClaims, createTab } from '../../static/kept/tabs.js';
import { createTalk } from '../../static/state/talk.js';
import { createEdits } from '../../static/state/talk_edits.js';
import { PLAIN_STEP } from '../../static/state/step_view.js';
import { locksOf, memoryDatabase, storage } from './_kept.mjs';
import { SCENE } from './_scene.mjs';

const step = line => ({ ...PLAIN_STEP, scene: SCENE, line });

function browser() {
  const database = memoryDatabase(),
    local = storage(),
    held = new Set();
  let ids = 0;
  const records = createRecords({ database, newId: () => `id-${(ids += 1)}` });
  const rows = () =>
    database
      .rows()
      .map(({ title, document }) => `${title}: ${document.steps.map(({ line }) => line)}`)
      .sort();
  async function tab(session = storage()) {
    const talk = createTalk(),
      edits = createEdits(talk);
    const keeping = await createTalkKeeping({
      talk,
      edits,
      local,
      records,
      claims: createClaims(locksOf(held)),
      tab: createTab(session),
      word: { tell: () => {}, on: () => {} },
      told: () => {},
      timers: { set: () => 1, clear: () => {} },
    });
    return { talk, edits, keeping, session };
  }
  return { tab, rows, database, local };
}

test('a talk is kept from its first change on, and found again by its tab', async () => {
  const here = browser();
  const tab = await here.tab();
  await tab.keeping.flush();
  assert.deepEqual(here.rows(), []);
  tab.edits.name('Lobs');
  tab.edits.keep(step('a'));
  await tab.keeping.flush();
  assert.deepEqual(here.rows(), ['Lobs: a']);
  tab.keeping.go();
  const again = await here.tab(tab.session);
  assert.deepEqual([again.talk.title, again.talk.step.line], ['Lobs', 'a']);
  again.edits.keep(step('b'));
  await again.keeping.flush();
  assert.deepEqual(here.rows(), ['Lobs: a,b']);
});

test('another one opened has a record of its own; undone past that, changes go to the first', async () => {
  const here = browser();
  const { talk, edits, keeping } = await here.tab();
  edits.name('Mine');
  edits.keep(step('a'));
  await keeping.flush();
  const theirs = { title: 'Theirs', about: '', steps: [step('x')] };
  await keeping.begin(theirs);
  edits.open(theirs);
  await keeping.flush();
  assert.deepEqual(here.rows(), ['Mine: a', 'Theirs: x']);
  edits.undo();
  assert.equal(talk.title, 'Mine');
  edits.keep(step('b'));
  await keeping.flush();
  assert.deepEqual(here.rows(), ['Mine: a,b', 'Theirs: x']);
  await keeping.begin(theirs);
  edits.open(theirs);
  await keeping.flush();
  assert.equal(here.rows().length, 2); // the same talk is its own record again
});

test('a talk that another tab has open is not taken from it; a new one is begun', async () => {
  const here = browser();
  const one = await here.tab();
  one.edits.name('Mine');
  await one.keeping.flush();
  const two = await here.tab();
  assert.equal(two.talk.title, '');
});

test('what was not yet written when the page was left is there in the next', async () => {
  const here = browser();
  const tab = await here.tab();
  tab.edits.name('Lobs');
  tab.keeping.go();
  await new Promise(resolve => setTimeout(resolve)); // the page has gone
  const again = await here.tab(tab.session);
  assert.equal(again.talk.title, 'Lobs');
});

test('a full storage is told, and the talk stays', async () => {
  const here = browser();
  const { talk, edits, keeping } = await here.tab();
  here.database.fails = Object.assign(new Error('full'), { name: 'QuotaExceededError' });
  edits.name('Lobs');
  await keeping.flush();
  assert.match(keeping.keeper.trouble.say, /storage is full/);
  assert.equal(talk.title, 'Lobs');
});
