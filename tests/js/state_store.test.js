// The store: reading with defaults, undo a drag at a time, answers and what follows them.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const store = () => createStore({ document: structuredClone(SCENE), fields: FIELDS });
const answerFor = document => ({ scene: document, motions: [] });

test('a value left out of the document is its default', () => {
  assert.equal(store().read('air.temperature_c'), 20);
  assert.equal(store().read('motions.0.elevation_deg'), 0);
  assert.equal(store().read('habitat.radius_m'), 56);
});

test('what lies under a null reads as null, not as the default', () => {
  const s = store();
  s.set('air', null);
  assert.equal(s.read('air.temperature_c'), null);
});

test('a change makes a new document and leaves the old one alone', () => {
  const s = store(),
    before = s.document;
  s.set('motions.1.place.height_m', 2);
  assert.equal(before.motions[1].place.height_m, 1.5);
  assert.equal(s.document.motions[1].place.height_m, 2);
  assert.equal(s.document.motions[0], before.motions[0]);
});

test('one undo step a drag, however many moves it had', () => {
  const s = store();
  for (const radius of [57, 58, 59]) s.set('habitat.radius_m', radius, { live: true });
  s.set('habitat.radius_m', 59);
  s.set('habitat.spin_rpm', 4);
  s.undo();
  assert.deepEqual([s.document.habitat.radius_m, s.document.habitat.spin_rpm], [59, 3]);
  s.undo();
  assert.equal(s.document.habitat.radius_m, 56);
  assert.equal(s.canUndo, false);
  s.redo();
  assert.equal(s.document.habitat.radius_m, 59);
});

test('a new change after undo forgets what could be redone', () => {
  const s = store();
  s.set('habitat.radius_m', 60);
  s.undo();
  s.set('habitat.radius_m', 70);
  assert.equal(s.canRedo, false);
});

test('setting what is already there is no undo step', () => {
  const s = store();
  s.set('habitat.radius_m', 56);
  assert.equal(s.canUndo, false);
});

test('the end of a drag is told as settled, even when its value was already set', () => {
  const s = store(),
    heard = [];
  s.on('document', detail => heard.push(detail));
  s.set('habitat.radius_m', 60, { live: true });
  s.set('habitat.radius_m', 60);
  assert.equal(heard.length, 2);
  assert.equal(heard[0].live, true);
  assert.equal(heard[1].live, false);
});

test('edit works on a copy', () => {
  const s = store(),
    before = s.document;
  s.edit(draft => {
    draft.motions.pop();
  });
  assert.equal(before.motions.length, 2);
  assert.equal(s.document.motions.length, 1);
  s.undo();
  assert.equal(s.document.motions.length, 2);
});

test('the answer is stale once the document has moved on', () => {
  const s = store(),
    asked = s.document;
  s.setAnswer(answerFor(asked), asked);
  assert.equal(s.stale, false);
  s.set('habitat.radius_m', 57);
  assert.equal(s.stale, true);
});

test('a followed value joins the drag: no undo step of its own, and not stale', () => {
  const s = store();
  s.set('habitat.radius_m', 112, { live: true });
  s.setAnswer(answerFor(s.document), s.document, { path: 'habitat.spin_rpm', value: 2.12, step: false });
  s.set('habitat.radius_m', 112);
  assert.equal(s.document.habitat.spin_rpm, 2.12);
  assert.equal(s.stale, false);
  s.undo();
  assert.deepEqual([s.document.habitat.radius_m, s.document.habitat.spin_rpm], [56, 3]);
  assert.equal(s.canUndo, false);
});

test('one who stops listening hears no more', () => {
  const s = store();
  let heard = 0;
  const stop = s.on('view', () => {
    heard += 1;
  });
  s.look({ place: 1 });
  stop();
  s.look({ place: 3 });
  assert.equal(heard, 1);
  assert.equal(s.view.place, 3);
});

test('a hidden motion that is called otherwise stays hidden, undone too, and its old name is free again', () => {
  const s = store();
  const answered = () => s.setAnswer({ scene: s.document, motions: s.document.motions.map(({ name }) => ({ name })) }, s.document);
  answered();
  s.look({ hidden: ['back'] });
  s.set('motions.1.name', 'home');
  assert.deepEqual(s.view.hidden, ['back', 'home']); // the stages still show the answer that has the old one
  answered();
  assert.deepEqual(s.view.hidden, ['home']);
  s.undo();
  answered();
  assert.deepEqual(s.view.hidden, ['back']);
  s.set('motions.0.name', 'away');
  answered();
  assert.deepEqual(s.view.hidden, ['back']);
});

