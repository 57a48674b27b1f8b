// The page's address: the scene is written there once it has settled, and a link that comes is opened, whatever was to be written then.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createAddress, fromHash, toHash } from '../../static/state/persistence.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const linkTo = title => toHash({ ...SCENE, title }, FIELDS);

// what was packed or unpacked before is done when as much has been packed and unpacked after it, thrice
const settled = async () => {
  for (let times = 0; times < 3; times += 1) await fromHash(await linkTo('x'.repeat(600_000)));
};

/** A page whose address is `hash`, its first scene found by `shown`: what it opens, says and writes. */
function pageAt(context, { shown = '', hash = shown } = {}) {
  context.mock.timers.enable({ apis: ['setTimeout'] });
  const location = { origin: 'http://127.0.0.1:8000', pathname: '/', search: '', hash };
  const page = { location, opened: [], told: [], written: [], hearers: [] };
  const history = { replaceState: (_, __, hash) => Object.assign(location, { hash }) };
  Object.assign(globalThis, { location, history, addEventListener: (_, hear) => page.hearers.push(hear) });
  context.after(() => ['location', 'history', 'addEventListener'].forEach(name => delete globalThis[name]));
  page.store = createStore({ document: SCENE, fields: FIELDS });
  page.store.on('notice', ({ say }) => page.told.push(say));
  page.address = createAddress({
    store: page.store,
    clock: { chosenPace: null, on: () => {} },
    views: { saveView: () => {} },
    shown,
    open: ({ title }) => page.opened.push(title),
    written: ({ hash }) => page.written.push(hash),
    moved: () => {},
  });
  // as a browser does it: the address is another at once, and the page hears of it a moment later
  page.follow = hash => Object.assign(location, { hash });
  page.hear = () => page.hearers.forEach(hear => hear());
  page.wait = milliseconds => context.mock.timers.tick(milliseconds);
  return page;
}

test('a change goes into the address once it has settled', async context => {
  const page = pageAt(context);
  page.store.set('title', 'Mine');
  page.wait(249);
  await settled();
  assert.deepEqual(page.written, []);
  page.wait(1);
  await settled();
  assert.deepEqual(page.written, [page.location.hash]);
  assert.equal((await fromHash(page.location.hash)).title, 'Mine');
  page.hear();
  await settled();
  assert.deepEqual(page.opened, []);
});

test('whoever wants the address now has a change written at once, and no second time', async context => {
  const page = pageAt(context);
  await page.address.settled(); // what the page began with is in no address
  assert.equal((await fromHash(page.location.hash)).title, 'Two throws');
  assert.equal(page.address.settled(), null);
  page.store.set('title', 'Mine');
  await page.address.settled();
  assert.equal((await fromHash(page.location.hash)).title, 'Mine');
  assert.equal(page.address.settled(), null);
  page.wait(1000);
  await settled();
  assert.equal(page.written.length, 2);
});

test('a link that comes while a change is being written is opened, and not written over', async context => {
  const page = pageAt(context);
  const link = await linkTo('Theirs');
  page.store.set('title', 'Mine');
  page.wait(250); // it is being packed
  page.follow(link);
  await settled();
  assert.deepEqual([page.location.hash, page.written], [link, []]);
  page.hear();
  page.wait(1000);
  await settled();
  assert.deepEqual([page.location.hash, page.written, page.opened], [link, [], ['Theirs']]);
});

test('a link that comes before a change is written is opened, and not written over', async context => {
  const page = pageAt(context);
  const link = await linkTo('Theirs');
  page.store.set('title', 'Mine');
  page.wait(249);
  page.follow(link);
  page.wait(1);
  await settled();
  page.hear();
  await settled();
  assert.deepEqual([page.location.hash, page.opened], [link, ['Theirs']]);
});

test('of two links the last is opened, also where the first is read later', async context => {
  const page = pageAt(context);
  page.follow(await linkTo('x'.repeat(300_000)));
  page.hear();
  page.follow(await linkTo('Last'));
  page.hear();
  page.hear();
  await settled();
  assert.deepEqual(page.opened, ['Last']);
});

test('a link that came while the first scene was opened is opened after it, once', async context => {
  const [first, second] = [await linkTo('First'), await linkTo('Second')];
  const page = pageAt(context, { shown: first, hash: second });
  await settled();
  page.hear();
  await settled();
  assert.deepEqual(page.opened, ['Second']);
});

test('a broken link is told, and what was to be written then is written', async context => {
  const page = pageAt(context);
  page.store.set('title', 'Mine');
  page.follow('#s=nonsense');
  page.hear();
  await settled();
  assert.equal(page.told.length, 1);
  assert.match(page.told[0], /no whole scene/);
  page.wait(250);
  await settled();
  assert.equal((await fromHash(page.location.hash)).title, 'Mine');
});
