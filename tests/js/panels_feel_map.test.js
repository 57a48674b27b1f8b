// The map: log axes that agree with themselves, words that hide no words, counts as in the answer; and the wishes as they are sent.

import assert from 'node:assert/strict';
import test from 'node:test';
import { beyond, makeFrame } from '../../static/panels/feel/map/frame.js';
import { insideWords, drawnOf, groupsOf } from '../../static/panels/feel/map/legend.js';
import { cornersOf, meet, placePlate } from '../../static/panels/feel/map/habitat_mark.js';
import { rangeOf } from '../../static/panels/feel/map/ring.js';
import { RADIUS, SPIN } from '../../static/state/fields.js';
import { FIGURES, FIRST_WISHES, asRequest, choicesOf, newWish, nextWish } from '../../static/panels/feel/size/wishes.js';

const MAP = { size_px: [320, 256], box_px: [34, 8, 310, 232], radius_m: [1, 10000], spin_rpm: [0.1, 60] };
const near = (a, b, within) => assert.ok(Math.abs(a - b) <= within, `${a} is not ${b}`);

test('each decade takes as much of an axis as any other, and a place on it leads back to its value', () => {
  const frame = makeFrame(MAP);
  near(frame.x(10) - frame.x(1), frame.x(10000) - frame.x(1000), 1e-9);
  near(frame.y(0.1) - frame.y(1), frame.y(1) - frame.y(10), 1e-9);
  for (const value of [1, 7, 56, 9000]) near(frame.radiusAt(frame.x(value)), value, 1e-9 * value);
  for (const value of [0.1, 3, 59]) near(frame.spinAt(frame.y(value)), value, 1e-9 * value);
});

const MOST_M_S = 5000; // that a rim may move at
const RAD_S = Math.PI / 30;
// a = ω²R and v = ωR, with the spin in rpm
const HOLDS = { gravity: { factor: RAD_S ** 2, radius_power: 1, spin_power: 2 }, rim_speed: { factor: RAD_S, radius_power: 1, spin_power: 1 } };
const FIELDS = { fields: { [RADIUS]: { min: 0.1, max: 100000 }, [SPIN]: { min: 0, max: 200 } }, greatest_rim_speed_m_s: MOST_M_S, holds: HOLDS };

test('a dial goes as far as its field, and no farther than leaves the outermost rim as fast as one may be', () => {
  const range = (path, habitat, held = {}) => rangeOf(path, { fields: FIELDS, habitat, hold: null, held: null, ...held });
  assert.deepEqual(range(RADIUS, { radius_m: 56, spin_rpm: 0 }), { min: 0.1, max: 100000 });
  assert.deepEqual(range(SPIN, { radius_m: 56, spin_rpm: 3 }), { min: 0, max: 200 });
  near(range(SPIN, { radius_m: 20000, spin_rpm: 1 }).max * RAD_S * 20000, MOST_M_S, 1e-6);
  near(range(SPIN, { radius_m: 56, spin_rpm: 1, floors: [{ radius_m: null }, { radius_m: 20000 }] }).max * RAD_S * 20000, MOST_M_S, 1e-6);
  near(range(RADIUS, { radius_m: 56, spin_rpm: 100 }).max * RAD_S * 100, MOST_M_S, 1e-6);
  near(range(RADIUS, { radius_m: 56, spin_rpm: 0, spin_ramp: [{ spin_rpm: 50 }] }).max * RAD_S * 50, MOST_M_S, 1e-6);
});

