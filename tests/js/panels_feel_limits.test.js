// Limits on the page: where the ticks of a rule lie, how their letters make room, and what a row says of itself.

import assert from 'node:assert/strict';
import test from 'node:test';
import { numbersApart } from '../../static/panels/feel/day.js';
import { nearest } from '../../static/panels/feel/size/size.js';
import { notchOf, ruleOf } from '../../static/panels/feel/rule.js';
import {
  behindWords,
  boundWords,
  countRows,
  figureWords,
  quantityHeading,
  stateWords,
  walkingPace,
  premisesWords,
  publishedWords,
  studyWords,
} from '../../static/panels/feel/figure_words.js';

const row = (letter, limit, bound = 'at_most') => ({ letter, limit, bound });
const close = (a, b, by = 0.06) => assert.ok(Math.abs(a - b) <= by, `${a} is not ${b}`);
const boxes = (labels, line) =>
  labels
    .filter(label => label.line === line)
    .map(({ x, say }) => [x - (10 * say.split('\u00a0').length - 3) / 2, x + (10 * say.split('\u00a0').length - 3) / 2]);

test('a rule over more than twenty times is spread by decades, one over less evenly from nothing', () => {
  const decades = ruleOf([row('a', 0.1), row('b', 1), row('c', 10)], 3, 320).ticks.map(({ x }) => x);
  close(decades[1] - decades[0], decades[2] - decades[1], 0.2);
  const even = ruleOf([row('a', 2), row('b', 4), row('c', 8)], 3, 320).ticks.map(({ x }) => x);
  close((even[2] - even[1]) / (even[1] - even[0]), 2, 0.01);
});

test('our value lies between the limits it lies between, and past all of them at an end of the rule', () => {
  const rows = [row('a', 1), row('b', 3), row('c', 6)];
  for (const [value, less] of [
    [0.5, 0],
    [2, 1],
    [4, 2],
    [40, 3],
    [4000, 3],
  ]) {
    const rule = ruleOf(rows, value, 300),
      at = notchOf(rule, value);
    assert.equal(rule.ticks.filter(({ x }) => x < at).length, less, `${value}`);
    assert.ok(at >= 0 && at < 300 && rule.scale.max >= value);
  }
  assert.equal(notchOf(ruleOf(rows, 3, 300), 3).toFixed(1), ruleOf(rows, 3, 300).ticks[1].x.toFixed(1));
  assert.equal(notchOf(ruleOf(rows, null, 300), null), null);
  assert.ok(notchOf(ruleOf([row('a', 0.1), row('b', 10)], 0, 300), 0) < 30, 'nothing lies at the low end');
});

test('a foot points to what is forbidden; what is no limit has none', () => {
  const signs = ['at_most', 'at_least', 'optimum', 'reached', 'observed'].map((bound, i) => ruleOf([row('a', 1 + i, bound)], 2, 300).ticks[0].sign);
  assert.deepEqual(signs, ['right', 'left', 'diamond', 'ring', 'ring']);
});

test('letters never touch, none is lost, and those of one place stand together', () => {
  for (const wide of [268, 320, 350]) {
    const limits = [0.1, 1, 4, 6, 2, 6, 6, 6, 1, 3, 10, 20, 30, 1.8, 11.8];
    const { labels } = ruleOf(
      limits.map((limit, i) => row('abcdefghijklmno'[i], limit)),
      3,
      wide,
    );
    assert.equal(
      labels
        .flatMap(({ say }) => say.split('\u00a0'))
        .sort()
        .join(''),
      'abcdefghijklmno',
    );
    assert.ok(
      labels.some(({ say }) => say === 'd\u00a0f\u00a0g\u00a0h'),
      labels.map(({ say }) => say).join(' | '),
    );
    for (const line of [0, 1]) {
      const on = boxes(labels, line);
      on.forEach(([left, right], i) => assert.ok(left >= -0.1 && right <= wide + 0.1 && (i === 0 || left >= on[i - 1][1] + 3.8)));
    }
  }
});

test('limits that crowd are set together rather than over each other', () => {
  const { labels } = ruleOf(
    'abcdefghijkl'.split('').map((letter, i) => row(letter, 100 + i * 0.9)),
    10,
    300,
  );
  assert.ok(labels.length < 12 && labels.every(({ line }) => line === 0 || line === 1));
  assert.equal(labels.flatMap(({ say }) => say.split('\u00a0')).length, 12);
});

test('two studies that say the same make one tick', () => {
  assert.equal(ruleOf([row('a', 6), row('b', 6), row('c', 6, 'reached')], 3, 300).ticks.length, 2);
});

test('a drag moves the notch and leaves the ticks', () => {
  const rows = [row('a', 0.1), row('b', 1), row('c', 10)];
  const [before, after] = [3, 3.2].map(value => ruleOf(rows, value, 320));
  assert.deepEqual(before.ticks, after.ticks);
  assert.ok(notchOf(after, 3.2) > notchOf(before, 3));
  const [past, further] = [12, 12.4].map(value => ruleOf(rows, value, 320));
  assert.deepEqual(past.ticks, further.ticks, 'also past all of them, for most of a drag');
});

