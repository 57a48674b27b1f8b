// A file opened: JSON here, all else by the server; what stands in the way in words.

import assert from 'node:assert/strict';
import test from 'node:test';
import { ValidationError } from '../../static/api/errors.js';
import { createOpenFile } from '../../static/panels/open_file.js';
import { createStatus } from '../../static/state/status.js';
import { SCENE } from './_scene.mjs';

const settle = () => new Promise(resolve => setTimeout(resolve));

function bench(recover = () => assert.fail('the server is not asked')) {
  const opened = [],
    said = [];
  const status = createStatus({ later: fn => fn(), forget: () => {} });
  const take = createOpenFile({ recover, status, open: scene => opened.push(scene), complain: say => said.push(say) });
  return { take, opened, said, status };
}
const file = (name, content) => new File([content], name);

test('a scene, and notes that carry one, are opened without the server', async () => {
  const { take, opened } = bench();
  await take(file('a.json', `\ufeff${JSON.stringify(SCENE)}`));
  await take(file('b.json', JSON.stringify({ program: 'x', scene: SCENE })));
  assert.deepEqual(opened, [SCENE, SCENE]);
});

test('any other file goes to the server as it is', async () => {
  const sent = [];
  const { take, opened, status } = bench(async (one, { told }) => {
    sent.push(one.name);
    told(1, 2);
    assert.deepEqual([status.line.say, status.line.share], [`Reading ${one.name}, 4 B…`, 0.5]);
    return { scene: SCENE, export: null, from: 'usdz' };
  });
  for (const name of ['a.usdz', 'b.pdf', 'c.frames.zip', 'd.png']) await take(file(name, 'PK\u0003\u0004'));
  assert.deepEqual([sent.length, opened.length, status.line], [4, 4, null]);
});

test('of a talk in one file the server gives the talk, which is opened as one', async () => {
  const talk = { rimfall_talk: 1, title: 'Twice', steps: [{ scene: SCENE }] },
    talks = [];
  const status = createStatus({ later: fn => fn(), forget: () => {} });
  const take = createOpenFile({
    recover: async () => ({ scene: talk, export: null, from: 'html' }),
    status,
    open: assert.fail,
    openTalk: one => talks.push(one),
    complain: assert.fail,
  });
  await take(file('talk.html', '<!doctype html>'));
  assert.deepEqual(talks, [talk]);
});

test('a file that cannot be opened is told by its name and why', async () => {
  const refuse = async () => {
    throw new ValidationError([{ field: 'file', was: 'x', may_be: 'y', say: 'The zip is cut short.' }]);
  };
  const { take, said, opened } = bench(refuse);
  await take(file('a.zip', 'PK\u0003\u0004'));
  await take(file('b.json', '{"radius": 12'));
  await take(file('c.json', '{"radius": 12}'));
  await take({ name: 'd.usdz', size: 61_000_000 });
  assert.deepEqual(said.slice(0, 1), ['a.zip: The zip is cut short.']);
  assert.match(said[1], /^b\.json: (Line 1|It is not whole JSON)/);
  assert.deepEqual(said.slice(2), ['c.json: It holds no Rimfall scene.', 'd.usdz: It has 61.0 MB. A file may have 60.0 MB at most.']);
  assert.deepEqual(opened, []);
});

test('of two files the one chosen last is opened, and reading can be cancelled', async () => {
  const waiting = [];
  const { take, opened, said, status } = bench(
    (one, { signal }) =>
      new Promise((resolve, reject) => {
        signal.addEventListener('abort', () => reject(signal.reason));
        waiting.push({ name: one.name, answer: () => resolve({ scene: { ...SCENE, title: one.name } }) });
      }),
  );
  take(file('a.pdf', '%PDF'));
  await settle();
  take(file('b.pdf', '%PDF'));
  await settle();
  waiting[1].answer();
  await settle();
  assert.deepEqual(
    opened.map(({ title }) => title),
    ['b.pdf'],
  );
  take(file('c.pdf', '%PDF'));
  await settle();
  status.line.buttons[0].run();
  await settle();
  assert.deepEqual([opened.length, said, status.line], [1, [], null]);
});
