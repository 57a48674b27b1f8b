// The sky of the stages, against the Bright Star Catalogue (Hoffleit and Warren 1991, 5th edition, J2000; its figures from memory).
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { STARS } from '../../static/vendor/stars.js';
import { starsOf } from '../../static/views/stars.js';

const TURN = Math.PI / 180;
const hours = (h, m, s) => 15 * (h + m / 60 + s / 3600);
const degrees = (sign, d, m, s) => sign * (d + m / 60 + s / 3600);
// name, right ascension, declination, V, B−V
const PUBLISHED = [
  ['Sirius', hours(6, 45, 8.9), degrees(-1, 16, 42, 58), -1.46, 0.0],
  ['Canopus', hours(6, 23, 57.1), degrees(-1, 52, 41, 44), -0.72, 0.15],
  ['Arcturus', hours(14, 15, 39.7), degrees(1, 19, 10, 57), -0.04, 1.23],
  ['Vega', hours(18, 36, 56.3), degrees(1, 38, 47, 1), 0.03, 0.0],
  ['Polaris', hours(2, 31, 48.7), degrees(1, 89, 15, 51), 2.02, 0.6],
  ['Acrux', hours(12, 26, 35.9), degrees(-1, 63, 5, 57), 0.76, -0.26],
  ['Dubhe', hours(11, 3, 43.7), degrees(1, 61, 45, 3), 1.79, 1.07],
];
const stars = starsOf(STARS);

test('the bright stars stand where they are, as bright and in the colour they have', () => {
  for (const [name, ascension_deg, declination_deg, magnitude, color_index] of PUBLISHED) {
    const [a, d] = [ascension_deg * TURN, declination_deg * TURN];
    const toward = [Math.cos(d) * Math.cos(a), Math.cos(d) * Math.sin(a), Math.sin(d)];
    const off = one =>
      Math.acos(
        Math.min(
          1,
          one.toward.reduce((sum, part, c) => sum + part * toward[c], 0),
        ),
      ) / TURN;
    const nearest = stars.filter(one => off(one) < 0.03).sort((one, other) => one.magnitude - other.magnitude)[0];
    assert.ok(nearest, `${name} is in the sky`);
    assert.ok(Math.abs(nearest.magnitude - magnitude) < 0.25, `${name}: ${nearest.magnitude}, published ${magnitude}`);
    assert.ok(Math.abs(nearest.color_index - color_index) < 0.12, `${name}: ${nearest.color_index}, published ${color_index}`);
  }
});

test('they are all round, and brighter ones are drawn larger', () => {
  const octants = new Set(stars.map(({ toward }) => toward.map(Math.sign).join()));
  assert.equal(octants.size, 8);
  assert.ok(stars.length > 400 && stars.length < 1000, `${stars.length}`);
  for (let i = 1; i < stars.length; i += 1) assert.ok(stars[i].size_px <= stars[i - 1].size_px);
});

test('hot stars are bluish and cool ones reddish', () => {
  const tint = wanted => stars.find(({ color_index }) => Math.abs(color_index - wanted) < 0.02).tint;
  const [hot, cool] = [tint(-0.2), tint(1.6)];
  assert.ok(hot[2] > hot[0] && cool[0] > cool[2]);
});