test('with gravity or rim speed held both ends of a dial leave the one that follows inside its own range', () => {
  for (const held of [0.5, 9.80665, 6141]) {
    const { min, max } = rangeOf(RADIUS, { fields: FIELDS, habitat: { radius_m: 56, spin_rpm: 3 }, hold: 'gravity', held });
    assert.ok(Math.sqrt(held / min) <= 200.0001 * RAD_S && Math.sqrt(held * max) <= 1.0001 * MOST_M_S && max <= 100000);
    const spin = rangeOf(SPIN, { fields: FIELDS, habitat: { radius_m: 56, spin_rpm: 3 }, hold: 'gravity', held });
    for (const rpm of [spin.min, spin.max]) {
      const radius = held / (rpm * RAD_S) ** 2;
      assert.ok(radius > 0.0999 && radius < 100001 && rpm * RAD_S * radius < 1.0001 * MOST_M_S);
    }
  }
  const { min, max } = rangeOf(RADIUS, { fields: FIELDS, habitat: { radius_m: 56, spin_rpm: 3 }, hold: 'rim_speed', held: 17.6 });
  near(17.6 / min / RAD_S, 200, 1e-6);
  near(max * 3 * RAD_S, MOST_M_S, 1e-6); // the scene keeps its 3 rpm until it is answered
});

test('what the map does not hold stands on its edge, and is said to lie beyond it', () => {
  const frame = makeFrame(MAP);
  assert.equal(frame.y(0), frame.box.bottom);
  assert.equal(frame.x(99000), frame.box.right);
  assert.equal(beyond(frame, 56, 3), null);
  assert.equal(beyond(frame, 56, 0), 'below the map');
  assert.equal(beyond(frame, 20000, 100), 'above the map, right of the map');
  near(frame.free(100000, 3)[0] - frame.free(10000, 3)[0], frame.x(10) - frame.x(1), 1e-9);
});

const row = (id, quantity, limit, inside, rest = {}) => ({
  id,
  quantity,
  limit,
  inside,
  bound: 'at_most',
  study: 'Study',
  year: 1970,
  mine: false,
  state: inside ? 'inside' : 'beyond',
  ...rest,
});
const FEEL = {
  quantities: [
    { name: 'gravity', label: 'Gravity at the feet' },
    { name: 'spin', label: 'Spin', in_text: 'spin' },
    { name: 'coriolis', label: 'Coriolis to gravity', in_text: 'Coriolis to gravity' },
  ],
  map: {
    limits: [
      { quantity: 'spin', bound: 'at_most', limit: 6, unit: 'rpm', short: '6 rpm', ids: ['a_1969.spin.at_most', 'b_1973.spin.at_most'], mine: false },
      { quantity: 'spin', bound: 'at_most', limit: 2, unit: 'rpm', short: '2 rpm', ids: ['own.1'], mine: true },
    ],
  },
  limits: [
    row('a_1969.spin.at_most', 'spin', 6, true, { study: 'One', year: 1969 }),
    row('b_1973.spin.at_most', 'spin', 6, true, { study: 'Two', year: 1973 }),
    row('c_1972.spin.reached', 'spin', 10, null, { bound: 'reached', study: 'Three', year: 1972 }),
    row('a_1969.gravity.at_most', 'gravity', 1, true, { study: 'One', year: 1969 }),
    row('own.1', 'spin', 2, false, { study: 'Bunk', year: null, mine: true }),
  ],
};

test('only limits are counted, and those of the group that is drawn', () => {
  assert.equal(insideWords(FEEL, 'all'), 'Inside 3 of all 4 limits');
  assert.equal(insideWords(FEEL, 'spin'), 'Inside 2 of the 3 limits on spin, and 3 of all 4');
  assert.equal(insideWords(FEEL, 'mine'), 'Beyond the one limit of your own, and inside 3 of all 4');
  assert.equal(insideWords(FEEL, 'coriolis'), 'There is no limit to compare this habitat with');
});

test('the server is asked for the quantities of a group', () => {
  assert.deepEqual(['both', 'all', 'spin', 'mine'].map(drawnOf), [['gravity', 'spin'], [], ['spin'], ['mine']]);
});

test('a group is offered where the map has a line of it', () => {
  assert.deepEqual(
    groupsOf(FEEL).map(([group]) => group),
    ['both', 'all', 'spin', 'mine'],
  );
});

