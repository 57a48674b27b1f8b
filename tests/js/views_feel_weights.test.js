import assert from 'node:assert/strict';
import test from 'node:test';

import { freest } from '../../static/views/feel/posts.js';
import { mostOf, onDeck, weighed, weightFigure, weightWords } from '../../static/views/feel/weights.js';
import { drawnGround, readShape } from '../../static/views/ground.js';

const GRID = { fps: [10, 1], samples_per_frame: 1, count: 4 };
const FEEL = { figures: { feet_g: 0.5636 }, person: { height_m: 1.75 } };
const HERE = { along_m: 3, axial_m: 0.5, floor: 0 };

// `habitat` as the server gives it to be drawn
function modelOf(habitat, spin_rad_s = [0.3, 0.3, 0.3, 0.3], habitat_answer = {}) {
  return {
    radius_m: habitat.radius_m,
    ground: drawnGround(readShape(habitat, habitat_answer, { section_m: null, level: false, half_m: 7, ...habitat })),
    answer: { grid: GRID, spin_rad_s },
  };
}
const WHEEL = modelOf({ radius_m: 56 });

const PERSON = { mover: 'person', weight: null };
const STAGES = {
  walk: { ...PERSON, weight: 'feet_g' },
  lift: { ...PERSON, weight: 'apparent_g' },
  jump: PERSON,
  let_go: PERSON,
  throw: { ...PERSON, mover: 'ball' },
};

function personOf(kind, findings, rest = {}) {
  return {
    i: 0,
    name: kind,
    stage: STAGES[kind],
    motion: { kind, first: 0, findings },
    path: { count: 4 },
    starts_s: 0,
    ends_s: 0.3,
    landing: null,
    floor: 0,
    ...rest,
  };
}
const standingG = (model, where, feel = FEEL, time_s = 0) => weighed(model, [where], [], feel, time_s)[0]?.weight_g ?? null;

test('who walks or rides is weighed by what the server found at the clock', () => {
  const walker = personOf('walk', { feet_g: [0.8, 0.9, 0.7, 0.7] });
  const rider = personOf('lift', { apparent_g: Float32Array.of(0.5, 0.25, 0.25, 0.125) }, { i: 1 });
  const at = time_s => weighed(WHEEL, [], [walker, rider], null, time_s).map(({ weight_g }) => weight_g);
  [
    [0, [0.8, 0.5]],
    [0.05, [0.85, 0.375]],
    [0.1, [0.9, 0.25]],
    [9, [0.7, 0.125]],
  ].forEach(([time_s, wanted]) => {
    assert.equal(at(time_s).length, 2);
    at(time_s).forEach((weight_g, k) => assert.ok(Math.abs(weight_g - wanted[k]) < 1e-6, `${time_s}: ${weight_g}`));
  });
  assert.equal(mostOf(walker), 0.9);
});

test('nothing presses on who is in the air, and after landing they stand', () => {
  const jumper = personOf('jump', {}, { landing: { along_m: 2, axial_m: 0 } });
  const at = time_s => weighed(WHEEL, [], [jumper], FEEL, time_s)[0].weight_g;
  assert.equal(at(0.2), 0);
  assert.equal(at(0.3), FEEL.figures.feet_g);
  const gone = personOf('let_go', {}, { starts_s: 0.1 });
  assert.deepEqual(weighed(WHEEL, [], [gone], FEEL, 0), []);
  assert.equal(weighed(WHEEL, [], [gone], FEEL, 0.2)[0].weight_g, 0);
});

test('a thrown ball is nobody', () => {
  assert.deepEqual(weighed(WHEEL, [], [personOf('throw', {})], FEEL, 0), []);
});

test('the figure for standing is told where it holds, and nowhere else', () => {
  assert.equal(standingG(WHEEL, HERE), FEEL.figures.feet_g);
  assert.equal(standingG(WHEEL, HERE, null), null);
  assert.equal(standingG({ ...WHEEL, name: 'a wider wheel' }, HERE), null);
  const torus = modelOf({ radius_m: 56, section_m: 8 });
  assert.equal(standingG(torus, HERE), FEEL.figures.feet_g);
  assert.equal(standingG(torus, { ...HERE, axial_m: 5 }), null);
  const table = modelOf({ radius_m: 4, level: true });
  assert.equal(standingG(table, { ...HERE, axial_m: 4 }), FEEL.figures.feet_g);
  assert.equal(standingG(table, { ...HERE, axial_m: 2 }), null);
});

test('and only while the spin is that of time 0', () => {
  const spun = modelOf({ radius_m: 56 }, [0.3, 0.3, 0.31, 0.4]);
  assert.equal(standingG(spun, HERE, FEEL, 0.1), FEEL.figures.feet_g);
  assert.equal(standingG(spun, HERE, FEEL, 0.2), null);
  assert.equal(standingG(spun, HERE, FEEL, 99), null);
});

test('feet are on the deck, up is toward the axis', () => {
  const { feet, up } = onDeck(WHEEL, { along_m: 14 * Math.PI, axial_m: 1, floor: 0 }, Math.PI / 4);
  [
    [feet.x, 56],
    [feet.y, 56],
    [feet.z, 1],
    [up[0], -1],
    [up[1], 0],
    [up[2], 0],
  ].forEach(([is, be]) => assert.ok(Math.abs(is - be) < 1e-9));
});

test('figures and words', () => {
  assert.deepEqual([0, 0.0156, 0.5636, 1, 12.34, 2504.6].map(weightFigure), ['0.00', '0.016', '0.56', '1.00', '12.3', '2,505']);
  assert.equal(weightWords([]), '');
  assert.equal(
    weightWords([
      { name: 'standing', weight_g: 0.5636 },
      { name: 'running back', weight_g: 0.3617 },
    ]),
    'at the feet, standing 0.56\u00a0g, running back 0.36\u00a0g',
  );
});

test('a post stands at the first place where it hides nobody, and stays there', () => {
  const right = [[20, 0]];
  const left = [[-20, 0]];
  const body = [[22, 0]];
  const spot = (places, ...rest) => freest(places.length, index => places[index], ...rest);
  assert.deepEqual(spot([right, left], [], 10).seen, right);
  assert.equal(spot([right, left], [body], 10).index, 1);
  assert.equal(spot([right, left], [], 10, 1).index, 1);
  assert.equal(spot([right, left], [left], 10, 1).index, 0);
  assert.equal(spot([right, left], [right, left, left], 10).index, 0);
});
