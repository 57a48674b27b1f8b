// Opening a scene: shown with its own answer only; what stands in the way is told as what it is.

import assert from 'node:assert/strict';
import test from 'node:test';
import { Unanswered, ValidationError } from '../../static/api/errors.js';
import { createOpen, firstScene } from '../../static/api/opening.js';
import { createStatus } from '../../static/state/status.js';
import { createStore } from '../../static/state/store.js';
import { FIELDS, SCENE } from './_scene.mjs';

const settle = () => new Promise(resolve => setTimeout(resolve));
const HEAVY = () => new ValidationError([{ field: 'work', say: 'Bouncer had used 20 s.' }]);
const LATE = () => new Unanswered('The server has not answered for 30 s.', { reason: 'late' });
const titled = title => ({ ...structuredClone(SCENE), title });

// a server that answers scenes by their title, when the test says so
function bench() {
  const asked = [];
  const trace = (document, options) =>
    new Promise((resolve, reject) => {
      options.signal.addEventListener('abort', () => reject(options.signal.reason));
      asked.push({ document, options, answer: () => resolve({ scene: document, motions: [] }), fail: reject });
    });
  const openedExample = (id, options) => {
    const document = titled(id);
    return trace(document, options).then(answer => ({ document, answer }));
  };
  return { asked, trace, openedExample, status: createStatus({ later: fn => fn(), forget: () => {} }) };
}

function opened() {
  const { asked, trace, openedExample, status } = bench();
  const store = createStore({ document: titled('Old'), fields: FIELDS });
  store.setAnswer({ scene: store.document, motions: [] }, store.document);
  const left = [];
  const shown = [];
  const opening = createOpen({
    store,
    trace,
    openedExample,
    status,
    left: document => left.push(document.title),
    opened: (document, id) => shown.push([document.title, id]),
  });
  return { asked, status, store, left, shown, ...opening };
}
const beside = store => [store.document.title, store.answer.scene.title];

test('a scene is asked for once, and no answer ever stands beside inputs that are not its own', async () => {
  const { asked, store, left, open } = opened();
  const seen = [];
  for (const topic of ['document', 'answer']) store.on(topic, () => seen.push(beside(store)));
  open(titled('New'));
  await settle();
  assert.deepEqual(beside(store), ['Old', 'Old']);
  asked[0].answer();
  await settle();
  assert.deepEqual([asked.length, left], [1, ['Old']]);
  store.undo();
  store.redo();
  for (const [document, answer] of seen) assert.equal(document, answer);
  assert.equal(seen.length, 6);
  assert.deepEqual(beside(store), ['New', 'New']);
});

test('a scene that comes with the program is shown in one step with its answer, and which one it is', async () => {
  const { asked, store, shown, open, openExample } = opened();
  openExample({ id: 'ring', title: 'In the ring' });
  await settle();
  assert.deepEqual(beside(store), ['Old', 'Old']);
  asked[0].answer();
  await settle();
  open(titled('New'));
  await settle();
  asked[1].answer();
  await settle();
  assert.deepEqual(shown, [
    ['ring', 'ring'],
    ['New', null],
  ]);
  openExample({ id: 'ring', title: 'In the ring' });
  asked[2].fail(LATE());
  await settle();
  assert.equal(store.notice.say, '“In the ring” was not opened: the server has not answered for 30 s.');
  assert.deepEqual(beside(store), ['New', 'New']);
});

test('of two scenes chosen one after the other the later is shown', async () => {
  const { asked, store, open } = opened();
  open(titled('Slow'));
  open(titled('Quick'));
  assert.equal(asked[0].options.signal.aborted, true);
  asked[1].answer();
  await settle();
  assert.deepEqual([beside(store), store.notice], [['Quick', 'Quick'], null]);
});

test('one that is refused, not answered or cancelled changes nothing, and each is told as what it is', async () => {
  const { asked, status, store, open } = opened();
  const cases = [
    [() => asked.at(-1).fail(HEAVY()), /^“New” is too heavy for this server\. Bouncer had used 20 s\. Nothing was changed\.$/, 'refused', false],
    [() => asked.at(-1).fail(LATE()), /^“New” was not opened: the server has not answered for 30 s\. Nothing was changed\.$/, 'failed', true],
    [() => status.line.buttons[0].run(), /^“New” was not opened: you cancelled it\. Nothing was changed\.$/, 'told', true],
  ];
  for (const [end, words, kind, again] of cases) {
    open(titled('New'));
    end();
    await settle();
    assert.match(`${store.notice.say} ${store.notice.more}`, words);
    assert.deepEqual([store.notice.kind, Boolean(store.notice.again), ...beside(store)], [kind, again, 'Old', 'Old']);
  }
});

const first = (bench, sources) => {
  const { trace, openedExample, status } = bench;
  return firstScene({ sources, example: options => openedExample('Example', options), trace, status, units: 'si' });
};

test('a link that waits says so, and can be cancelled', async () => {
  const page = bench();
  const scene = first(page, [{ what: 'the scene of the link', find: async () => titled('Linked') }]);
  await settle();
  assert.equal(page.status.line.say, 'Opening the scene of the link…');
  page.asked[0].options.told(1, 2);
  assert.equal(page.status.line.share, 0.5);
  page.status.line.buttons[0].run();
  await settle();
  assert.deepEqual(page.status.line.buttons, [], 'the last resort is waited for');
  page.asked[1].answer();
  const { document, isExample, trouble } = await scene;
  assert.deepEqual([document.title, isExample, trouble.say], ['Example', true, 'The scene of the link was not opened: you cancelled it.']);
  assert.equal(trouble.again.title, 'Linked');
  assert.equal(page.status.line, null);
});

test('a link is called too heavy, refused, not answered or unreadable, each where it is that', async () => {
  const cases = [
    [HEAVY(), 'The scene of the link is too heavy for this server. Bouncer had used 20 s.'],
    [new ValidationError([{ field: 'habitat', say: 'Radius was 0.' }]), 'The scene of the link was refused. Radius was 0.'],
    [LATE(), 'The scene of the link was not opened: the server has not answered for 30 s.'],
  ];
  for (const [problem, say] of cases) {
    const page = bench();
    const scene = first(page, [{ what: 'the scene of the link', find: async () => titled('Linked') }]);
    await settle();
    page.asked[0].fail(problem);
    await settle();
    page.asked[1].answer();
    const { trouble } = await scene;
    assert.equal([trouble.say, trouble.more].filter(Boolean).join(' '), say);
  }
  const page = bench();
  const scene = first(page, [{ what: 'the scene of the link', find: () => Promise.reject(new Error('not a scene')) }]);
  await settle();
  page.asked[0].answer();
  assert.equal((await scene).trouble.say, 'The scene of the link could not be read: it holds no whole scene.');
});