test('a quantity among the groups goes by its name in a sentence', () => {
  assert.equal(groupsOf({ ...FEEL, map: { limits: [{ quantity: 'coriolis' }] } }).at(-1)[1], 'Coriolis to gravity');
});

test('wishes are sent as figures with their bound, or as a study, for whoever is aboard', () => {
  assert.deepEqual(asRequest(FIRST_WISHES, undefined), {
    wishes: [
      { kind: 'figure', quantity: 'gravity', bound: 'exactly', value: 0.5 },
      { kind: 'figure', quantity: 'spin', bound: 'at_most', value: 2 },
    ],
  });
  const [[study]] = choicesOf(FEEL.limits).slice(Object.keys(FIGURES).length);
  assert.deepEqual(asRequest([newWish(study)], { height_m: 2 }), { wishes: [{ kind: 'study', study: 'a_1969' }], person: { height_m: 2 } });
});

test('studies are offered by year, none without a limit, none of one’s own', () => {
  const studies = choicesOf(FEEL.limits).filter(([id]) => id.startsWith('study:'));
  assert.deepEqual(studies, [
    ['study:a_1969', 'All of One 1969'],
    ['study:b_1973', 'All of Two 1973'],
  ]);
});

test('a wish added is of a kind not yet there', () => {
  let wishes = FIRST_WISHES;
  for (let i = 0; i < 5; i += 1) wishes = [...wishes, nextWish(wishes)];
  assert.equal(new Set(wishes.map(({ id }) => id)).size, wishes.length);
});

const BOX = { left: 34, right: 310, top: 8, bottom: 232 };
const label = (left, top, wide = 40, high = 15) => ({ corners: cornersOf(left, top, wide, high) });

test('the name stands at the first place beside the ring that hides no words, and else at the one that hides the fewest', () => {
  const [x, y] = [150, 120];
  const [above, below] = [label(170, 95), label(170, 130)];
  const onLeft = [label(60, 95), label(60, 130), label(105, 130)];
  const placed = labels => placePlate(BOX, [x, y], 100, labels);
  const where = ({ left, top, hides }) => [left > x ? 'right' : 'left', top < y ? 'above' : 'below', hides.length];
  assert.deepEqual(where(placed([])), ['right', 'above', 0]);
  assert.deepEqual(where(placed([above])), ['right', 'below', 0]);
  assert.deepEqual(where(placed([above, below])), ['left', 'above', 0]);
  assert.deepEqual(where(placed([above, below, onLeft[0]])), ['left', 'below', 0]);
  assert.deepEqual(where(placed([above, below, ...onLeft])), ['right', 'above', 1]);
  assert.deepEqual(placed([above, below, ...onLeft]).hides, [above]);
});

test('the name never leaves the map nor covers the ring, wherever that is', () => {
  for (let x = BOX.left; x <= BOX.right; x += 12) {
    for (let y = BOX.top; y <= BOX.bottom; y += 8) {
      for (const wide of [40, 150, 276]) {
        const { left, top } = placePlate(BOX, [x, y], wide, []);
        assert.ok(left >= BOX.left && left + wide <= BOX.right && top >= BOX.top && top + 17 <= BOX.bottom, `${x}, ${y}: ${left}, ${top}`);
        const [nearX, nearY] = [Math.max(left, Math.min(x, left + wide)), Math.max(top, Math.min(y, top + 17))];
        assert.ok(Math.hypot(nearX - x, nearY - y) >= 8.5, 'the ring is 7.5 px, its line 2 px wide');
      }
    }
  }
});

test('turned words meet a plate only where they have a part in common', () => {
  const plate = cornersOf(0, 0, 40, 20);
  const square = (x, y) => [
    [x, y - 10],
    [x + 10, y],
    [x, y + 10],
    [x - 10, y],
  ]; // on its corner
  assert.equal(meet(square(44, 24), plate), true); // its side passes the corner at 2 px of |x| + |y|
  assert.equal(meet(square(46, 26), plate), false); // the upright boxes about them overlap
  assert.equal(meet(square(20, 10), plate), true);
});
