// The records of kept scenes, what comes into them from local storage, and which one a page begins with.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createJournal, takeInFrom } from '../../static/kept/journal.js';
import { createRecords, newRecord } from '../../static/kept/records.js';
import { createShelf } from '../../static/kept/shelf.js';
import { createClaims, createTab } from '../../static/kept/tabs.js';
import { whenWords } from '../../static/state/words.js';
import { browser, fromLink, hashOf, locksOf, memoryDatabase, refusalOf, scene, storage } from './_kept.mjs';

const none = new Set();

function house({ most } = {}) {
  const database = memoryDatabase();
  let ids = 0;
  const newId = () => `new-${(ids += 1)}`;
  return { database, newId, records: createRecords({ database, newId, most }) };
}

test('a record is written only over the revision that was read', async () => {
  const { records } = house();
  const record = newRecord('a', scene('One'), 1);
  assert.deepEqual(await records.write(record, null), { rev: 1, dropped: [] });
  assert.equal((await records.write({ ...record, title: 'Two' }, 1)).rev, 2);
  const { theirs } = await records.write({ ...record, title: 'Late' }, 1);
  assert.equal(theirs.title, 'Two');
  assert.equal((await records.read('a')).title, 'Two');
});

test('past so many the oldest make room, are named, and are never those that are open', async () => {
  const { records } = house({ most: 3 });
  for (let n = 0; n < 3; n += 1) await records.write(newRecord(`id ${n}`, scene(`Scene ${n}`), n), null);
  const { dropped } = await records.write(newRecord('new', scene('New'), 9), null, new Set(['id 0']));
  assert.deepEqual(dropped, ['Scene 1']);
  assert.deepEqual(
    (await records.list()).map(({ title }) => title),
    ['New', 'Scene 2', 'Scene 0'],
  );
});

test('what earlier versions kept in local storage comes into the database, newest first, once, and nothing is lost on the way', async () => {
  const { records, database, newId } = house();
  const local = storage({
    'rimfall.scene': JSON.stringify(scene('At hand')),
    'rimfall.recent': JSON.stringify([
      { title: 'At hand', when: 500, document: scene('At hand') },
      { title: 'Older', when: 400, document: scene('Older') },
      { title: 'Broken', when: 300, document: { rimfall: 1 } },
      { title: 'Oldest', document: scene('Oldest') },
    ]),
    'rimfall.view': '{}',
  });
  database.fails = new Error('full');
  await assert.rejects(takeInFrom(local, { records, open: none, now_ms: 1000, newId }));
  assert.equal(Object.keys(local.items).length, 3);
  database.fails = null;
  const before = structuredClone(local.items);
  await takeInFrom(local, { records, open: none, now_ms: 1000, newId });
  const titles = async () => (await records.list()).map(({ title, changed_ms }) => `${title} ${changed_ms}`);
  assert.deepEqual(await titles(), ['At hand 1000', 'Older 400', 'Oldest 0']);
  assert.deepEqual(Object.keys(local.items), ['rimfall.view']);
  // broken off before local storage was emptied, it is done again without a second copy
  await takeInFrom(storage(before), { records, open: none, now_ms: 2000, newId });
  assert.deepEqual(await titles(), ['At hand 1000', 'Older 400', 'Oldest 0']);
  // an earlier version that was used again has kept something else
  await takeInFrom(storage({ 'rimfall.scene': JSON.stringify(scene('Later')) }), { records, open: none, now_ms: 3000, newId });
  assert.deepEqual((await titles())[0], 'Later 3000');
  assert.equal((await titles()).length, 4);
});

test('a broken local storage is left as it is', async () => {
  const { records, newId } = house();
  for (const text of ['', '{', 'null', '[]', '{"rimfall":1}', '{"rimfall":1,"habitat":{},"motions":[7]}']) {
    const local = storage({ 'rimfall.scene': text, 'rimfall.unwritten.x': text });
    await takeInFrom(local, { records, open: none, now_ms: 1000, newId });
    assert.equal(local.items['rimfall.scene'], text);
    assert.deepEqual(await records.list(), [], text);
  }
});

test('what was not written yet is, where nobody wrote since, beside it where somebody did, and left to the tab that is still there', async () => {
  const { records, newId } = house();
  const local = storage(),
    journal = createJournal(local);
  await records.write({ ...newRecord('a', scene('Mine', 60), 1), drawing: { radius_m: 60 } }, null);
  await records.write(newRecord('b', scene('Yours', 60), 1), null);
  journal.put(newRecord('a', scene('Mine', 61), 2), 1);
  journal.put(newRecord('b', scene('Yours', 61), 2), 0);
  journal.put(newRecord('c', scene('Open', 61), 2), null);
  await takeInFrom(local, { records, open: new Set(['c']), now_ms: 5, newId });
  const radii = (await records.list()).map(({ document }) => `${document.title} ${document.habitat.radius_m}`).sort();
  assert.deepEqual(radii, ['Mine 61', 'Yours 60', 'Yours 61']);
  assert.deepEqual(Object.keys(local.items), ['rimfall.unwritten.c']);
  assert.deepEqual((await records.read('a')).drawing, { radius_m: 60 });
});

