import assert from 'node:assert/strict';
import test from 'node:test';

import { Group, Matrix4, PerspectiveCamera, Vector3 } from '../../static/vendor/three.module.js';
import { sharedUniforms } from '../../static/views/materials.js';
import { Posts } from '../../static/views/feel/posts.js';
import { drawnGround, readShape } from '../../static/views/ground.js';

const WIDTH = 1000;
const HEIGHT = 500;
const LEANT = [Math.sin(0.3), Math.cos(0.3), 0];

// A stage seen from 12 m along the axis, the middle of the picture at the feet of who stands at the bottom of the wheel.
function stage(weights, { place = 4, feel = null, where = [], metresPerPx = 0.02 } = {}) {
  const camera = new PerspectiveCamera(40, WIDTH / HEIGHT, 0.1, 500);
  camera.position.set(0, 1, 12);
  camera.updateMatrixWorld();
  const store = { view: { place }, feel, feelProblem: null };
  const shown = weights.map((weight_g, i) => ({
    i,
    name: `walker ${i}`,
    stage: { mover: 'person', weight: 'feet_g' },
    motion: { kind: 'walk', first: 0, findings: { feet_g: [weight_g] } },
    path: { count: 1 },
    starts_s: 0,
    ends_s: 1,
    floor: 0,
  }));
  const tall = [];
  const half = {
    frame: 'aboard',
    group: new Group(),
    shown,
    model: {
      radius_m: 56,
      ground: drawnGround(readShape({ radius_m: 56 }, {}, { section_m: null, level: false, half_m: 7 })),
      answer: { grid: { fps: [24, 1], samples_per_frame: 1 }, spin_rad_s: [0.3], angle_rad: [0] },
    },
    eye: { camera, metresPerPx, axes: { right: [1, 0, 0] } },
    actors: { where, grow: tall_m => tall.push(tall_m), movers: { stance: m => ({ feet: { x: 3 * m.i, y: 0, z: 0 }, up: m.i ? LEANT : [0, 1, 0] }) } },
    project: ({ x, y, z }) => {
      const v = new Vector3(x, y, z).project(camera);
      return [(v.x * 0.5 + 0.5) * WIDTH, (0.5 - v.y * 0.5) * HEIGHT];
    },
  };
  return { half, store, tall, posts: new Posts(sharedUniforms(), half, store) };
}

function postOf({ posts: { mesh, weight } }, k) {
  const matrix = new Matrix4();
  mesh.getMatrixAt(k, matrix);
  const [side, up, front] = [0, 1, 2].map(c => new Vector3().setFromMatrixColumn(matrix, c));
  return { foot: new Vector3().setFromMatrixPosition(matrix), side, up, front, told: [weight.getX(k), weight.getY(k)] };
}
const near = (a, b, by = 1e-6) => assert.ok(Math.abs(a - b) < by, `${a} is not ${b}`);

test('a post is filled to the weight, as tall as one g or as the weight, and leans with whom it stands by', () => {
  const seen = stage([0.36, 1.31]);
  seen.posts.update(seen.half, 0);
  assert.equal(seen.posts.mesh.count, 2);
  const [straight, leant] = [postOf(seen, 0), postOf(seen, 1)];
  near(straight.told[0], 0.36);
  near(straight.told[1], 1);
  near(leant.told[0], 1.31);
  near(leant.told[1], 1.4);
  near(straight.up.dot(new Vector3(0, 1, 0)), 1);
  near(leant.up.dot(new Vector3(...LEANT)), 1);
  for (const post of [straight, leant]) near(post.side.clone().cross(post.up).dot(post.front), 1);
});

test('however much is felt, a post is three g tall, and its label tells how much', () => {
  const seen = stage([2.96, 14.2]);
  const labels = seen.posts.update(seen.half, 0);
  for (const k of [0, 1]) near(postOf(seen, k).told[1], 3);
  near(postOf(seen, 1).told[0], 14.2, 1e-5);
  assert.ok(labels.some(({ strong }) => strong === '14.2\u00a0g'));
});

