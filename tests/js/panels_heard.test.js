// What is read out of a change: 0.4 s after it comes to rest, one sentence of what changed for whom.

import assert from 'node:assert/strict';
import test from 'node:test';
import { createHeard } from '../../static/panels/heard.js';

const KINDS = { throw: { one: 'throw', many: 'throws' } };
const SHAPES = { cylinder: { label: 'Cylinder' } };
const motion = (name, short) => ({ name, in_short: short });
const home = (gravity, ...motions) => ({ habitat: { deck_gravity_g: gravity }, motions });

function heardOf(first) {
  const hearers = { document: [], answer: [], feel: [] };
  const written = [];
  let due = null;
  const store = {
    document: { habitat: { radius_m: 56, spin_rpm: 3 }, title: 'The same lob, both ways', motions: first.motions.map(({ name }) => ({ kind: 'throw', name })) },
    fields: { kinds: KINDS, shapes: SHAPES },
    view: { chosen: 0, hidden: [], units: 'si', place: 2 },
    answer: first,
    feel: null,
    notice: null,
    stale: false,
    on: (topic, hear) => hearers[topic].push(hear),
  };
  const timers = [
    (fn, ms) => {
      assert.equal(ms, 400);
      due = fn;
      return fn;
    },
    timer => {
      if (due === timer) due = null;
    },
  ];
  const { say } = createHeard({ store, write: text => written.push(text.replaceAll('\u00a0', ' ')), later: timers[0], forget: timers[1] });
  return {
    store,
    say,
    written,
    emit: (topic, detail = {}) => hearers[topic].forEach(hear => hear(detail)),
    rest() {
      due?.();
      due = null;
      return written.splice(0);
    },
    answer(next, patch = {}) {
      Object.assign(store, { answer: next }, patch);
      hearers.answer.forEach(hear => hear({ current: true }));
    },
  };
}

const OUT = motion('Lob out', 'lands 5.21 m spinward after 1.06 s'),
  BACK = motion('Lob back', 'lands 10.7 m antispinward after 1.58 s');

test('a scene that opens says its name and what becomes of its motions', () => {
  const page = heardOf(home(0.564, OUT, BACK));
  page.emit('answer');
  assert.deepEqual(page.rest(), [
    'The same lob, both ways, two throws: Lob out lands 5.21 m spinward after 1.06 s; Lob back lands 10.7 m antispinward after 1.58 s.',
  ]);
});

test('one that changed is told, once all is at rest, and the rest is not', () => {
  const page = heardOf(home(0.564, OUT, BACK));
  page.emit('answer');
  page.rest();
  page.store.stale = true;
  page.emit('document', { live: true });
  assert.deepEqual(page.rest(), [], 'no old answer is told');
  page.answer(home(0.564, motion('Lob out', 'lands 5.1 m spinward after 1.1 s'), BACK), { stale: false });
  page.answer(home(0.564, motion('Lob out', 'lands 5.0 m spinward after 1.1 s'), BACK));
  assert.deepEqual(page.rest(), ['Lob out now lands 5.0 m spinward after 1.1 s.']);
  page.answer(page.store.answer);
  assert.deepEqual(page.rest(), [], 'nothing changed');
});

test('gravity comes first, the chosen motion next, and what is many is counted', () => {
  const four = ['one', 'two', 'three', 'four'];
  const page = heardOf(home(0.564, ...four.map(name => motion(name, 'rests'))));
  page.emit('answer');
  page.rest();
  page.store.view.chosen = 2;
  page.answer(home(0.7, ...four.map(name => motion(name, 'lands'))));
  assert.deepEqual(page.rest(), ['0.700 g: three now lands; four now lands; and 2 more changed.']);
});

test('added, taken away and renamed', () => {
  const page = heardOf(home(0.564, OUT));
  page.emit('answer');
  page.rest();
  page.answer(home(0.564, OUT, motion('Drop', 'lands 0.6 m antispinward after 0.5 s')));
  assert.deepEqual(page.rest(), ['Drop lands 0.6 m antispinward after 0.5 s.']);
  page.answer(home(0.564, OUT, motion('Cup', 'lands 0.6 m antispinward after 0.5 s')));
  assert.deepEqual(page.rest(), []);
  page.answer(home(0.564, OUT));
  assert.deepEqual(page.rest(), ['Cup is gone.']);
});

test('a second habitat says what it is, and afterwards what changes in it', () => {
  const page = heardOf(home(0.564, OUT));
  page.emit('answer');
  page.rest();
  page.store.document.compare = [{ name: 'Second habitat', habitat: { radius_m: 112, spin_rpm: 2.12 } }];
  page.answer({ ...home(0.564, OUT), compare: [home(0.564, motion('Lob out', 'lands 6.3 m spinward'))] });
  assert.deepEqual(page.rest(), ['Second habitat added: 112 m, 2.12 rpm, 0.564 g.']);
  page.answer({ ...home(0.564, OUT), compare: [home(0.6, motion('Lob out', 'lands 6.2 m spinward'))] });
  assert.deepEqual(page.rest(), ['In Second habitat, 0.600 g: Lob out now lands 6.2 m spinward.']);
});

test('another scene is no change of the one before; hidden motions and other units say nothing', () => {
  const page = heardOf(home(0.564, OUT, BACK));
  page.emit('answer');
  page.rest();
  page.store.view.hidden = ['Lob back'];
  page.answer(home(0.564, OUT, motion('Lob back', 'rests')));
  assert.deepEqual(page.rest(), []);
  page.store.view.units = 'us';
  page.answer(home(0.564, motion('Lob out', 'lands 17.1 ft spinward'), BACK));
  assert.deepEqual(page.rest(), []);
  page.emit('document', { replaced: true });
  assert.match(page.rest()[0], /^The same lob, both ways, two throws: Lob out lands 17.1 ft/);
});

test('what others say goes with it', () => {
  const page = heardOf(home(0.564, OUT));
  page.emit('answer');
  page.rest();
  page.say('Playback speed ¼.');
  assert.deepEqual(page.rest(), ['Playback speed ¼.']);
});