test('storages that throw stop nothing', async () => {
  const no = () => {
    throw new Error('no');
  };
  const closed = { length: 1, key: no, getItem: no, setItem: no, removeItem: no };
  const { records, newId } = house();
  await takeInFrom(closed, { records, open: none, now_ms: 1, newId });
  assert.equal(createJournal(closed).put(newRecord('a', scene('x'), 1), null), false);
  createJournal(closed).drop('a');
  const tab = createTab(closed);
  tab.note({ id: 'a' });
  assert.deepEqual(tab.read(), {});
});

// what a page begins with; fails(document) → what stands in the way, or null
async function begun({ session = storage(), hash = '', here = browser(), fails = () => null } = {}) {
  const claims = createClaims(locksOf(here.held));
  const shelf = createShelf({ records: here.records, claims, tab: createTab(session), fromHash: fromLink, refusalOf, version: 'this' });
  const tried = [];
  for (const { what, find } of shelf.sources(hash)) {
    const document = await find();
    if (!document) continue;
    tried.push(what);
    const problem = fails(document);
    try {
      await shelf.opening(document, () => (problem ? Promise.reject(problem) : Promise.resolve({})));
      return { tried, ...shelf.shown(document) };
    } catch (same) {
      assert.equal(same, problem);
    }
  }
  return { document: null, tried };
}

const keep = (here, id, document, more = {}) => here.records.write({ ...newRecord(id, document, here.now()), ...more }, null);

test('a page begins with a link, before all that is kept; what the tab wrote itself is none', async () => {
  const here = browser();
  await keep(here, 'a', scene('Mine'));
  const link = await begun({ here, hash: hashOf(scene('Theirs')) });
  assert.equal(link.document.title, 'Theirs');
  assert.equal(link.record, null);
  const session = storage({ 'rimfall.tab': JSON.stringify({ id: 'a', hash: hashOf(scene('Mine')) }) });
  const own = await begun({ here, session, hash: hashOf(scene('Mine')) });
  assert.equal(own.record.id, 'a');
  assert.equal(own.document.title, 'Mine');
});

test('a tab without a record comes back to what it had opened, from its address or its notes', async () => {
  const here = browser();
  await keep(here, 'a', scene('Mine'));
  const hash = hashOf(scene('Looked at'));
  const address = await begun({ here, hash, session: storage({ 'rimfall.tab': JSON.stringify({ id: null, hash }) }) });
  assert.deepEqual([address.document.title, address.record], ['Looked at', null]);
  const notes = await begun({ here, session: storage({ 'rimfall.tab': JSON.stringify({ id: null, hash: '', opened: scene('Long') }) }) });
  assert.deepEqual([notes.document.title, notes.record], ['Long', null]);
});

test('a new tab begins with the newest kept scene that no other tab has open', async () => {
  const here = browser();
  assert.equal((await begun({ here })).document, null);
  await keep(here, 'a', scene('Older'));
  await keep(here, 'b', scene('Newest'));
  assert.equal((await begun({ here })).record.id, 'b');
  assert.equal((await begun({ here })).record.id, 'a');
  assert.equal((await begun({ here })).document, null);
});

test('a first trace that fails leaves the record alone, and tries no other', async () => {
  const here = browser();
  await keep(here, 'a', scene('Other'));
  await keep(here, 'b', scene('Mine'));
  const rows = here.database.rows();
  const { document, tried } = await begun({ here, fails: () => ({}) });
  assert.deepEqual([document, tried], [null, ['the scene kept last']]);
  assert.deepEqual(here.database.rows(), rows);
  assert.equal(here.held.size, 0);
});

test('a refused scene is kept as it is, with what is refused, until it stands', async () => {
  const here = browser();
  await keep(here, 'a', scene('Mine', 70));
  const { document } = await begun({ here, fails: () => ({ say: 'Radius was 70 m.' }) });
  assert.equal(document, null);
  const [row] = here.database.rows();
  assert.deepEqual(row.refused, { say: 'Radius was 70 m.', version: 'this' });
  assert.equal(row.document.habitat.radius_m, 70);
  assert.equal(row.rev, 1);
  await begun({ here });
  assert.equal(here.database.rows()[0].refused, null);
});

test('where only the last change is refused, what was answered before it is shown, as a copy', async () => {
  const here = browser();
  await keep(here, 'a', scene('Mine', 70), { stood: scene('Mine', 56) });
  const shown = await begun({ here, fails: ({ habitat }) => (habitat.radius_m === 70 ? { say: 'Radius was 70 m.' } : null) });
  assert.equal(shown.document.habitat.radius_m, 56);
  assert.equal(shown.record, null);
  assert.equal(here.database.rows()[0].document.habitat.radius_m, 70);
});

test('when a scene was kept, by the calendar', () => {
  const now = new Date(2026, 2, 12, 15, 0).getTime();
  const at = (...when) => whenWords(new Date(...when).getTime(), now);
  assert.equal(at(2026, 2, 12, 14, 5), 'today 14:05');
  assert.equal(at(2026, 2, 11, 23, 59), 'yesterday 23:59');
  assert.equal(at(2026, 2, 8, 9, 30), 'Sunday 09:30');
  assert.equal(at(2026, 1, 1, 8, 0), '1 February 08:00');
  assert.equal(at(2025, 11, 31, 8, 0), '31 December 2025');
  assert.equal(whenWords(0, now), 'earlier');
});
