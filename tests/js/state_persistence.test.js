// A scene in the address and in the browser's storage.

import assert from 'node:assert/strict';
import test from 'node:test';
import { inflateRawSync } from 'node:zlib';
import { createAutosave, fromHash, toHash } from '../../static/state/persistence.js';
import { withoutDefaults } from '../../static/state/fields.js';
import { FIELDS, SCENE } from './_scene.mjs';

test('a link leaves out what equals its default and keeps the rest', () => {
  assert.deepEqual(withoutDefaults(FIELDS, SCENE), {
    rimfall: 1,
    title: 'Two throws',
    habitat: { radius_m: 56, spin_rpm: 3 },
    motions: [
      { kind: 'throw', name: 'out', place: { height_m: 1.5 }, speed_m_s: 6, body: 'handball' },
      {
        kind: 'throw',
        name: 'back',
        place: { height_m: 1.5 },
        speed_m_s: 6,
        heading_deg: 180,
        body: { mass_kg: 1, diameter_m: 0.1 },
      },
    ],
  });
});

test('vacuum and an empty cast are not defaults', () => {
  const bare = withoutDefaults(FIELDS, { rimfall: 1, habitat: { radius_m: 1, spin_rpm: 0 }, air: null, motions: [] });
  assert.equal(bare.air, null);
  assert.deepEqual(bare.motions, []);
  assert.equal(bare.habitat.spin_rpm, 0);
});

test('there and back: the link is raw deflate in base64url', async () => {
  const hash = await toHash(SCENE, FIELDS);
  assert.match(hash, /^#s=[\w-]+$/);
  assert.deepEqual(await fromHash(hash), withoutDefaults(FIELDS, SCENE));
  assert.deepEqual(JSON.parse(inflateRawSync(Buffer.from(hash.slice(3), 'base64url'))), withoutDefaults(FIELDS, SCENE));
});

test('letters beyond ASCII survive', async () => {
  const scene = { ...SCENE, title: 'Küche · 厨房' };
  assert.equal((await fromHash(await toHash(scene, FIELDS))).title, scene.title);
});

test('no scene in the address is null; a broken one is refused', async () => {
  assert.equal(await fromHash(''), null);
  assert.equal(await fromHash('#elsewhere'), null);
  const good = await toHash(SCENE, FIELDS);
  await assert.rejects(fromHash(good.slice(0, 40)));
  await assert.rejects(fromHash('#s=AAAA'));
  await assert.rejects(fromHash(await toHash({ rimfall: 2, motions: [] }, FIELDS)));
});

test('a link that would unpack to more than a scene may be is refused', async () => {
  const huge = { ...SCENE, title: 'x'.repeat(1_200_000) };
  await assert.rejects(fromHash(await toHash(huge, FIELDS)), /too large/);
});

const memory = (items = {}) => ({
  getItem: key => items[key] ?? null,
  setItem(key, value) {
    items[key] = value;
  },
});

test('autosave gives back what it was given', () => {
  const kept = createAutosave(memory());
  assert.equal(kept.scene(), null);
  kept.save(SCENE);
  assert.deepEqual(kept.scene(), SCENE);
});

test('a broken autosave is none', () => {
  for (const text of ['', '{', 'null', '[]', '{"rimfall":1}', '{"rimfall":1,"habitat":{},"motions":[7]}', '{"rimfall":1,"habitat":[],"motions":[]}']) {
    assert.equal(createAutosave(memory({ 'rimfall.scene': text })).scene(), null, text);
  }
});

test('a storage that throws stops nothing', () => {
  const closed = createAutosave({
    getItem() {
      throw new Error('no');
    },
    setItem() {
      throw new Error('full');
    },
  });
  assert.equal(closed.scene(), null);
  assert.equal(closed.save(SCENE), false);
  assert.deepEqual(closed.recent(), []);
  assert.deepEqual(closed.view({ units: 'si' }), {});
});

test('recent scenes: newest first, one a title, eight at most', () => {
  const kept = createAutosave(memory());
  for (let n = 0; n < 12; n += 1) kept.remember({ ...SCENE, title: `Scene ${n % 10}` }, n);
  const titles = kept.recent().map(item => item.title);
  assert.equal(titles.length, 8);
  assert.deepEqual(titles.slice(0, 3), ['Scene 1', 'Scene 0', 'Scene 9']);
});

test('a scene remembered again takes the place of the older one of its title', () => {
  const kept = createAutosave(memory());
  kept.remember({ ...SCENE, title: 'Drop' }, 1);
  kept.remember({ ...SCENE, title: 'Throw' }, 2);
  kept.remember({ ...SCENE, title: 'Drop' }, 3);
  assert.deepEqual(
    kept.recent().map(({ title, when }) => [title, when]),
    [
      ['Drop', 3],
      ['Throw', 2],
    ],
  );
});
