// What a tab works on has a record of its own, and nothing else is ever written there.

import assert from 'node:assert/strict';
import test from 'node:test';
import { browser, scene, settled } from './_kept.mjs';

const titles = ({ database }) =>
  database
    .rows()
    .map(({ title, document }) => `${title} ${document.habitat.radius_m}`)
    .sort();

test('a scene that was only opened has no record; its first change makes one, and later ones go there', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Lob') });
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(titles(here), []);
  await tab.edit(60);
  await tab.edit(70);
  assert.deepEqual(titles(here), ['Lob 70']);
  assert.equal(here.database.rows()[0].rev, 2);
});

test('a link, an example or a file opened over work and changed makes a second record', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  await tab.open(scene('Theirs'));
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(titles(here), ['Mine 60']);
  await tab.edit(90);
  assert.deepEqual(titles(here), ['Mine 60', 'Theirs 90']);
});

test('what was changed a moment before another scene is opened is written to its own record', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  tab.store.set('habitat.radius_m', 61); // not settled yet
  await tab.open(scene('Theirs'));
  await tab.keeper.flush();
  assert.deepEqual(titles(here), ['Mine 61']);
});

test('undone past the opening of another scene, changes go to the record of the first again', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  await tab.open(scene('Theirs'));
  await tab.edit(90);
  tab.store.undo();
  tab.store.undo();
  assert.equal(tab.store.document.title, 'Mine');
  await tab.edit(65);
  assert.deepEqual(titles(here), ['Mine 65', 'Theirs 56']);
  assert.equal(here.database.rows().length, 2);
});

test('a kept scene opened goes on in its record; opened and left alone, it is as it was', async () => {
  const here = browser();
  const first = await here.tab({ document: scene('Mine') });
  await first.edit(60);
  first.answer();
  await first.open(scene('Other'));
  await first.keeper.flush();
  const [before] = here.database.rows();
  await first.open(before.id);
  await settled(first.timers, first.keeper);
  assert.deepEqual(here.database.rows(), [before]);
  await first.edit(75);
  assert.deepEqual(titles(here), ['Mine 75']);
});

test('a drag is written when it ends; a page that is left in the midst of one loses nothing', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  tab.store.set('habitat.radius_m', 57, { live: true });
  assert.deepEqual(tab.timers.delays(), []);
  const unwritten = () => Object.values(here.local.items).map(text => JSON.parse(text).record.document.habitat.radius_m);
  tab.keeper.go();
  assert.deepEqual(unwritten(), [57]);
  tab.store.set('habitat.radius_m', 58);
  assert.deepEqual(unwritten(), [58]);
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(titles(here), ['Mine 58']);
  assert.deepEqual(unwritten(), []);
});

test('a full storage is told, what waits is tried again, and what was kept stays', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  here.database.fails = Object.assign(new Error('full'), { name: 'QuotaExceededError' });
  await tab.edit(61);
  assert.equal(tab.keeper.trouble.why, 'full');
  assert.match(tab.keeper.trouble.say, /not being kept: this browser’s storage is full/);
  assert.deepEqual(titles(here), ['Mine 60']);
  assert.deepEqual(tab.timers.delays(), [15_000]);
  await tab.open(scene('Other')); // left meanwhile, it still waits
  await tab.keeper.flush();
  here.database.fails = null;
  await settled(tab.timers, tab.keeper);
  assert.equal(tab.keeper.trouble, null);
  assert.deepEqual(titles(here), ['Mine 61']);
  assert.deepEqual(tab.said, ['Your work is being kept again.']);
});

test('why nothing is kept is told apart', async () => {
  for (const [name, why] of [
    ['QuotaExceededError', 'full'],
    ['VersionError', 'newer'],
    ['SecurityError', 'refused'],
    ['NotSupportedError', 'refused'],
  ]) {
    const here = browser();
    const tab = await here.tab({ document: scene('Mine') });
    here.database.fails = Object.assign(new Error('no'), { name });
    await tab.edit(61);
    assert.equal(tab.keeper.trouble.why, why, name);
  }
});

test('two tabs: the second one has a copy, and its first change makes a record of its own', async () => {
  const here = browser();
  const one = await here.tab({ document: scene('Mine') });
  await one.edit(60);
  const [{ id }] = here.database.rows();
  const two = await here.tab({ document: scene('Else') });
  const opening = await two.open(id);
  assert.match(opening.say, /open in another tab/);
  await two.edit(80);
  await one.edit(61);
  assert.deepEqual(titles(here), ['Mine 61', 'Mine 80']);
});

