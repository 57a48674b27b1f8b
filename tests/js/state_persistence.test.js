// A scene in the address, and how the page was set.

import assert from 'node:assert/strict';
import test from 'node:test';
import { inflateRawSync } from 'node:zlib';
import { createViewStorage, fromHash, toHash } from '../../static/state/persistence.js';
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

test('how the page was set comes back, and nothing of another kind', () => {
  const views = createViewStorage(memory());
  assert.deepEqual(views.view({ units: 'si' }), {});
  views.saveView({ units: 'us', beads_s: 0.5, chosen: 3 });
  const { units, beads_s, chosen } = views.view({ units: 'si', beads_s: 1, chosen: 0 });
  assert.deepEqual([units, beads_s, chosen], ['us', 0.5, undefined]);
  assert.equal(views.view({ units: 7 }).units, undefined);
});

test('a storage that is broken or throws stops nothing', () => {
  assert.deepEqual(createViewStorage(memory({ 'rimfall.view': '[1' })).view({ units: 'si' }), {});
  const closed = createViewStorage({
    getItem() {
      throw new Error('no');
    },
    setItem() {
      throw new Error('full');
    },
  });
  closed.saveView({ units: 'si' });
  assert.deepEqual(closed.view({ units: 'si' }), {});
});