const AIM = { motion: 'out', to: { along_m: 5, height_m: 1.4, axial_m: 0 }, within_m: 0.15, fixed: { speed_m_s: 6 } };
const caught = along_m => ({ aim: { ...AIM, to: { ...AIM.to, along_m } } });
const aimed = () => {
  const s = store();
  s.setShot({ aim: AIM }, { step: false });
  return s;
};

test('a catcher that is dragged is one step to undo, and its place comes into sight with it', () => {
  const s = aimed(),
    shown = [];
  s.on('shot', ({ aim }) => aim && shown.push(aim.to.along_m));
  assert.equal(s.canUndo, false); // the page made the first
  assert.equal(s.shot.asked, false);
  for (const along of [6, 7, 8]) s.setShot(caught(along), { live: true });
  s.setShot(caught(8));
  s.setShot(caught(9));
  s.setShot(caught(9)); // where it is already
  assert.equal(s.shot.asked, true);
  s.undo();
  assert.equal(s.shot.aim.to.along_m, 8);
  assert.equal(s.view.place, 5);
  s.undo();
  assert.equal(s.shot.aim.to.along_m, 5);
  assert.equal(s.canUndo, false);
  s.redo();
  assert.equal(s.shot.aim.to.along_m, 8);
  assert.deepEqual(shown, [6, 7, 8, 8, 9, 9, 8, 5, 8]);
});

test('changes of scene and catcher are undone in their order; what comes with a change goes with it', () => {
  const s = aimed();
  s.set('habitat.radius_m', 60);
  s.setShot(caught(6));
  s.edit(draft => {
    draft.motions.push({ ...draft.motions[0], name: 'out back' });
  });
  s.setShot({ aim: { ...AIM, motion: 'out back' } }, { step: false });
  s.undo();
  assert.deepEqual([s.shot.aim.motion, s.shot.aim.to.along_m, s.document.motions.length, s.document.habitat.radius_m], ['out', 6, 2, 60]);
  s.undo();
  assert.deepEqual([s.shot.aim.to.along_m, s.document.habitat.radius_m], [5, 60]);
  s.undo();
  assert.equal(s.document.habitat.radius_m, 56);
  s.redo();
  s.redo();
  s.redo();
  assert.deepEqual([s.document.motions.length, s.document.habitat.radius_m], [3, 60]);
});

test('a change from before there was an aim is undone without taking the aim away', () => {
  const s = store();
  s.set('habitat.radius_m', 60);
  s.setShot({ aim: AIM }, { step: false });
  s.undo();
  assert.deepEqual([s.document.habitat.radius_m, s.shot.aim], [56, AIM]);
});

test('a throw or a catcher under another name stays aimed', () => {
  const s = aimed();
  s.set('motions.0.name', 'serve');
  assert.equal(s.shot.aim.motion, 'serve');
  s.setShot({ aim: { ...s.shot.aim, to: { motion: 'back' } } });
  s.set('motions.1.name', 'runner');
  assert.deepEqual(s.shot.aim.to, { motion: 'runner' });
});

test('what goes by the answer waits for that of the document as it stands', () => {
  const s = store(),
    done = [];
  const act = () => done.push(s.answer.scene.habitat.radius_m);
  s.setAnswer(answerFor(s.document), s.document);
  s.whenAnswered(act);
  assert.deepEqual(done, [56], 'at once, for it is here');
  s.set('habitat.radius_m', 80);
  const before = s.document;
  s.whenAnswered(act);
  s.set('habitat.radius_m', 90);
  s.setAnswer(answerFor(before), before);
  assert.deepEqual(done, [56], 'that of other inputs is not taken for it');
  s.setAnswer(answerFor(s.document), s.document);
  s.setAnswer(answerFor(s.document), s.document);
  assert.deepEqual(done, [56, 90], 'and it is done once');
});

test('what waits for an answer is given up once its document is left', () => {
  const s = store();
  s.setAnswer(answerFor(s.document), s.document);
  s.set('habitat.radius_m', 80);
  s.whenAnswered(() => assert.fail('the scene is another'));
  s.undo();
  s.setAnswer(answerFor(s.document), s.document);
});
