// Named decks go with the radius of their habitat: no deck is left where the wheel no longer is.

import { test } from 'node:test';
import assert from 'node:assert/strict';
import { createDeckMover, movedDecks } from '../../static/state/decks.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS } from './_scene.mjs';

const DECKS = [
  { name: 'Court', radius_m: 56 },
  { name: 'Galley', radius_m: 52 },
];
const radii = decks => decks.map(deck => deck.radius_m);
const scene = (radius_m, decks = DECKS, compare = []) => ({ rimfall: 1, habitat: { radius_m, spin_rpm: 3, decks }, motions: [], compare });

test('a deck keeps its height over the deck, and where the axis is nearer its share of the radius', () => {
  assert.deepEqual(radii(movedDecks(DECKS, 56, 30)), [30, 26]);
  assert.deepEqual(radii(movedDecks(DECKS, 56, 30.1)), [30.1, 26.1]);
  assert.deepEqual(radii(movedDecks(DECKS, 56, 2.8)), [2.8, 2.6]); // 4 m up there is no place: 52/56 of 2.8 m
});

test('a radius dialled down and up again has the decks where they were', () => {
  const next = createDeckMover();
  let now = scene(56);
  for (const radius_m of [40, 3, 1, 56]) now = next(now, { ...now, habitat: { ...now.habitat, radius_m } });
  assert.deepEqual(now.habitat.decks, DECKS);
});

test('every way of setting a radius moves the decks, and one step of undo brings them back', () => {
  const store = createStore({ document: scene(56, DECKS, [{ name: 'B', habitat: scene(112).habitat }]), fields: FIELDS });
  store.set('habitat.radius_m', 30);
  assert.deepEqual(radii(store.document.habitat.decks), [30, 26]);
  store.undo();
  assert.deepEqual(radii(store.document.habitat.decks), [56, 52]);
  store.edit(draft => {
    draft.habitat.radius_m = 60;
    draft.compare[0].habitat.radius_m = 116;
  });
  assert.deepEqual(radii(store.document.habitat.decks), [60, 56]);
  assert.deepEqual(radii(store.document.compare[0].habitat.decks), [60, 56]);
});

test('a scene that is opened, a deck that is set and another shape keep what they say', () => {
  const store = createStore({ document: scene(56), fields: FIELDS });
  store.open(scene(30), { scene: scene(30) });
  assert.deepEqual(radii(store.document.habitat.decks), [56, 52]);
  store.set('habitat.decks.1.radius_m', 20);
  assert.deepEqual(radii(store.document.habitat.decks), [56, 20]);
  store.edit(draft => {
    Object.assign(draft.habitat, { shape: 'torus', radius_m: 80 });
  });
  assert.deepEqual(radii(store.document.habitat.decks), [56, 20]);
});

test('where a radius follows a dial, the decks are those of the answer', () => {
  const store = createStore({ document: scene(56), fields: FIELDS });
  const answer = {
    scene: scene(28, [
      { name: 'Court', radius_m: 28 },
      { name: 'Galley', radius_m: 24 },
    ]),
  };
  store.setAnswer(answer, store.document, { path: 'habitat.radius_m', value: 28, step: true });
  assert.deepEqual(radii(store.document.habitat.decks), [28, 24]);
});
