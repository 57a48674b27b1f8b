// What is asked of an aim, and what a way does to a scene.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createStore } from '../../static/state/store.js';
import {
  aimRequest,
  atShare,
  firstAim,
  heldAim,
  meetable,
  isWay,
  keptAs,
  parseShare,
  shareOf,
  shareWords,
  stillChosen,
  takeWay,
  throwBack,
} from '../../static/state/shot.js';
import { FIELDS, SCENE } from './_scene.mjs';

const fields = {
  ...FIELDS,
  kinds: { throw: { stage: { aimed: true } }, drop: { stage: { aimed: false } } },
  shapes: { cylinder: { ground: { level: false } }, turntable: { ground: { level: true } }, tether: { ground: { level: false } } },
};
const landing = (drift_m, axial_m = 0) => ({ landing: { drift_m, axial_m } });

function bench(scene = SCENE, answer = { motions: [landing(5.21), landing(-10.73, 2)], scene: SCENE }) {
  const store = createStore({ document: structuredClone(scene), fields });
  store.setAnswer(answer, store.document);
  store.setShot({ aim: firstAim(store) });
  return store;
}

test('a first catcher stands within reach of a low and a high throw, on the side to which the throw goes', () => {
  const store = bench();
  assert.deepEqual(store.shot.aim, { motion: 'out', to: { along_m: 4.2, height_m: 1.4, axial_m: 0 }, within_m: 0.15, fixed: { speed_m_s: 6 } });
  store.look({ chosen: 1 });
  assert.deepEqual([firstAim(store).motion, firstAim(store).to.along_m, firstAim(store).to.axial_m], ['back', -8.6, 1.6]);
});

test('without a landing the catcher stands an eighth of a turn off, and a scene without a throw has no aim', () => {
  const store = bench(SCENE, { motions: [{}, {}], scene: SCENE });
  assert.equal(store.shot.aim.to.along_m, 44);
  store.edit(draft => {
    draft.motions = [{ kind: 'drop', name: 'cup' }];
  });
  assert.equal(heldAim(store), null);
  assert.equal(aimRequest(store.document, heldAim(store)), null);
});

test('in a craft that tumbles the tumble is asked about with the throw, and is nobody to throw to', () => {
  const store = bench();
  const alone = aimRequest(store.document, store.shot.aim).scene.motions.length;
  store.edit(draft => {
    draft.motions.push({ kind: 'tumble', name: 'over', about_x_rpm: 1 });
  });
  const { motions } = aimRequest(store.document, store.shot.aim).scene;
  assert.deepEqual([motions.length, motions.at(-1).kind], [alone + 1, 'tumble']);
  assert.ok(!meetable(store, store.shot.aim.motion).includes('over'));
});

test('an aim stays while its throw does, and begins anew when that or what it meets is gone', () => {
  const store = bench();
  assert.equal(heldAim(store), store.shot.aim);
  store.setShot({ aim: { ...store.shot.aim, to: { motion: 'back' } } });
  assert.equal(heldAim(store), store.shot.aim);
  store.edit(draft => draft.motions.splice(1, 1));
  assert.deepEqual([heldAim(store).motion, typeof heldAim(store).to.along_m], ['out', 'number']);
});

test('how far round is a share of the turn from the thrower, and flat floors have none', () => {
  const store = bench();
  const third = atShare(store, store.shot.aim, -1 / 3);
  assert.ok(Math.abs(third.to.along_m + (2 * Math.PI * 56) / 3) < 1e-4);
  assert.ok(Math.abs(shareOf(store, third) + 1 / 3) < 1e-6);
  assert.equal(shareOf(store, { ...third, to: { motion: 'back' } }), null);
  store.edit(draft => {
    draft.habitat = { shape: 'tether', radius_m: 200, spin_rpm: 1, floors: [{ name: 'A' }] };
  });
  assert.equal(shareOf(store, third), null);
});

test('a share is said as people say it and read as they type it', () => {
  assert.deepEqual([1 / 3, -0.25, 0.125, 0.5, 0.012].map(shareWords), ['a third', 'a quarter', 'an eighth', 'half', '1.2\u00a0%']);
  const typed = {
    '1/3': 1 / 3,
    'a third': 1 / 3,
    half: 0.5,
    '33 %': 0.33,
    '120°': 1 / 3,
    '90 deg': 0.25,
    25: 0.25,
    '0.2 turns': 0.2,
    '½': 0.5,
    '12,5 %': 0.125,
    '1/0': null,
    far: null,
    '': null,
  };
  for (const [text, share] of Object.entries(typed)) {
    const read = parseShare(text);
    assert.ok(share === null ? read === null : Math.abs(read - share) < 1e-12, `${text}: ${read}`);
  }
});

test('what is kept has the figure of the throw, of the request before, or a first one', () => {
  const store = bench();
  assert.deepEqual(keptAs(store, { ...store.shot.aim, fixed: { speed_m_s: 9 } }, 'speed_m_s'), { speed_m_s: 9 });
  assert.deepEqual(keptAs(store, store.shot.aim, 'elevation_deg'), { elevation_deg: 0 });
  assert.deepEqual(keptAs(store, store.shot.aim, 'least'), { least: 'speed_m_s' });
  assert.deepEqual(Object.keys(keptAs(store, store.shot.aim, 'flight_s')), ['flight_s']);
});

test('a way that is taken is what the motion then is, and one step undoes it', () => {
  const store = bench(),
    way = { speed_m_s: 9.1, heading_deg: 180, elevation_deg: 12.34, flight_s: 2 };
  assert.ok(!isWay(store.document.motions[0], way));
  store.edit(draft => takeWay(draft, 0, way));
  assert.ok(isWay(store.document.motions[0], way));
  store.undo();
  assert.deepEqual(store.document, SCENE);
});

test('the chosen way stays chosen as others come and go', () => {
  const ways = [{ flight_s: 1 }, { flight_s: 4.1 }, { flight_s: 9 }];
  assert.deepEqual([stillChosen({ flight_s: 4 }, ways), stillChosen(undefined, ways), stillChosen({ flight_s: 4 }, [])], [1, 0, 0]);
});

test('the throw back starts where and when the first is caught, and is aimed at where that came from', () => {
  const store = bench(),
    way = { speed_m_s: 9, heading_deg: 0, elevation_deg: 20, flight_s: 1.25 };
  const { motion, aim } = throwBack(store, store.shot.aim, way);
  assert.deepEqual([motion.name, motion.place, motion.start_s, motion.heading_deg], ['out back', store.shot.aim.to, 1.25, 180]);
  assert.deepEqual([aim.motion, aim.to], ['out back', { along_m: 0, height_m: 1.5, axial_m: 0 }]);
});

test('an answer is behind at once when the catcher is put elsewhere, and not when it is of what stands there', () => {
  const store = bench();
  const of = { document: store.document, shot: store.shot };
  store.setShot({ answer: { ways: [] } }, { of });
  assert.equal(store.shotBehind, false);
  store.setShot({ aim: { ...store.shot.aim, within_m: 0.3 } });
  assert.equal(store.shotBehind, true);
  store.set('title', 'Another');
  store.setShot({ answer: { ways: [] } }, { of: { document: store.document, shot: store.shot } });
  assert.equal(store.shotBehind, false);
  store.set('title', 'A third'); // which no path depends on
  assert.equal(store.shotBehind, false);
  store.set('habitat.spin_rpm', 4);
  assert.equal(store.shotBehind, true);
});
