import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Group, Vector3 } from '../../static/vendor/three.module.js';
import { standBefore, watched } from '../../static/views/craft_sight.js';
import { Hull, solidOf } from '../../static/views/hull.js';
import { sharedUniforms } from '../../static/views/materials.js';
import { Scenery } from '../../static/views/scenery.js';

const box = (name, place_m, group = 'turning') => ({ name, group, solid: 'box', size_m: [2, 2, 2], place_m, axis: [0, 0, 1] });

test('a part is before what moves where the straight way from the eye to any place of it goes through the part', () => {
  const meshes = [box('near', [0, 0, 10]), box('behind', [0, 0, -10]), box('aside', [5, 0, 10])].map(part => solidOf(part));
  for (const mesh of meshes) mesh.updateMatrixWorld(true);
  const eye = new Vector3(0, 0, 20);
  assert.deepEqual(standBefore(meshes, eye, [new Vector3(0, 0, 0)]), [meshes[0]]);
  assert.deepEqual(standBefore(meshes, eye, [new Vector3(0, 0, 0), new Vector3(10, 0, 0)]), [meshes[0], meshes[2]]);
  assert.deepEqual(standBefore(meshes, eye, [new Vector3(0, 0, 15)]), []);
  assert.deepEqual(standBefore(meshes, eye, [new Vector3(0, 0, -9)]), [meshes[0]], 'what lies on a face is hidden by what is before it alone');
});

test('all of every path shown is watched, the craft’s own excepted, as the stage draws it', () => {
  const points = Float64Array.from({ length: 300 }, (_, k) => k);
  const shown = [{ tumbles: true, lines: { aboard: { points } } }, { lines: { aboard: { points } } }, { lines: { aboard: { points: new Float64Array(0) } } }];
  const places = watched(shown, 'aboard', ({ x, y, z }) => ({ x: x + 1, y, z }));
  assert.deepEqual([places[0].toArray(), places.at(-1).toArray(), places.length], [[1, 1, 2], [298, 298, 299], 9]); // biome-ignore format: first, last, how many
});

test('a part before what moves is an outline while it is there, and a solid again afterwards', () => {
  const room = { group: new Group(), room: new Group(), whole: new Group() };
  room.whole.add(room.group, room.room);
  const hull = new Hull(sharedUniforms(), room);
  hull.build({ craft: { counter_ratio: 0, parts: [box('cabin', [0, 0, 10]), box('tank', [0, 0, -10], 'still')] }, radius_m: 7, tumbling: false });
  room.whole.updateMatrixWorld(true);
  const place = new Vector3(0, 7, 0);
  const seen = eye => {
    hull.openTo(eye, [place]);
    return hull.solids.map(({ mesh, outline }) => [mesh.visible, outline?.visible ?? false]);
  };
  assert.deepEqual(seen(new Vector3(0, 7, 20)), [[false, true], [true, false]]); // biome-ignore format: a row each
  assert.deepEqual(seen(new Vector3(0, 7, -20)), [[true, false], [false, true]]); // biome-ignore format: a row each
  hull.openTo(new Vector3(0, 7, 20), []);
  assert.deepEqual(hull.solids.map(({ mesh }) => mesh.visible), [true, true], 'where nothing moves, nothing is opened'); // biome-ignore format: a row
});

test('a matte of a craft that tumbles is of the craft, and that of a ball of the ball alone', () => {
  const whole = { name: 'whole' },
    habitat = { glow: { name: 'glow' }, haze: { name: 'haze' } };
  const leftOut = shown => Scenery.prototype.beside.call({ whole, habitat }, shown);
  assert.deepEqual(leftOut([{ tumbles: true }]), [habitat.glow, habitat.haze]);
  assert.deepEqual(leftOut([{ tumbles: false }]), [whole]);
});
