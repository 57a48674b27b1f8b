// Contact darkening and cast shadows are for graphics processors alone: without one, materials are what they would be without both.

import assert from 'node:assert/strict';
import test from 'node:test';

import { cardMaterial, deckMaterial, sharedUniforms, turntableMaterial } from '../../static/views/materials.js';
import { Picture } from '../../static/views/picture.js';

const MATERIALS = [shared => cardMaterial(shared, '#7E8886'), deckMaterial, turntableMaterial];

test('in software rendering no material reads shadows, and none are worked out', () => {
  for (const make of MATERIALS) {
    const [plain, fine] = [false, true].map(able => make(sharedUniforms(able)));
    assert.ok(!('uOpenness' in plain.uniforms) && !plain.fragmentShader.includes('sampler2D'));
    assert.match(plain.fragmentShader, /float openness\(\) { return 1\.; }/);
    assert.ok('uOpenness' in fine.uniforms && fine.fragmentShader.includes('sampler2D uOpenness'));
  }
  const nobody = { prepare: () => assert.fail('worked out') };
  const half = { eye: { camera: {}, span_m: 1 } };
  const picture = (contact, fine) => Object.assign(Object.create(Picture.prototype), { contact, timer: { fine }, shared: { uContact: { value: 0.9 } } });
  picture(null, false).darken(half, {});
  const slow = picture(nobody, false);
  slow.darken(half, {});
  assert.equal(slow.shared.uContact.value, 0, 'a graphics processor that falls behind leaves both off');
});

test('what is seen through takes no shadow: it would show where nothing is', () => {
  assert.doesNotMatch(cardMaterial(sharedUniforms(true), '#7E8886', { alpha: 0.3 }).fragmentShader, /openness/);
});
