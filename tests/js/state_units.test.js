// Units as typed and as shown. Factors: the international foot, pound and inch of 1959 (exact); the US fluid ounce, 231/128 cubic inches.

import assert from 'node:assert/strict';
import test from 'node:test';
import { formatFigure, fromShown, lengthWords, parseFigure, proseFigure, shownStep, shownUnit, threeFigures, toShown } from '../../static/state/units.js';

const length = (text, system = 'si') => parseFigure(text, { unit: 'm', system });
const near = (got, want) => assert.ok(Math.abs(got - want) <= 1e-12 * Math.max(1, Math.abs(want)), `${got} for ${want}`);

test('lengths typed with and without a unit', () => {
  near(length('56').value, 56);
  near(length('56 m').value, 56);
  near(length('56 ft').value, 17.0688);
  near(length('5 ft 10 in').value, 1.778);
  near(length('5\'10"').value, 1.778);
  near(length('1.5km').value, 1500);
  near(length('56', 'us').value, 17.0688);
  near(length('−3').value, -3);
  near(length('1e3').value, 1000);
});

test('commas: thousands, or the decimals of half the world', () => {
  near(length('1,500').value, 1500);
  near(length('12,4').value, 12.4);
  near(length('1,234.5 m').value, 1234.5);
});

test('what is no number, or in no unit of the field, is refused', () => {
  for (const text of ['', 'wide', '12,4x', '3 kg', '4 4', '--2', 'NaN', 'Infinity', '0x10']) assert.ok(length(text).error, text);
});

test('a dial can be set by the gravity, rim speed or turn it should give', () => {
  const spin = text => parseFigure(text, { unit: 'rpm', dial: true });
  assert.deepEqual(spin('0.5 g'), { solve: { hold: 'felt', held: 0.5 * 9.80665 } });
  assert.deepEqual(spin('18 m/s'), { solve: { hold: 'rim_speed', held: 18 } });
  near(spin('20 s').value, 3);
  near(spin('18 °/s').value, 3);
  assert.deepEqual(parseFigure('1 g', { unit: 'm', dial: true }), { solve: { hold: 'felt', held: 9.80665 } });
  assert.ok(parseFigure('0.5 g', { unit: 'rpm' }).error);
});

test('temperature has its own zero', () => {
  near(parseFigure('68 °F', { unit: '°C' }).value, 20);
  near(parseFigure('293.15 K', { unit: '°C' }).value, 20);
  near(parseFigure('68', { unit: '°C', system: 'us' }).value, 20);
  near(toShown(-40, '°C', 'us'), -40);
});

test('shown and back is the same value, in every unit', () => {
  for (const unit of ['m', 'mm', 'm/s', 'm/s²', 'kg', 'ml/s', 'kPa', '°C', 'rpm', '°', 's']) {
    for (const value of [-12.5, 0, 0.3, 4321]) near(fromShown(toShown(value, unit, 'us'), unit, 'us'), value);
  }
  assert.equal(shownUnit('m', 'us'), 'ft');
  assert.equal(shownUnit('rpm', 'us'), 'rpm');
  near(toShown(1, 'g/m', 'us'), 0.3048); // the international foot (1959)
  assert.equal(shownUnit('g/m', 'us'), 'g/ft');
  near(toShown(29.5735295625, 'ml/s', 'us'), 1);
});

test('figures: decimals of the step, more only where typed, and a true minus', () => {
  assert.equal(formatFigure(56, 0.1), '56.0');
  assert.equal(formatFigure(3, 0.01), '3.00');
  assert.equal(formatFigure(101.325, 1), '101.325');
  assert.equal(formatFigure(2.98765432, 0.01), '2.99');
  assert.equal(formatFigure(-0.5, 0.1), '−0.5');
  assert.equal(formatFigure(-0.0000001, 0.1), '0.0');
  assert.equal(formatFigure(NaN, 0.1), '');
});

test('read-outs have three figures', () => {
  assert.deepEqual([0.5636, 17.593, 5.2145, 1500.4, 0, 9.9999].map(threeFigures), ['0.564', '17.6', '5.21', '1,500', '0', '10.0']);
});

test('a step in feet is a round one', () => {
  near(shownStep(0.1, 'm', 'us'), 0.1);
  near(shownStep(0.01, 'm', 'si'), 0.01);
});

test('a figure may be typed with the unit of its field, or in another of the same kind', () => {
  for (const [typed, unit, system, value] of [
    ['0.5 g', 'g', 'si', 0.5],
    ['0.5 G', 'g', 'si', 0.5],
    ['0,9', 'g', 'si', 0.9],
    ['3 %', '%', 'si', 3],
    ['0.3 rad/s²', 'rad/s²', 'si', 0.3],
    ['12 °/s', 'rpm', 'si', 2], // 360° a turn, 60 s a minute
    ['100', 'm', 'us', 30.48],
    ['100 m', 'm', 'us', 100],
    ['0.25', '', 'si', 0.25],
  ])
    near(parseFigure(typed, { unit, system }).value, value);
  for (const typed of ['', 'many', '5 kg', '5 %']) assert.ok(parseFigure(typed, { unit: 'g', system: 'si' }).error, typed);
  assert.ok(parseFigure('5 kg', { unit: '' }).error);
});

test('a sentence says less than a metre in centimetres', () => {
  for (const [value, unit, system, said] of [
    [0.08, 'm', 'si', '8 cm'],
    [0.085, 'm', 'si', '8.5 cm'],
    [1.5, 'm', 'si', '1.50 m'],
    [0, 'm', 'si', '0.00 m'],
    [0.3048, 'm', 'us', '1.00 ft'],
    [35, '°', 'si', '35.00°'],
  ])
    assert.equal(proseFigure(value, unit, system).replaceAll('\u00a0', ' '), said);
});

test('a length of a scale has no digits that tell nothing', () => {
  assert.deepEqual([lengthWords(5), lengthWords(-1), lengthWords(0.5), lengthWords(5, 'us')], ['5\u00a0m', '−1\u00a0m', '0.5\u00a0m', '16.4\u00a0ft']);
});
