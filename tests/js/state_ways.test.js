// How far off: the nearest way, whole turns told, and what part of the way round it is.

import assert from 'node:assert/strict';
import test from 'node:test';
import { howFar, roundOf, whichWay } from '../../static/state/ways.js';

const way = (spinward_m, of_turn, turns = 0) => ({ turns, spinward_m, axial_m: 0, of_turn });
const plain = text => text.replaceAll('\u00a0', ' ');

test('a short way is its length and its side', () => {
  assert.equal(plain(whichWay(way(-0.83, -0.0024))), '0.830 m antispinward');
  assert.equal(plain(whichWay(way(5.21, null))), '5.21 m spinward');
  assert.equal(plain(whichWay(way(0, 0))), '0 m');
  assert.equal(plain(howFar(way(5.21, null), 'us')), '17.1 ft');
});

test('a long one is also a part of the way round, a longer one so many times', () => {
  assert.equal(plain(whichWay(way(-38.3, -0.109))), '38.3 m antispinward, 11 % of the way round');
  assert.equal(plain(whichWay(way(29.57, 0.4706, -4))), '3.5 times round, ends 29.6 m spinward');
  assert.equal(roundOf(way(3, null)), '');
});