test("it stands to the viewer's right of the feet, its face to the eye, and on the other side where it would hide somebody", () => {
  const alone = stage([0.5]);
  alone.posts.update(alone.half, 0);
  const post = postOf(alone, 0);
  near(post.foot.x, 0.45 + (10 * 0.02 - 0.15) / 2, 0.01); // 10 px wide where its own 0.15 m would be fewer, as near to the feet
  near(post.foot.y, 0);
  assert.ok(post.front.z > 0.9);
  const pair = stage([0.5, 0.5]);
  pair.half.actors.movers.stance = m => ({ feet: { x: 0.5 * m.i, y: 0, z: 0 }, up: [0, 1, 0] });
  pair.posts.update(pair.half, 0);
  assert.ok(postOf(pair, 0).foot.x < -0.3);
  assert.ok(postOf(pair, 1).foot.x > 0.8);
});

test('farther off a post is drawn wider and never taller, and slimmer than a third or so of its height', () => {
  for (const [metresPerPx, wide_m] of [
    [0.005, 0.15],
    [0.03, 0.3],
    [0.1, 0.7],
  ]) {
    const { posts, half } = stage([0.5], { metresPerPx });
    posts.update(half, 0);
    near(0.15 * posts.material.uniforms.uWiden.value, wide_m);
    assert.deepEqual([posts.weight.getX(0), posts.weight.getY(0)], [0.5, 1]);
    assert.equal(posts.material.uniforms.uMetres.value, 1.75);
  }
});

test('labels are kept off who is weighed and off the post, where there is one', () => {
  const seen = stage([0.5]);
  seen.posts.update(seen.half, 0);
  assert.ok(seen.posts.seen.some(({ x }) => x > 0.4) && seen.posts.seen.some(({ x }) => Math.abs(x) < 1e-9));
  const far = stage([0.5], { metresPerPx: 0.5 });
  far.posts.update(far.half, 0);
  assert.ok(2 * far.posts.seen.length === seen.posts.seen.length && far.posts.seen.every(({ x }) => Math.abs(x) < 1e-9));
});

test('one mesh and one material, made once', () => {
  const seen = stage([0.2, 0.9]);
  const { mesh, material } = seen.posts;
  for (let k = 0; k < 5; k += 1) seen.posts.update(seen.half, k / 24);
  assert.deepEqual(seen.half.group.children, [mesh]);
  assert.equal(seen.posts.mesh, mesh);
  assert.equal(mesh.material, material);
});

test('a label says who and how much, the nearest first, and the unit once', () => {
  const seen = stage([0.36, 0.81], {
    where: [{ along_m: 0, axial_m: -9, floor: 0, since_s: 0 }],
    feel: { figures: { feet_g: 0.56 }, person: { height_m: 1.6 } },
  });
  const labels = seen.posts.update(seen.half, 0);
  assert.deepEqual(
    labels.map(({ text, strong }) => text + strong),
    ['walker 0 0.36\u00a0g', 'walker 1 0.81\u00a0g', 'standing 0.56\u00a0g'],
  );
  assert.deepEqual(seen.tall, [1.6]);
  assert.equal(seen.posts.words, 'at the feet, standing 0.56\u00a0g, walker 0 0.36\u00a0g, walker 1 0.81\u00a0g');
  assert.deepEqual(
    seen.half.shown.map(m => seen.posts.labelled.has(m)),
    [true, true],
  );
});

test('people too small to see keep their label and lose their post', () => {
  const seen = stage([0.36], { metresPerPx: 0.5 });
  assert.equal(seen.posts.update(seen.half, 0).length, 1);
  assert.equal(seen.posts.mesh.visible, false);
});

test('at another place nothing is there', () => {
  const seen = stage([0.36]);
  seen.posts.update(seen.half, 0);
  seen.store.view = { place: 2 };
  assert.deepEqual(seen.posts.update(seen.half, 0), []);
  assert.equal(seen.posts.mesh.visible, false);
  assert.equal(seen.posts.words, '');
  assert.equal(seen.posts.labelled.size, 0);
  assert.deepEqual(seen.tall, [1.75, 1.75]);
});