test('a tab that was duplicated begins with the same notes and a copy of the scene', async () => {
  const here = browser();
  const one = await here.tab({ document: scene('Mine') });
  await one.edit(60);
  const { id } = JSON.parse(one.session.items['rimfall.tab']);
  const two = await here.tab({ id, session: one.session });
  assert.equal(two.keeper.id, null);
  await two.edit(80);
  await one.edit(61);
  assert.deepEqual(titles(here), ['Mine 61', 'Mine 80']);
});

test('without locks, a record that another tab has written is not written over: the later one goes on apart, and says so', async () => {
  const here = browser();
  const one = await here.tab({ document: scene('Mine') });
  await one.edit(60);
  const [record] = here.database.rows();
  await here.records.write({ ...record, document: scene('Mine', 70) }, record.rev); // another tab
  await one.edit(61);
  assert.deepEqual(titles(here), ['Mine 61', 'Mine 70']);
  assert.match(one.said[0], /changed in another tab as well/);
  await one.edit(62);
  assert.deepEqual(titles(here), ['Mine 62', 'Mine 70']);
});

test('undone to a scene that another tab has taken meanwhile, the change made there is kept apart', async () => {
  const here = browser();
  const one = await here.tab({ document: scene('Mine') });
  await one.edit(60);
  const [{ id }] = here.database.rows();
  await one.open(scene('Other'));
  await one.keeper.flush();
  await new Promise(setImmediate);
  const two = await here.tab({ id });
  one.store.undo();
  await one.edit(61);
  await two.edit(70);
  assert.deepEqual(titles(here), ['Mine 61', 'Mine 70']);
  assert.deepEqual(here.local.items, {});
});

test('a scene left is free for another tab, once all of it is written', async () => {
  const here = browser();
  const one = await here.tab({ document: scene('Mine') });
  await one.edit(60);
  const [{ id }] = here.database.rows();
  assert.equal((await (await here.tab({ document: scene('x') })).claims.elsewhere()).has(id), true);
  await one.open(scene('Other'));
  await one.keeper.flush();
  await new Promise(setImmediate);
  const two = await here.tab({ id });
  assert.equal(two.keeper.id, id);
});

test('removed and undone: the record is back as it was, and what is shown goes on in it', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  const [before] = here.database.rows();
  const gone = await tab.keeper.remove(before.id);
  assert.deepEqual(here.database.rows(), []);
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(here.database.rows(), []); // what is shown does not come back by itself
  await tab.keeper.restore(gone);
  assert.deepEqual(here.database.rows(), [before]);
  await tab.edit(61);
  assert.deepEqual(titles(here), ['Mine 61']);
});

test('removed, changed and undone: both are kept', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  const gone = await tab.keeper.remove(here.database.rows()[0].id);
  await tab.edit(61);
  await tab.keeper.restore(gone);
  await tab.edit(62);
  assert.deepEqual(titles(here), ['Mine 60', 'Mine 62']);
});

test('what cannot be drawn is kept all the same', async () => {
  const here = browser();
  const picture = () => {
    throw new Error('nothing to draw');
  };
  const tab = await here.tab({ document: scene('Mine'), picture });
  await tab.edit(60);
  assert.deepEqual(titles(here), ['Mine 60']);
});

test('a drawing is kept of what was answered, and until then what was answered last', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  await tab.edit(60);
  const [early] = here.database.rows();
  assert.equal(early.stood.habitat.radius_m, 56);
  assert.deepEqual(early.drawing, { radius_m: 56 }); // better than none
  tab.answer();
  await settled(tab.timers, tab.keeper);
  const [late] = here.database.rows();
  assert.equal(late.changed_ms, early.changed_ms); // that is no change
  assert.deepEqual(late.drawing, { radius_m: 60 });
  assert.equal('stood' in late, false);
});

test('the scenes of a talk that pass make no record; what was changed before them is written, and what is changed of one that stands is kept', async () => {
  const here = browser();
  const tab = await here.tab({ document: scene('Mine') });
  tab.store.set('habitat.radius_m', 61); // not settled yet
  tab.keeper.rest();
  tab.store.set('habitat.radius_m', 62, { live: true });
  tab.store.open(scene('A step'), { scene: {}, motions: [] });
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(titles(here), ['Mine 61']);
  tab.keeper.begin({ document: tab.store.document });
  await settled(tab.timers, tab.keeper);
  assert.deepEqual(titles(here), ['Mine 61']);
  await tab.edit(80);
  assert.deepEqual(titles(here), ['A step 80', 'Mine 61']);
});