test('a row says its bound and how it lies, without a verdict of its own', () => {
  const spin = { bound: 'at_most', limit: 1.8, unit: 'rpm' };
  assert.equal(boundWords(spin, 'si'), 'at most 1.8\u00a0rpm');
  assert.equal(boundWords({ bound: 'at_least', limit: 6, unit: 'm/s' }, 'us'), 'at least 19.7\u00a0ft/s'); // 6 m / 0.3048
  assert.equal(stateWords({ ...spin, state: 'beyond', times: 1.6667 }, 'si'), 'beyond, ×1.7');
  assert.equal(stateWords({ ...spin, state: 'beyond', times: 30 }, 'si'), 'beyond, ×30');
  assert.equal(stateWords({ ...spin, state: 'beyond', times: 1.01, margin: -0.018 }, 'si'), 'beyond by 0.0180\u00a0rpm');
  for (const [state, say] of [
    ['inside', 'inside'],
    ['at the limit', 'at the limit'],
    ['above', 'above'],
    ['none', 'no value'],
  ])
    assert.equal(stateWords({ ...spin, state }, 'si'), say);
});

test('a study has its year; a limit of one’s own is marked so', () => {
  assert.equal(studyWords({ study: 'Stone', year: 1973, mine: false }), 'Stone 1973');
  assert.equal(studyWords({ study: 'Bunk', year: null, mine: true }), 'Bunk, yours');
  assert.equal(studyWords({ study: 'your own', year: null, mine: true }), 'your own');
});

test('behind a row stand citation, for whom, note, and whether it was quoted from memory', () => {
  const said = behindWords({ source: 'A paper (1973)', who: 'crew', note: 'A note.', known_by: 'memory' });
  assert.deepEqual(said, ['A paper (1973).', 'For whom: crew.', 'A note.', 'From memory: look it up before you cite it.']);
  assert.deepEqual(behindWords({ source: 'A paper (1973)', who: '', note: '', known_by: 'read' }), ['A paper (1973).']);
  assert.match(behindWords({ mine: true })[0], /no publication/);
});

test('small figures keep their places, and nothing is written for what has no value', () => {
  assert.equal(figureWords(0.010064, 'g/m', 'si'), '0.0101\u00a0g/m');
  assert.equal(figureWords(-0.0114, 'm', 'si'), '−0.0114\u00a0m');
  assert.equal(figureWords(null, 'g', 'si'), '–');
  assert.equal(publishedWords(0.035, 'g', 'si'), '0.035\u00a0g');
  assert.equal(quantityHeading({ label: 'Coriolis to gravity', unit: '', value: null }, 'si'), 'Coriolis to gravity, no value here');
});

test('numbers of a paragraph are told from its words', () => {
  const parts = numbersApart('You weigh 0.48, not 1,200; it drifts −3.5 mm.');
  assert.deepEqual(
    parts.filter((_, i) => i % 2),
    ['0.48', '1,200', '−3.5'],
  );
  assert.equal(parts.join(''), 'You weigh 0.48, not 1,200; it drifts −3.5 mm.');
});

test('what is taken away says for which habitat and for whom it holds', () => {
  const person = { height_m: 1.95, walk_m_s: 1.4, run_m_s: 4 };
  const said = (habitat, units = 'si') => premisesWords({ habitat: { radius_m: 30, spin_rpm: 4, ...habitat }, person }, units).replaceAll('\u00a0', ' ');
  assert.equal(said({ axial_thrust_m_s2: 0 }), '30.0 m, 4.00 rpm; somebody 1.95 m tall who walks at 1.4 m/s and runs at 4.0 m/s.');
  assert.match(said({ axial_thrust_m_s2: 2 }), /^30\.0 m, 4\.00 rpm, thrust 2\.00 m\/s²; /);
  assert.match(said({ outside_gravity_m_s2: 9.80665 }), /^30\.0 m, 4\.00 rpm, gravity of the room 9\.81 m\/s²; /);
  assert.match(said({}, 'us'), /^98\.4 ft, 4\.00 rpm; somebody 6\.40 ft tall /); // 30 m and 1.95 m over 0.3048
  assert.equal(walkingPace(1.45, 'si'), '1.45\u00a0m/s');
});

test('an optimum is written as the commands write it', () => {
  assert.equal(boundWords({ bound: 'optimum', limit: 2, unit: 'rpm' }, 'si'), 'optimum 2\u00a0rpm');
});

test('an answer is brought into view by no more than it takes', () => {
  const whole = { top: 100, bottom: 500 };
  assert.equal(nearest({ top: 200, bottom: 300 }, whole), 0);
  assert.equal(nearest({ top: 450, bottom: 560 }, whole), 84, 'clear of the foot, which fades');
  assert.equal(nearest({ top: 40, bottom: 120 }, whole), -60);
  assert.equal(nearest({ top: 450, bottom: 1000 }, whole), 350, 'one higher than the place begins at its top');
  assert.equal(nearest({ top: 450, bottom: 1000 }, whole, { top: 380 }), 274, 'the wish just changed stays over it');
  assert.equal(nearest({ top: 450, bottom: 1000 }, whole, { top: 200 }), 350, 'but not where it would take half of the place');
});

test('a count of rows says how many of them are limits, where some only tell what was seen', () => {
  const limit = row('a', 1),
    seen = row('b', 2, 'observed'),
    said = (...rows) => countRows(rows).replaceAll('\u00a0', ' ');
  assert.equal(said(limit), 'one row');
  assert.equal(said(limit, row('b', 2, 'at_least')), '2 rows');
  assert.equal(said(limit, seen, seen), '3 rows, 1 of them a limit');
  assert.equal(said(limit, limit, seen), '3 rows, 2 of them limits');
  assert.equal(said(seen, seen), '2 rows, none of them limits');
});
